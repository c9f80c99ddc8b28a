/**
 * A turned blank put in its place in the part: moved, laid along z, or draped over a round surface. Blanks about the y axis
 * (pins, balls, chambers) get the volume of the round thing, see facets.ts. Lengths mm.
 */
import { equalAreaScale } from './facets.ts';
import { latheFacets, latheMesh, type SolidMesh } from './lathe-mesh.ts';
import type { Lathe } from './recipe.ts';

/** Spins a blank and puts it in place. */
export function placedLathe(lathe: Lathe): SolidMesh {
  const mesh = latheMesh(lathe.profile, lathe.isRing);
  const { positions } = mesh;
  const scale = lathe.axis === 'y' ? equalAreaScale(latheFacets(lathe.profile)) : 1;
  for (let i = 0; i < positions.length; i += 3) {
    const x = (positions[i] ?? 0) * scale + lathe.at.x;
    const up = positions[i + 1] ?? 0;
    const side = (positions[i + 2] ?? 0) * scale;
    positions[i] = x;
    if (lathe.axis === 'z') {
      // A quarter turn about x: what pointed up points inwards, what pointed inwards points down.
      positions[i + 1] = lathe.at.y - side;
      positions[i + 2] = lathe.at.z + up;
    } else {
      positions[i + 1] = lathe.drape === null ? lathe.at.y + up : drapedHeight(lathe.drape, up, x);
      positions[i + 2] = lathe.at.z + side;
    }
  }
  return mesh;
}

/** Height of the round surface `out` outside the given one, over this place across. */
function drapedHeight(drape: NonNullable<Lathe['drape']>, out: number, x: number): number {
  return drape.axisY + Math.sqrt(Math.max(0, (drape.radius + out) ** 2 - x ** 2));
}
