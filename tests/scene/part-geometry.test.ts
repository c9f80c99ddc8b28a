import { BufferGeometry } from 'three';
import { expect, test } from 'vitest';
import { buildSpringGeometry, GeometryShelf } from '../../src/scene/part-geometry.ts';
import { buildSpringMesh, springPositions } from '../../src/solids/helix-mesh.ts';

test('equal numbers share one geometry, which goes with its last user', () => {
  const shelf = new GeometryShelf<{ readonly one: BufferGeometry; readonly none: null }>();
  let built = 0;
  let disposed = 0;
  const build = () => {
    built += 1;
    const one = new BufferGeometry();
    one.addEventListener('dispose', () => {
      disposed += 1;
    });
    return { one, none: null };
  };
  const first = shelf.take('a', build);
  expect(shelf.take('a', build)).toBe(first);
  expect(built).toBe(1);
  shelf.release('a');
  expect(disposed).toBe(0);
  shelf.release('a');
  expect(disposed).toBe(1);
  // A second release of the same user is no error and frees nothing twice.
  shelf.release('a');
  expect(disposed).toBe(1);
  expect(shelf.take('a', build)).not.toBe(first);
  expect(built).toBe(2);
});

test('a spring of the scene stands as long as its one number says', () => {
  const shape = { radius: 1.8, wire: 0.36, coils: 11, solid: 4 };
  const { coil } = buildSpringGeometry(shape);
  const base = coil.getAttribute('position');
  const target = coil.morphAttributes.position?.[0];
  const wanted = springPositions(buildSpringMesh(shape), 7.5);
  for (let i = 0; i < base.count; i++) {
    expect(base.getY(i) + 7.5 * target!.getY(i)).toBeCloseTo(wanted[3 * i + 1]!, 4);
  }
});
