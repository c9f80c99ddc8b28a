/**
 * One section, two renderings: the drawing's faces and the solids' cut faces, each part in one flat colour, laid over each
 * other pixel by pixel. The solids come from the worker and the graphics card, under the app's own policy.
 */
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { flatMetal } from '../../src/drawing/long-section-metal.ts';
import { drawingRoot, toSvgText } from '../../src/drawing/node.ts';
import { regionPolygons, type View } from '../../src/drawing/view.ts';
import { bodySpans, shellShape } from '../../src/geometry/body-sizes.ts';
import { type CutPart, cutAlong } from '../../src/geometry/cut-parts.ts';
import { boundsOf, regionArea } from '../../src/geometry/outline.ts';
import type { Assembly } from '../../src/model/assembly/assembly.ts';
import { buildAssembly } from '../../src/model/assembly/build-assembly.ts';
import { type Parting, poseAt } from '../../src/model/assembly/pose-at.ts';
import type { Pose } from '../../src/model/assembly/pose.ts';
import { allSelections } from '../../src/model/measured/selection.ts';
import { asRadians } from '../../src/model/radians.ts';
import type { Job } from '../../src/model/schema/job-schema.ts';
import { type FlatFrame, flatColours } from '../../src/scene/flat-section.ts';
import type { RunningServer } from '../../tools/static-server.mjs';
import { openApp } from '../support/browser.ts';
import { type Agreement, compareSections, type FlatPicture } from '../support/compare-sections.ts';
import { harbourJob } from '../support/harbour-jobs.ts';
import { randomJob, seededRandom } from '../support/random-job.ts';
import { sampleAssembly } from '../support/sample-assembly.ts';
import { sentPose, serveScenePage } from '../support/scene-server.ts';

const JOBS = 50;
/** Jobs of one test: all share its page and its time. */
const BATCH = 10;
/** Every tenth job is cut beside the axis. */
const OFF_AXIS_EVERY = 10;
/** With a sleeve: upright, the plug turned, plug and sleeve turned, twice. */
const SLEEVE_JOBS = 6;
const PIXELS_PER_MM = 16;
const MOST_AREA_SHARE = 0.005;
/** mm². A grazed pin leaves a sliver thinner than the facets' error; its pixels are compared all the same. */
const LEAST_AREA_MM2 = 0.05;
/** Plug, shell and ring are met by every plane that is asked for. */
const LEAST_PARTS = 3;
/** Free pixels around what is drawn. */
const RIM = 8;

let server: RunningServer;
let example: Job;

beforeAll(async () => {
  server = await serveScenePage();
  example = JSON.parse(await readFile('public/examples/lighthouse.json', 'utf8')) as Job;
});

afterAll(async () => {
  await server.close();
});

