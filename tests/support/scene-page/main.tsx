/**
 * A page with nothing but the solid view, under the same policy as the app, for browser tests: they set its props and read
 * its pictures through `window.solidView`.
 */
import { StrictMode, useSyncExternalStore } from 'react';
import { createRoot } from 'react-dom/client';
import type { Assembly } from '../../../src/model/assembly/assembly.ts';
import type { Pose } from '../../../src/model/assembly/pose.ts';
import { asRadians } from '../../../src/model/radians.ts';
import {
  drawFaces,
  faceArea,
  flatColours,
  type FlatFrame,
  SectionCutter,
} from '../../../src/scene/flat-section.ts';
import { PAPER_THEME, SLATE_THEME } from '../../../src/scene/scene-theme.ts';
import type {
  PoseSource,
  SceneFailure,
  SceneHandle,
  SceneViewProps,
} from '../../../src/scene/scene-types.ts';
import { SceneView } from '../../../src/scene/scene-view.tsx';

/** A pose as it travels to the page: its map of turns as pairs. */
export type SentPose = Omit<Pose, 'turns'> & { readonly turns: readonly (readonly [string, number])[] };

export type SolidViewSettings = Pick<
  SceneViewProps,
  'plane' | 'projection' | 'visibility' | 'hatching' | 'marks' | 'pointer' | 'wheel'
> & {
  readonly assembly: Assembly;
  readonly pose: SentPose;
  readonly theme: 'paper' | 'slate';
};

export type SolidViewPage = {
  readonly show: (settings: SolidViewSettings) => void;
  readonly change: (settings: Partial<SolidViewSettings>) => void;
  /** Runs through poses, one a frame, without React; resolves with the number of frames drawn meanwhile. */
  readonly play: (poses: readonly SentPose[]) => Promise<number>;
  readonly handle: () => SceneHandle | null;
  readonly failures: readonly SceneFailure[];
  readonly workers: readonly Worker[];
  /** The last byte of each pixel's colour, which alone tells the parts apart, as text; and each part's area, mm². */
  readonly flat: (
    assembly: Assembly,
    pose: SentPose,
    frame: FlatFrame,
  ) => Promise<{ readonly picture: string; readonly areas: readonly (readonly [string, number])[] }>;
  readonly raster: (svg: string, width: number, height: number) => Promise<string>;
};

declare global {
  interface Window {
    solidView: SolidViewPage;
  }
  interface WindowTrustedTypes {
    createPolicy(
      name: string,
      rules: { createScriptURL: (url: string) => string },
    ): {
      createScriptURL: (url: string) => string;
    };
  }
}

const policy = (
  window as unknown as { readonly trustedTypes?: WindowTrustedTypes }
).trustedTypes?.createPolicy('shearsight', { createScriptURL: (url) => url });

const workers: Worker[] = [];
const failures: SceneFailure[] = [];
const listeners = new Set<() => void>();
let settings: SolidViewSettings | null = null;
let handle: SceneHandle | null = null;
let source: PoseSource | null = null;
let cutter: SectionCutter | null = null;

function createWorker(url: string): Worker {
  const worker = new Worker(policy ? policy.createScriptURL(url) : url, { type: 'module' });
  workers.push(worker);
  return worker;
}

function received(pose: SentPose): Pose {
  return { ...pose, turns: new Map(pose.turns.map(([body, turn]) => [body, asRadians(turn)])) };
}

function set(next: SolidViewSettings): void {
  settings = next;
  for (const listener of listeners) listener();
}

let lastPose: { readonly sent: SentPose; readonly pose: Pose } | null = null;
function poseOf(sent: SentPose): Pose {
  if (lastPose?.sent !== sent) lastPose = { sent, pose: received(sent) };
  return lastPose.pose;
}

function Page() {
  const now = useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => settings,
  );
  if (now === null) return <p>Nothing to show yet.</p>;
  const { theme, pose, ...rest } = now;
  return (
    <SceneView
      {...rest}
      pose={source ?? poseOf(pose)}
      theme={theme === 'paper' ? PAPER_THEME : SLATE_THEME}
      label="Solid view"
      description="The cylinder in section."
      createWorker={createWorker}
      onReady={(ready) => {
        handle = ready;
      }}
      onFailure={(failure) => failures.push(failure)}
    />
  );
}

async function play(poses: readonly SentPose[]): Promise<number> {
  const queue = poses.map(received);
  const before = handle?.statistics().frames ?? 0;
  let done: () => void = () => undefined;
  const finished = new Promise<void>((resolve) => {
    done = resolve;
  });
  let at = 0;
  source = {
    subscribe: () => () => undefined,
    isRunning: () => at < queue.length,
    poseAt: () => {
      const pose = queue[Math.min(at, queue.length - 1)];
      at += 1;
      if (at >= queue.length) done();
      if (pose === undefined) throw new Error('There is no pose to play.');
      return pose;
    },
  };
  if (settings) set({ ...settings });
  await finished;
  await new Promise((resolve) => setTimeout(resolve, 100));
  return (handle?.statistics().frames ?? 0) - before;
}

function lastBytes(pixels: ImageData): string {
  const bytes = new Uint8Array(pixels.width * pixels.height);
  for (let i = 0; i < bytes.length; i++) bytes[i] = pixels.data[4 * i + 2] ?? 0;
  let text = '';
  for (let i = 0; i < bytes.length; i += 0x8000)
    text += String.fromCharCode(...bytes.subarray(i, i + 0x8000));
  return btoa(text);
}

async function raster(svg: string, width: number, height: number): Promise<string> {
  const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  const image = new Image();
  image.src = address;
  await image.decode();
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Error('no canvas');
  context.drawImage(image, 0, 0);
  URL.revokeObjectURL(address);
  return lastBytes(context.getImageData(0, 0, width, height));
}

window.solidView = {
  show: (next) => {
    source = null;
    set(next);
  },
  change: (next) => {
    source = null;
    if (settings) set({ ...settings, ...next });
  },
  play,
  handle: () => handle,
  failures,
  workers,
  flat: async (assembly, pose, frame) => {
    cutter ??= new SectionCutter({ createWorker });
    const faces = await cutter.cut(assembly, received(pose), frame.planeX);
    return {
      picture: lastBytes(drawFaces(faces, flatColours(assembly), frame)),
      areas: faces.map((face) => [face.partKey, faceArea(face)] as const),
    };
  },
  raster,
};

const root = document.getElementById('root');
if (root === null) throw new Error('no root');
createRoot(root).render(
  <StrictMode>
    <Page />
  </StrictMode>,
);
