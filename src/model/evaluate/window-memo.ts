/**
 * Windows of one evaluation, each reckoned once: chambers of a cylinder mostly share their sizes. Lives no longer than
 * the evaluation, so the same job always gives the same numbers.
 */
import type { EndShape } from '../end-shape.ts';
import { type ShearWindow, shearWindow } from '../window/shear-window.ts';
import type { MouthShape, WindowInput } from '../window/window-input.ts';

export type WindowOf = (input: WindowInput) => ShearWindow;

/** Makes a window function that remembers. */
export function windowMemo(): WindowOf {
  const known = new Map<string, ShearWindow>();
  return (input) => {
    const key = keyOf(input);
    const before = known.get(key);
    if (before !== undefined) return before;
    const window = shearWindow(input);
    known.set(key, window);
    return window;
  };
}

function keyOf(input: WindowInput): string {
  const { lower, upper, innerHole } = input;
  const plain = `${input.lineRadius} ${input.crestDrop} ${input.clearance} ${input.innerLies} ${input.turn.angle} ${input.steepestRamp}`;
  const parts = `${lower.radius} ${lower.sideways} ${upper.radius} ${upper.sideways} ${innerHole.radius}`;
  return `${plain} ${parts} ${keyOfEnd(lower.top)} ${keyOfEnd(upper.bottom)} ${keyOfMouth(innerHole.mouth)}`;
}

function keyOfEnd(shape: EndShape): string {
  switch (shape.kind) {
    case 'flat':
    case 'sphere':
      return shape.kind;
    case 'bevel':
      return `bevel ${shape.width} ${shape.angle}`;
    case 'radius':
    case 'dome':
      return `${shape.kind} ${shape.radius}`;
    case 'cone':
      return `cone ${shape.tipFlatDiameter} ${shape.includedAngle}`;
    case 'cup':
      return `cup ${shape.mouthDiameter} ${shape.includedAngle}`;
  }
}

function keyOfMouth(mouth: MouthShape): string {
  return mouth.kind === 'sharp' ? 'sharp' : `${mouth.kind} ${mouth.size}`;
}
