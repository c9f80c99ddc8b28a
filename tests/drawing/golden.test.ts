import { describe, test } from 'vitest';
import { closeUp } from '../../src/drawing/close-up.ts';
import { closeUpLarge } from '../../src/drawing/close-up-large.ts';
import { endView } from '../../src/drawing/end-view.ts';
import { longSection } from '../../src/drawing/long-section.ts';
import { toSvgText } from '../../src/drawing/node.ts';
import { fromDegrees } from '../../src/model/radians.ts';
import { expectGolden } from '../support/golden.ts';
import { sampleAssembly, sampleEvaluation, samplePose } from '../support/sample-assembly.ts';

describe('golden drawings', () => {
  test('six chambers, one too high, key fully in', () => {
    const assembly = sampleAssembly();
    const pose = samplePose(assembly);
    const evaluation = sampleEvaluation(assembly, pose);
    const look = { width: 960, unit: 'in', pickedChamber: 'chamber5' } as const;
    expectGolden('six-chambers/section.svg', toSvgText(longSection(assembly, pose, evaluation, look)));
    const large = closeUpLarge(assembly, pose, evaluation, { chamber: 'chamber5', width: 640, unit: 'in' });
    expectGolden('six-chambers/close-up-large.svg', toSvgText(large));
    const small = {
      chamber: 'chamber6',
      width: 140,
      windowHeight: 128,
      unit: 'in',
      mode: 'stretched',
    } as const;
    expectGolden('six-chambers/close-up.svg', toSvgText(closeUp(assembly, pose, evaluation, small)));
  });

  test('key half way in, countersunk mouths, a narrow page', () => {
    const assembly = sampleAssembly({ mouth: { kind: 'countersunk', size: 0.3 } });
    const pose = samplePose(assembly, 19);
    const drawing = longSection(assembly, pose, null, { width: 375, unit: 'mm', pickedChamber: 'chamber2' });
    expectGolden('key-half-way/section.svg', toSvgText(drawing));
  });

  test('a sleeve, seven chambers, several stop both lines', () => {
    const assembly = sampleAssembly({
      chambers: 7,
      hasSleeve: true,
      outerOffset: 0.3,
      offsets: [0, 0.3, 0.25, -0.3, 0.11, 0.24, -0.02],
    });
    const pose = samplePose(assembly);
    const evaluation = sampleEvaluation(assembly, pose);
    const drawing = longSection(assembly, pose, evaluation, { width: 1100, unit: 'mm' });
    expectGolden('sleeve/section.svg', toSvgText(drawing));
  });

  test('the plug turned, the plane beside the axis, everything hatched', () => {
    const assembly = sampleAssembly({ chambers: 5 });
    const pose = { ...samplePose(assembly), turns: new Map([['plug', fromDegrees(25)]]) };
    const look = { width: 700, unit: 'in', planeOffset: 0.6, hatch: 'all' } as const;
    expectGolden('turned/section.svg', toSvgText(longSection(assembly, pose, null, look)));
    const end = endView(assembly, pose, null, { chamber: 'chamber2', width: 360, unit: 'in' });
    expectGolden('turned/end-view.svg', toSvgText(end));
  });
});
