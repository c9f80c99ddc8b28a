/** Words for fields and end shapes, in the unit of the job. The same words as on screen (see docs/model.md). */
import type { EndShape } from '../end-shape.ts';
import type { FieldRef } from '../estimate/estimate.ts';
import { formatLength } from '../units/format-length.ts';
import { formatRange } from '../units/format-range.ts';
import type { JobUnit } from '../units/length-unit.ts';

/** A length with its unit, to the half thousandth or 0.01 mm, without sign. */
export function sayAmount(mm: number, unit: JobUnit): string {
  return formatLength(Math.abs(mm), { unit, form: 'bench', hasUnit: true });
}

/** A stack or part length with its unit. */
export function sayLength(mm: number, unit: JobUnit): string {
  return formatLength(mm, { unit, hasUnit: true, keepsPlaces: true });
}

/** Lengths that do, ".2455 in to .2495 in": the figures of the table. */
export function sayRange(from: number, to: number, unit: JobUnit): string {
  const [least, most] = formatRange(from, to, unit);
  return `${least} ${unit} to ${most} ${unit}`;
}

/** An end shape, as said of a pin's top or a driver's bottom. */
export function sayEnd(shape: EndShape, unit: JobUnit): string {
  switch (shape.kind) {
    case 'flat':
      return 'flat with a sharp edge';
    case 'bevel':
      return `edge broken ${sayAmount(shape.width, unit)}`;
    case 'radius':
      return `edge rounded ${sayAmount(shape.radius, unit)}`;
    case 'dome':
      return `domed to ${sayAmount(shape.radius, unit)}`;
    case 'cone':
      return 'pointed';
    case 'cup':
      return 'cupped';
    case 'sphere':
      return 'round';
  }
}

const FIELD_WORDS: Readonly<Record<string, string>> = {
  'body outerDiameter': 'the plug diameter',
  'body outerDiameter/sleeve': 'the sleeve, across',
  'line clearance': 'the play between plug and shell',
  'line clearance/inner': 'the play between plug and sleeve',
  'line clearance/outer': 'the play between sleeve and shell',
  'chamber position': 'where the chamber sits',
  'cut position': 'where the cut sits',
  'cut rootDepth': 'the root depth of the cut',
  'cut overBall': 'the height over the ball',
  'cut overBallBall': 'the ball laid in the cut',
  'cut rootFlat': 'the root flat of the cut',
  'cut includedAngle': 'the angle of the cut',
  'key rootFlat': 'the root flat of the cuts',
  'key includedAngle': 'the angle of the cuts',
  'key bladeHeight': 'the height of the blade',
  'seating keywayFloorHeight': 'the metal under the key',
  'seating plugMinusFloor': 'the rod reading from crest to floor',
  'seating stopShort': 'how far the key stops short',
  'seating knownSets': 'the set known to work',
  'group height': 'the ball + bottom pin together',
  'part length': 'the length of the pin',
  'part diameter': 'the diameter of the ball',
  'part dimple': 'the ball + bottom pin together',
  'standsUpBy reading': 'how far it stands up',
  'standsUpBy stack': 'the stack that stands up',
  'session closedReading': 'what the caliper reads closed',
};

/** What an entered quantity is called. */
export function sayField(field: FieldRef): string {
  if (field.name.startsWith('holeDiameter')) return 'the chamber diameter';
  return FIELD_WORDS[`${field.owner} ${field.name}`] ?? 'one of the readings';
}
