/** What the solid view takes and gives: everything comes by props, so that the app can wire its stores to it. */
import type { Assembly } from '../model/assembly/assembly.ts';
import type { Pose } from '../model/assembly/pose.ts';
import type { SectionPlane, Triple } from '../solids/section-plane.ts';
import type { PartKind } from '../solids/solid-parts.ts';
import type { CaptureOptions } from './capture.ts';
import type { SceneTheme } from './scene-theme.ts';
import type { StandardView } from './view-state.ts';

/** How a kind of part is shown. */
export type PartAppearance = 'shown' | 'see-through' | 'pulled apart' | 'hidden';

/** Kinds that are not listed are shown. */
export type PartVisibility = Readonly<Partial<Record<PartKind, PartAppearance>>>;

/**
 * A pose that changes by itself. The view asks for it once a frame while it runs and after each notice, so nothing of React
 * runs per frame.
 */
export type PoseSource = {
  /** Calls back at each change; gives the way to stop. */
  readonly subscribe: (onChange: () => void) => () => void;
  /** The pose now. `seconds` runs while the view draws frames; a source with its own clock ignores it. */
  readonly poseAt: (seconds: number) => Pose;
  /** True while the next frame will differ by itself. */
  readonly isRunning: () => boolean;
};

/** A word in the picture, at a point of the cylinder. */
export type SceneMark = {
  readonly id: string;
  readonly at: Triple;
  readonly text: string;
  /** `chamber`: a number over its chamber; `flag`: a word with a leader, for the chamber that holds the lock. */
  readonly kind: 'chamber' | 'flag';
};

export type SceneFailure = {
  readonly code: 'no-webgl' | 'context-lost' | 'worker' | 'render';
  /** What happened and what now, in plain words. */
  readonly sentence: string;
};

export type ViewCommand =
  | { readonly kind: 'look from'; readonly view: StandardView }
  | { readonly kind: 'fit' }
  | { readonly kind: 'orbit'; readonly byAzimuth: number; readonly byElevation: number }
  | { readonly kind: 'pan'; readonly byRight: number; readonly byUp: number }
  | { readonly kind: 'zoom'; readonly factor: number };

/** What the app can ask of a view that is ready. */
export type SceneHandle = {
  readonly run: (command: ViewCommand) => void;
  /** Draws the view as framed at another size and gives it as a picture file. */
  readonly capture: (options: CaptureOptions) => Promise<Blob>;
  /** Numbers for tests and for the details panel. */
  readonly statistics: () => SceneStatistics;
};

export type SceneStatistics = {
  readonly frames: number;
  readonly geometries: number;
  readonly textures: number;
  readonly programs: number;
  readonly triangles: number;
  /** Solids made anew so far, and cut faces asked for. */
  readonly solidsMade: number;
  readonly isSlowRenderer: boolean;
};

export type SceneViewProps = {
  readonly assembly: Assembly;
  readonly pose: Pose | PoseSource;
  readonly theme: SceneTheme;
  readonly visibility?: PartVisibility;
  /** null: nothing is cut. */
  readonly plane: SectionPlane | null;
  readonly projection: 'orthographic' | 'perspective';
  /** Whether all cut faces are hatched, or the bodies only, as a drawing does it. */
  readonly hatching?: 'bodies' | 'all';
  readonly marks?: readonly SceneMark[];
  /** Which the left button and one finger do first. */
  readonly pointer?: 'orbit first' | 'pan first';
  /** What two fingers on a trackpad do; `auto` tells a trackpad from a wheel by its fine steps. */
  readonly wheel?: 'auto' | 'zoom' | 'pan';
  /** Name of the view for those who cannot see it; `description` says what it shows now. */
  readonly label: string;
  readonly description?: string;
  /** Starts a worker from the address of its script: the page's policy for script addresses belongs to the app. */
  readonly createWorker: (url: string) => Worker;
  readonly onReady?: (handle: SceneHandle) => void;
  readonly onFailure?: (failure: SceneFailure) => void;
};
