/**
 * The end of a part as the window sees it: a round face, then an edge that is straight or an arc, then the rim.
 *
 *      face            edge
 *   .________.________.
 *   |        face      `.         drop: below the face, mm; slope: mm per mm
 *   axis     radius      `|rim
 *
 * Every end shape is one of these: flat (no edge), bevel and cone (straight), rounded edge, dome and ball (arc; a dome
 * and a ball have no face). A dimple is hidden by its rim, so a cupped end is flat here; how deep another part sinks
 * into a dimple is the business of `nesting`.
 */
import type { EndShape } from '../end-shape.ts';

export type EndOutline = {
  readonly partRadius: number;
  /** Radius of the round face in the middle; its drop is 0. */
  readonly faceRadius: number;
  /** Slope of a straight edge; 0 where there is none. */
  readonly slope: number;
  /** Radius of an arc, centred `faceRadius` from the axis; 0 where there is none. */
  readonly arcRadius: number;
};

/** Stands for "upright": a rounded edge at its rim. Finite, so that 0 times it is 0 and not NaN. mm per mm. */
const UPRIGHT = 1e12;

/** Reads an end shape as face and edge. Sizes larger than the part are cut down to it. */
export function outlineOf(shape: EndShape, partRadius: number): EndOutline {
  switch (shape.kind) {
    case 'flat':
    case 'cup':
      return { partRadius, faceRadius: partRadius, slope: 0, arcRadius: 0 };
    case 'bevel':
      return {
        partRadius,
        faceRadius: Math.max(0, partRadius - shape.width),
        slope: Math.tan(shape.angle),
        arcRadius: 0,
      };
    case 'radius': {
      const arcRadius = Math.min(shape.radius, partRadius);
      return { partRadius, faceRadius: partRadius - arcRadius, slope: 0, arcRadius };
    }
    case 'dome':
      return { partRadius, faceRadius: 0, slope: 0, arcRadius: Math.max(shape.radius, partRadius) };
    case 'sphere':
      return { partRadius, faceRadius: 0, slope: 0, arcRadius: partRadius };
    case 'cone':
      return {
        partRadius,
        faceRadius: Math.min(shape.tipFlatDiameter / 2, partRadius),
        slope: 1 / Math.tan(shape.includedAngle / 2),
        arcRadius: 0,
      };
  }
}

/** Measures the drop at a distance from the axis, not negative, at most the part's radius. mm. */
export function outlineDrop(outline: EndOutline, distance: number): number {
  const inward = distance - outline.faceRadius;
  if (inward <= 0) return 0;
  if (outline.arcRadius === 0) return inward * outline.slope;
  return outline.arcRadius - Math.sqrt(Math.max(0, outline.arcRadius ** 2 - inward * inward));
}

/** Measures the slope at a distance from the axis, not negative; at a corner the slope just inside. mm per mm. */
export function outlineSlope(outline: EndOutline, distance: number): number {
  const inward = distance - outline.faceRadius;
  if (inward <= 0) return 0;
  if (outline.arcRadius === 0) return outline.slope;
  const upright = outline.arcRadius ** 2 - inward * inward;
  return upright <= 0 ? UPRIGHT : Math.min(UPRIGHT, inward / Math.sqrt(upright));
}
