/** What was measured together counts in the picture too, shorter or longer than the sum of its parts. Inches. */
import { expect, test } from 'vitest';
import { cylinderH, lookAt } from '../../support/cylinder-h.ts';
import { inches } from '../../support/values.ts';

const INCH = 25.4;

test.each([0.3, 0.3345, 0.35, 0.36])('a ball + bottom pin of %f stands so high in the assembly', (height) => {
  const { assembly, evaluation } = lookAt(cylinderH((job) => (job.groups[0]!.height = inches(height))));
  const [ball, pin] = assembly.stacks[0]!.parts;
  const top = ball!.length - ball!.seat + pin!.length - pin!.seat;
  expect(top / INCH).toBeCloseTo(height, 6);
  expect((evaluation.chambers[0]?.lowerStack ?? 0) / INCH).toBeCloseTo(height, 6);
});