describe('drawn and solid section', () => {
  test.each(Array.from({ length: JOBS / BATCH }, (_, i) => i * BATCH))(
    'agree for seeded jobs from number %i on, one in ten of them cut beside the axis',
    async (first) => {
      const { page } = await openApp({ baseUrl: server.url });
      const faults: string[] = [];
      for (let seed = first; seed < first + BATCH; seed++) {
        const assembly = seededAssembly(seed);
        const random = seededRandom(seed + 7000);
        const travel = random() < 0.4 ? 0 : random() * (assembly.key?.outTravel ?? 0);
        const planeX = seed % OFF_AXIS_EVERY === 3 ? offAxis(assembly, seed, random()) : 0;
        const agreement = await compare(page, assembly, poseAt(assembly, { travel }), planeX);
        faults.push(...faultsOf(agreement).map((fault) => `seed ${seed}, plane at ${planeX}: ${fault}`));
      }
      expect(faults).toEqual([]);
    },
  );

  test('agree for seeded jobs with a sleeve and master pins, upright and turned at either line', async () => {
    const { page } = await openApp({ baseUrl: server.url });
    const faults: string[] = [];
    for (let seed = 0; seed < SLEEVE_JOBS; seed++) {
      const random = seededRandom(seed + 9000);
      const assembly = seededAssembly(seed, harbourJob());
      const lineIndex = seed % 3;
      const turned = assembly.bodies.slice(0, lineIndex).map((body) => body.id);
      const turn = asRadians((random() - 0.5) * 0.5);
      const pose = poseAt(assembly, {
        travel: lineIndex === 0 ? random() * (assembly.key?.outTravel ?? 0) : 0,
        turns: new Map(turned.map((id) => [id, turn])),
        ...(lineIndex > 0 && { parting: partingAt(assembly, lineIndex - 1) }),
      });
      const planeX = seed === SLEEVE_JOBS - 1 ? 0.8 : 0;
      const agreement = await compare(page, assembly, pose, planeX);
      faults.push(...faultsOf(agreement).map((fault) => `seed ${seed}, turned ${turned.length}: ${fault}`));
    }
    expect(faults).toEqual([]);
  });

  test.each([
    ['mouths deburred', sampleAssembly({ mouth: { kind: 'deburred along', size: 0.2 } }), 0, 0],
    [
      'mouths deburred, beside the axis',
      sampleAssembly({ mouth: { kind: 'deburred along', size: 0.2 } }),
      1.1,
      0,
    ],
    ['mouths countersunk', sampleAssembly({ mouth: { kind: 'countersunk', size: 0.4 } }), 0, 0],
    [
      'mouths countersunk, beside the axis',
      sampleAssembly({ mouth: { kind: 'countersunk', size: 0.4 } }),
      -0.9,
      0,
    ],
    ['a sleeve', sampleAssembly({ hasSleeve: true }), 0, 0],
    ['a sleeve, beside the axis', sampleAssembly({ hasSleeve: true }), 1.4, 0],
    ['a worn crest', sampleAssembly({ crestDrop: 0.3 }), 0, 0],
    ['chambers of the shell out of line', sampleAssembly({ sideways: 0.25 }), 0.3, 0],
    ['seven chambers and no key', sampleAssembly({ chambers: 7, hasKey: false }), 0, 0],
    ['a plug that has turned a little', sampleAssembly(), 0, 0.12],
    ['a plug that has turned the other way', sampleAssembly(), 0.4, -0.2],
  ])('agree for %s', async (_, assembly, planeX, turn) => {
    const { page } = await openApp({ baseUrl: server.url });
    const turns = new Map([[assembly.bodies[0]!.id, asRadians(turn)]]);
    const pose = poseAt(assembly, { travel: assembly.key ? 0 : null, ...(turn === 0 ? {} : { turns }) });
    expect(faultsOf(await compare(page, assembly, pose, planeX))).toEqual([]);
  });

  test('a part that is a twentieth of a millimetre off is noticed', async () => {
    const { page } = await openApp({ baseUrl: server.url });
    const assembly = sampleAssembly();
    const pose = poseAt(assembly, { travel: 0 });
    const moved = poseAt(assembly, { travel: 0.15 });
    expect(faultsOf(await compare(page, assembly, pose, 0, moved))).not.toEqual([]);
  });
});

/** Through the pins beside their axis; every other time through the plug beside the chambers. */
function offAxis(assembly: Assembly, seed: number, share: number): number {
  const plug = assembly.bodies[0]!.outerRadius;
  const chamber = assembly.chambers[0]!.holes[0]!.radius;
  const isWide = Math.floor(seed / OFF_AXIS_EVERY) % 2 === 1;
  const distance = isWide ? chamber + share * 0.9 * (plug - chamber) : (0.1 + share * 0.8) * chamber;
  return seed % 4 < 2 ? distance : -distance;
}

type Compared = Agreement & { readonly areaFaults: readonly string[] };

/** Every stack parts above its bottom pin at the inner line, above its master pin at the outer one. */
function partingAt(assembly: Assembly, lineIndex: number): Parting {
  const below = new Map(assembly.stacks.map(({ chamber, parts }) => [chamber, parts[lineIndex]!.part]));
  return { lineIndex, below };
}

