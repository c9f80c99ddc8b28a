/** Checks of triangle meshes that need no library: closed, every edge shared by two triangles that run along it both ways. */

type Mesh = { readonly positions: ArrayLike<number>; readonly triangles: ArrayLike<number> };

/** Lists what keeps a mesh from being a closed, consistently turned surface; nothing when it is one. */
export function meshFaults(mesh: Mesh): string[] {
  const faults: string[] = [];
  const welded = weld(mesh.positions);
  const edges = new Map<string, number>();
  for (let corner = 0; corner < mesh.triangles.length; corner++) {
    const next = corner % 3 === 2 ? corner - 2 : corner + 1;
    const from = welded[mesh.triangles[corner]!]!;
    const to = welded[mesh.triangles[next]!]!;
    if (from === to) faults.push(`triangle ${Math.floor(corner / 3)} has an edge without length`);
    const key = `${from}>${to}`;
    edges.set(key, (edges.get(key) ?? 0) + 1);
  }
  for (const [key, count] of edges) {
    const [from, to] = key.split('>');
    if (count !== 1) faults.push(`edge ${key} is run along ${count} times`);
    if (edges.get(`${to}>${from}`) !== 1) faults.push(`edge ${key} has no neighbour`);
  }
  return faults;
}

/** Volume by the divergence theorem: positive when the triangles face outwards. */
export function meshVolume({ positions, triangles }: Mesh): number {
  let sum = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((corner) => {
      const place = 3 * triangles[i + corner]!;
      return [positions[place]!, positions[place + 1]!, positions[place + 2]!] as const;
    }) as [Triple, Triple, Triple];
    sum +=
      a[0] * (b[1] * c[2] - b[2] * c[1]) +
      a[1] * (b[2] * c[0] - b[0] * c[2]) +
      a[2] * (b[0] * c[1] - b[1] * c[0]);
  }
  return sum / 6;
}

type Triple = readonly [number, number, number];

/** Gives vertices at the same place the same number: drawn meshes repeat them where the normal changes. */
function weld(positions: ArrayLike<number>): number[] {
  const seen = new Map<string, number>();
  return Array.from({ length: positions.length / 3 }, (_, i) => {
    const key = `${positions[3 * i]!} ${positions[3 * i + 1]!} ${positions[3 * i + 2]!}`;
    const place = seen.get(key) ?? seen.size;
    seen.set(key, place);
    return place;
  });
}
