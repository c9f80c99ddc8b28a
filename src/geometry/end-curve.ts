/**
 * The end of a turned part as a path, from the axis out to the rim. Half profile: x is the distance from the axis, y the
 * height; the end points down, its lowest point lies at y = 0. mm. The same shapes as `endDrop` measures.
 *
 *      axis                axis                axis               axis
 *       |        |          |        |          |       )          | \        |
 *       |________|          |______./           |____.-'           |__\_______|
 *        flat                bevel              dome, radius        cup: starts at the bottom of the dimple
 */
import type { EndShape } from '../model/end-shape.ts';
import { arcTo, type Edge, lineTo, type Path } from './outline.ts';

/** Draws the end's lower half profile. Sizes beyond the part's own are cut back to it. */
export function endCurve(shape: EndShape, partRadius: number): Path {
  switch (shape.kind) {
    case 'flat':
      return { start: { x: 0, y: 0 }, edges: [lineTo(partRadius, 0)] };
    case 'bevel': {
      const width = Math.min(shape.width, partRadius);
      return slopedEnd(partRadius, partRadius - width, width * Math.tan(shape.angle));
    }
    case 'cone': {
      const flat = Math.min(shape.tipFlatDiameter / 2, partRadius);
      return slopedEnd(partRadius, flat, (partRadius - flat) / Math.tan(shape.includedAngle / 2));
    }
    case 'radius':
      return roundedEnd(partRadius, Math.min(shape.radius, partRadius));
    case 'dome':
      return domedEnd(partRadius, Math.max(shape.radius, partRadius));
    case 'sphere':
      return domedEnd(partRadius, partRadius);
    case 'cup': {
      const mouth = Math.min(shape.mouthDiameter / 2, partRadius);
      const depth = mouth / Math.tan(shape.includedAngle / 2);
      const rim: Edge[] = mouth < partRadius ? [lineTo(partRadius, 0)] : [];
      return { start: { x: 0, y: depth }, edges: [lineTo(mouth, 0), ...rim] };
    }
  }
}

function slopedEnd(partRadius: number, flat: number, rise: number): Path {
  const edges: Edge[] = flat > 0 ? [lineTo(flat, 0)] : [];
  return { start: { x: 0, y: 0 }, edges: rise > 0 ? [...edges, lineTo(partRadius, rise)] : edges };
}

function roundedEnd(partRadius: number, radius: number): Path {
  const flat = partRadius - radius;
  const edges: Edge[] = flat > 0 ? [lineTo(flat, 0)] : [];
  const round = arcTo({ x: partRadius, y: radius }, { x: flat, y: radius }, false);
  return { start: { x: 0, y: 0 }, edges: radius > 0 ? [...edges, round] : edges };
}

function domedEnd(partRadius: number, crown: number): Path {
  const drop = crown - Math.sqrt(crown ** 2 - partRadius ** 2);
  return {
    start: { x: 0, y: 0 },
    edges: [arcTo({ x: partRadius, y: drop }, { x: 0, y: crown }, false)],
  };
}