function seededAssembly(seed: number, from: Job = example): Assembly {
  const job = randomJob(from, seed, 0);
  return buildAssembly(job, allSelections(job)[0]!);
}

function faultsOf({ furthest, furthestAt, missing, shown, areaFaults }: Compared): string[] {
  return [
    ...(shown >= LEAST_PARTS ? [] : [`only ${shown} parts are shown`]),
    ...missing.map((part) => `${part} is missing`),
    ...(furthest <= 1
      ? []
      : [`a pixel ${furthest.toFixed(2)} px off every outline differs at ${furthestAt}`]),
    ...areaFaults,
  ];
}

/** Draws both; `solidPose` only to bring about a difference on purpose. */
async function compare(
  page: Page,
  assembly: Assembly,
  pose: Pose,
  planeX: number,
  solidPose: Pose = pose,
): Promise<Compared> {
  const frame = frameOf(assembly, pose, planeX);
  const { width, height } = frame;
  const view: View = {
    scaleX: PIXELS_PER_MM,
    scaleY: PIXELS_PER_MM,
    originX: width / 2 - PIXELS_PER_MM * frame.middleZ,
    originY: height / 2 + PIXELS_PER_MM * frame.middleY,
  };
  const colours = flatColours(assembly);
  const nodes = flatMetal(
    assembly,
    pose,
    view,
    planeX,
    (partKey) => `rgb(${colours.get(partKey)!.join(' ')})`,
  );
  const svg = toSvgText(drawingRoot({ width, height }, 'Section', nodes));
  const drawn = await page.evaluate(([text, w, h]) => window.solidView.raster(text, w, h), [
    svg,
    width,
    height,
  ] as const);
  const solid = await page.evaluate(
    ([assembled, posed, framed]) => window.solidView.flat(assembled, posed, framed),
    [assembly, sentPose(solidPose), frame] as const,
  );
  const picture = (text: string): FlatPicture => ({ bytes: Buffer.from(text, 'base64'), width, height });
  const cut = cutAlong(assembly, pose, planeX);
  const outlines = cut.flatMap(({ region }) => regionPolygons(view, region, 0.02));
  const names = new Map([...colours].map(([key, colour]) => [colour[2], key]));
  const agreement = compareSections(picture(drawn), picture(solid.picture), outlines, names);
  return { ...agreement, areaFaults: areaFaults(cut, new Map(solid.areas)) };
}

/** Areas are compared as measured, not as pixels: a row of pixels more or less is more than what is asked for. */
function areaFaults(cut: readonly CutPart[], solid: ReadonlyMap<string, number>): string[] {
  return cut.flatMap(({ partKey, region }) => {
    const drawnArea = regionArea(region);
    const share = (solid.get(partKey) ?? 0) / drawnArea - 1;
    const isEqual = Math.abs(share) <= MOST_AREA_SHARE || drawnArea < LEAST_AREA_MM2;
    return isEqual ? [] : [`the area of ${partKey} differs by ${(share * 100).toFixed(2)} %`];
  });
}

/** Frames everything that is cut, on whole pixels. */
function frameOf(assembly: Assembly, pose: Pose, planeX: number): FlatFrame {
  const cut = boundsOf(cutAlong(assembly, pose, planeX).flatMap(({ region }) => region));
  const { topY } = shellShape(assembly);
  const back = bodySpans(assembly)[0]!.back;
  const [left, right] = [Math.min(cut.left, 0), Math.max(cut.right, back)];
  const [bottom, top] = [cut.bottom, Math.max(cut.top, topY)];
  const even = (length: number) => 2 * Math.ceil((length * PIXELS_PER_MM) / 2) + 2 * RIM;
  return {
    planeX,
    middleZ: (left + right) / 2,
    middleY: (bottom + top) / 2,
    pixelsPerMm: PIXELS_PER_MM,
    width: even(right - left),
    height: even(top - bottom),
  };
}
