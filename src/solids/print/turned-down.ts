/**
 * Clearance for printed parts that have to slide and turn. It is taken off the rounds, never off lengths or heights, so that
 * printed stacks stand as high as the real ones. mm of the cylinder, not of the print.
 */
import type { Assembly } from '../../model/assembly/assembly.ts';
import type { ProfilePoint } from '../lathe-mesh.ts';
import type { Lathe, Recipe } from '../recipe.ts';
import { turnedRecipe } from '../solid-parts.ts';
import type { StackPart } from '../../model/assembly/assembly.ts';

/** Takes the clearance off the round of every body but the shell, and off both sides of the key. */
export function withClearance(assembly: Assembly, clearance: number): Assembly {
  const { bodies, key } = assembly;
  return {
    ...assembly,
    bodies: bodies.map((body, i) =>
      i === bodies.length - 1 ? body : { ...body, outerRadius: body.outerRadius - clearance },
    ),
    // The keyway stays as wide as it was: what the key loses is its play.
    keywayWidth: Math.max(assembly.keywayWidth, key?.thickness ?? 0),
    key: key === null ? null : { ...key, thickness: key.thickness - 2 * clearance },
  };
}

/** The recipe of a ball, pin or driver whose round is turned down; what lies nearer to the axis stays as it was. */
export function turnedDownRecipe(part: StackPart, clearance: number): Recipe {
  const whole = turnedRecipe(part) as Lathe;
  return { ...whole, profile: turnedDown(whole.profile, part.radius - clearance) };
}

/** Cuts a profile off at a distance from the axis. */
export function turnedDown(profile: readonly ProfilePoint[], most: number): ProfilePoint[] {
  const points = profile.flatMap((point, i): ProfilePoint[] => {
    const next = profile[i + 1];
    const own = point.r <= most ? [point] : [];
    if (next === undefined || point.r <= most === next.r <= most) return own;
    const share = (most - point.r) / (next.r - point.r);
    return [...own, { r: most, y: point.y + share * (next.y - point.y) }];
  });
  return points.filter((point, i) => {
    const before = points[i - 1];
    return before === undefined || Math.hypot(point.r - before.r, point.y - before.y) > 1e-9;
  });
}
