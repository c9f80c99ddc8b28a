/** What a close-up draws at the line, read back from its SVG, is what was reckoned. */
import { fc, test } from '@fast-check/vitest';
import { describe, expect } from 'vitest';
import { closeUp } from '../../src/drawing/close-up.ts';
import { closeUpFrame } from '../../src/drawing/close-up-frame.ts';
import { closeUpLarge } from '../../src/drawing/close-up-large.ts';
import type { DrawingNode } from '../../src/drawing/node.ts';
import { stackSplit } from '../../src/drawing/stack-split.ts';
import { known } from '../../src/model/assert.ts';
import { poseAt } from '../../src/model/assembly/pose-at.ts';
import { sampleAssembly, sampleEvaluation, samplePose } from '../support/sample-assembly.ts';
import { everyNode, pathPoints, textBoxes } from '../support/svg-boxes.ts';

/** Heights, px, of the highest and the lowest corner of a part's face. */
function faceHeights(root: DrawingNode, partKey: string): { top: number; bottom: number } {
  const part = known(
    everyNode(root).find(({ attributes }) => attributes['data-part'] === partKey),
    partKey,
  );
  const face = known(
    everyNode(part).find(({ attributes }) => String(attributes['class']).startsWith('fill')),
    'face',
  );
  const heights = pathPoints(String(face.attributes['d'])).map(({ y }) => y);
  return { top: Math.min(...heights), bottom: Math.max(...heights) };
}

const anyOffset = fc.oneof(
  fc.constantFrom(0, 0.0127, -0.0127, 0.0254, -0.0254),
  fc.double({ min: -0.25, max: 0.25, noNaN: true }),
);
const BOX = { left: 40, right: 148, top: 22.1, bottom: 150.1 };

describe('a close-up', () => {
  test.prop([anyOffset, fc.constantFrom('stretched' as const, 'true' as const)], { numRuns: 300 })(
    'draws the top of the pin as far from the line as was reckoned',
    (offset, mode) => {
      const assembly = sampleAssembly({ offsets: [offset] });
      const pose = samplePose(assembly);
      const evaluation = sampleEvaluation(assembly, pose);
      const split = stackSplit(assembly, pose, evaluation, 'chamber1');
      const { view } = closeUpFrame(split, BOX, mode, 10);
      const drawing = closeUp(assembly, pose, evaluation, {
        chamber: 'chamber1',
        width: 150,
        windowHeight: 128,
        unit: 'in',
        mode,
      });
      // The window's own place does not matter: heights are read between parts and the line's arc of one drawing.
      const arc = known(
        everyNode(drawing).find(({ attributes }) => attributes['class'] === 'shear-line'),
        'line',
      );
      const start = known(pathPoints(String(arc.attributes['d']))[0], 'start of the arc');
      const scale = realScale(drawing, mode, view.scaleY);
      const lineTop = start.y - split.line.radius * scale;
      const pin = faceHeights(drawing, 'part chamber1 1');
      expect(Math.abs((lineTop - pin.top) / scale - offset)).toBeLessThanOrEqual(1e-6);
    },
  );

  test.prop([fc.double({ min: 0.001, max: 0.2, noNaN: true })], { numRuns: 100 })(
    'draws a gap between pin and driver when there is one, and as large as it is',
    (gap) => {
      const assembly = sampleAssembly({ offsets: [-0.1] });
      const level = known(assembly.lines[0], 'line').radius;
      const pose = poseAt(assembly, { travel: 0, driverFloors: new Map([['chamber1', level - 0.1 + gap]]) });
      const drawing = closeUpLarge(assembly, pose, null, { chamber: 'chamber1', width: 640, unit: 'mm' });
      const pin = faceHeights(drawing, 'part chamber1 1');
      const driver = faceHeights(drawing, 'part chamber1 2');
      const [mm = ''] = textBoxes(drawing).flatMap(({ text }) => (/^\d+:1$/.test(text) ? [text] : []));
      const scale = (Number(mm.split(':')[0]) * 96) / 25.4;
      expect(Math.abs((pin.top - driver.bottom) / scale - gap)).toBeLessThanOrEqual(1e-6);
    },
  );

  test.prop([anyOffset], { numRuns: 200 })('draws no gap where parts touch', (offset) => {
    const assembly = sampleAssembly({ offsets: [offset] });
    const pose = samplePose(assembly);
    const drawing = closeUpLarge(assembly, pose, sampleEvaluation(assembly, pose), {
      chamber: 'chamber1',
      width: 640,
      unit: 'in',
    });
    expect(faceHeights(drawing, 'part chamber1 2').bottom).toBe(faceHeights(drawing, 'part chamber1 1').top);
  });

  test.prop([fc.double({ min: 0.4, max: 3, noNaN: true }), fc.boolean()], { numRuns: 60 })(
    'says with an arrow and a number where the split is when the window does not reach it',
    (amount, isHigh) => {
      const offset = isHigh ? amount : -amount;
      const assembly = sampleAssembly({ offsets: [offset] });
      const pose = samplePose(assembly);
      const drawing = closeUp(assembly, pose, sampleEvaluation(assembly, pose), {
        chamber: 'chamber1',
        width: 150,
        windowHeight: 128,
        unit: 'mm',
        mode: 'stretched',
      });
      const mark = everyNode(drawing).find(({ attributes }) => attributes['class'] === 'outside');
      expect(mark).toBeDefined();
      expect(textBoxes(drawing).some(({ text }) => text === amount.toFixed(2))).toBe(true);
      expect(everyNode(drawing).some(({ attributes }) => attributes['class'] === 'uncertainty')).toBe(false);
    },
  );

  test('follows the evaluated height where it differs from the key’s shape', () => {
    const assembly = sampleAssembly({ offsets: [0.02] });
    const pose = samplePose(assembly);
    const evaluation = sampleEvaluation(assembly, pose);
    const better = {
      ...evaluation,
      chambers: evaluation.chambers.map((chamber) => ({
        ...chamber,
        splits: chamber.splits.map((each) => ({
          ...each,
          offset: each.offset - 0.05,
          height: each.height - 0.05,
        })),
      })),
    };
    const split = stackSplit(assembly, pose, better, 'chamber1');
    expect(split.offset).toBeCloseTo(-0.03, 9);
    expect(split.below?.topY).toBeCloseTo(9.4 - 0.03, 9);
    expect(split.above?.y).toBe(split.below?.topY);
    const away = stackSplit(assembly, samplePose(assembly, 4), better, 'chamber1');
    expect(away.result).toBeNull();
  });
});

function realScale(drawing: DrawingNode, mode: 'stretched' | 'true', likely: number): number {
  if (mode === 'true') return (50 * 96) / 25.4;
  const window = known(
    everyNode(drawing).find(({ attributes }) => attributes['class'] === 'window'),
    'window',
  );
  return (likely * Number(window.attributes['width'])) / (BOX.right - BOX.left);
}
