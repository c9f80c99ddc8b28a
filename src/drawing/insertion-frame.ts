/**
 * The key on its way in, picture by picture: the long section with the key so far out, and in words how far. All pictures of
 * one way have the same size and scale, so that only what moves differs. CSS pixels.
 */
import type { Assembly } from '../model/assembly/assembly.ts';
import { poseAt } from '../model/assembly/pose-at.ts';
import { formatLength } from '../model/units/format-length.ts';
import type { JobUnit } from '../model/units/length-unit.ts';
import { label } from './label.ts';
import { longSection } from './long-section.ts';
import { type DrawingNode, drawingRoot } from './node.ts';

export type InsertionFrameOptions = { readonly unit: JobUnit; readonly width: number };

const TEXT_PX = 14;
const LABEL_ROW_PX = 26;

/** Draws the key `travel` mm out. */
export function insertionFrame(
  assembly: Assembly,
  travel: number,
  { unit, width }: InsertionFrameOptions,
): DrawingNode {
  const section = longSection(assembly, poseAt(assembly, { travel }), null, { unit, width });
  const height = Number(section.attributes['height']);
  const words = travelWords(assembly, travel, unit);
  return drawingRoot(
    { width, height: height + LABEL_ROW_PX },
    `${section.attributes['aria-label'] ?? ''}, ${words}`,
    [
      ...section.children.filter((child) => typeof child !== 'string'),
      label(words, 6, height + TEXT_PX, { size: TEXT_PX, isStrong: true }),
    ],
  );
}

/** Says how far out the key is. */
export function travelWords({ key }: Assembly, travel: number, unit: JobUnit): string {
  const left = travel - (key?.seatedTravel ?? 0);
  if (left <= 0) return 'Key fully in';
  return `Key ${formatLength(left, { unit, keepsPlaces: true, hasUnit: true })} out`;
}

/** mm out after a share of the way in, 0 to 1. */
export function travelAtShare({ key }: Assembly, share: number): number {
  if (key === null) return 0;
  if (share >= 1) return key.seatedTravel;
  return key.outTravel + (key.seatedTravel - key.outTravel) * share;
}
