/** No label overlaps another and none leaves its drawing, at any width from 320 to 2560 px, also with text at 200 %. */
import { afterAll, describe, expect, test } from 'vitest';
import { closeUp } from '../../src/drawing/close-up.ts';
import { closeUpLarge } from '../../src/drawing/close-up-large.ts';
import { endView } from '../../src/drawing/end-view.ts';
import { liftChart } from '../../src/drawing/lift-curve.ts';
import { springForceChart } from '../../src/drawing/spring-force-curve.ts';
import { longSection } from '../../src/drawing/long-section.ts';
import { fromDegrees } from '../../src/model/radians.ts';
import type { DrawingNode } from '../../src/drawing/node.ts';
import { recordFigure } from '../support/figure.ts';
import { sampleAssembly, sampleEvaluation, samplePose } from '../support/sample-assembly.ts';
import { textBoxes, textFaults } from '../support/svg-boxes.ts';

const WIDTHS = [320, 343, 375, 412, 480, 559, 560, 600, 768, 900, 1024, 1280, 1440, 1920, 2560];
/** Nothing stops; one does; all do, in every way. */
const OFFSETS = [
  [0, 0, 0, 0, 0, 0, 0],
  [0.005, -0.025, -0.005, 0.06, 0.24, -0.04, 0],
  [0.3, -0.4, 0.25, 0.11, -0.5, 0.24, -0.3],
];
const CASES = [5, 6, 7].flatMap((chambers) =>
  [false, true].flatMap((hasSleeve) =>
    OFFSETS.map((offsets) => ({ chambers, hasSleeve, offsets, outerOffset: 0.3 })),
  ),
);

let looked = 0;
let overlaps = 0;
function faultsIn(drawing: DrawingNode): string[] {
  const faults = textFaults(drawing);
  looked += 1;
  overlaps += faults.length;
  return faults;
}

describe('labels', () => {
  afterAll(() => {
    recordFigure({
      what: 'labels that overlap or leave their drawing, 320 to 2560 px, text up to 200 %',
      measured: overlaps,
      unit: 'labels',
      aim: { atMost: 0 },
      note: `${looked} drawings`,
    });
  });

  test.each(CASES)('of the long section keep clear of each other: %o', (options) => {
    const assembly = sampleAssembly(options);
    const pose = samplePose(assembly);
    const turned = { ...pose, turns: new Map([['plug', fromDegrees(30)]]) };
    const evaluation = sampleEvaluation(assembly, pose);
    const common = { ...evaluation, commonError: { offset: 0.2, message: '' } };
    const faults: string[] = [];
    WIDTHS.forEach((width, i) => {
      for (const textScale of i % 2 === 0 ? [1] : [1, 2]) {
        const unit = (i + textScale) % 2 === 0 ? 'in' : 'mm';
        const look = { width, unit, textScale, pickedChamber: 'chamber2' } as const;
        const drawings = [
          longSection(assembly, pose, evaluation, look),
          longSection(assembly, pose, common, look),
          longSection(assembly, turned, evaluation, { ...look, planeOffset: 0.7, maxHeight: 420 }),
        ];
        for (const drawing of drawings)
          faults.push(...faultsIn(drawing).map((fault) => `${width} px x${textScale}: ${fault}`));
      }
    });
    expect(faults).toEqual([]);
  });

  test.each(CASES)('of close-ups and end views keep clear of each other: %o', (options) => {
    const assembly = sampleAssembly(options);
    const pose = samplePose(assembly);
    const evaluation = sampleEvaluation(assembly, pose);
    const faults: string[] = [];
    assembly.chambers.slice(1, 4).forEach(({ id }, i) => {
      for (const line of assembly.lines) {
        const unit = i % 2 === 0 ? 'in' : 'mm';
        const look = { chamber: id, line: line.id, unit } as const;
        for (const width of [104, 130, 168, 260]) {
          const small = { ...look, width, windowHeight: 128 };
          const drawings = [
            closeUp(assembly, pose, evaluation, { ...small, mode: 'stretched', badge: 'short' }),
            closeUp(assembly, pose, evaluation, { ...small, mode: 'stretched', badge: 'full' }),
            closeUp(assembly, pose, evaluation, { ...small, mode: 'true' }),
          ];
          for (const drawing of drawings) faults.push(...faultsIn(drawing).map((f) => `${width}: ${f}`));
        }
        for (const width of [320, 343, 420, 560, 720, 1100]) {
          const large = closeUpLarge(assembly, pose, evaluation, { ...look, width });
          const end = endView(assembly, pose, evaluation, { ...look, width });
          faults.push(...faultsIn(large).map((f) => `large ${width}: ${f}`));
          faults.push(...faultsIn(end).map((f) => `end ${width}: ${f}`));
        }
      }
    });
    expect(faults).toEqual([]);
  });

  test('of the lift chart keep clear of each other', () => {
    const assembly = sampleAssembly();
    const pose = samplePose(assembly, 11);
    for (const width of WIDTHS) {
      for (const unit of ['in', 'mm'] as const) {
        const chart = liftChart(assembly, pose, { width, height: 180, unit, pickedChamber: 'chamber3' });
        expect(chart === null ? ['no chart'] : faultsIn(chart)).toEqual([]);
      }
    }
  });

  test('of the chart of spring forces keep clear of each other', () => {
    for (const width of [280, ...WIDTHS])
      for (const unit of ['in', 'mm'] as const)
        for (const most of [0.04, 1, 7.3, 25, 240]) {
          const forces = [30, 20, 10, 0].map((travel, i) => ({ travel, force: (most * (i + 1)) / 4 }));
          const chart = springForceChart(forces, 12, { width, height: 150, unit });
          expect(chart === null ? ['no chart'] : faultsIn(chart), `${width} ${most} ${unit}`).toEqual([]);
        }
  });

  test('that do not fit are counted', () => {
    const assembly = sampleAssembly({ chambers: 7, offsets: [0.3, -0.4, 0.25, 0.3, -0.5, 0.24, -0.3] });
    const pose = samplePose(assembly);
    const texts = (width: number): string[] =>
      textBoxes(longSection(assembly, pose, sampleEvaluation(assembly, pose), { width, unit: 'in' })).map(
        ({ text }) => text,
      );
    const flagged = (width: number): number => texts(width).filter((text) => /\.\d{4}$/.test(text)).length;
    const hidden = (width: number): number =>
      Number(
        texts(width)
          .find((text) => text.endsWith(' more'))
          ?.split(' ')[0] ?? 0,
      );
    for (const width of WIDTHS) expect(flagged(width) + hidden(width)).toBe(7);
    expect(hidden(320)).toBeGreaterThan(0);
    expect(hidden(1440)).toBe(0);
  });
});
