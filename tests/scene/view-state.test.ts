import { test as propertyTest, fc } from '@fast-check/vitest';
import { OrthographicCamera } from 'three';
import { describe, expect, test } from 'vitest';
import { aimCamera, createCameras, pointInPicture } from '../../src/scene/camera.ts';
import { commandForKey, VIEW_KEYS } from '../../src/scene/view-keys.ts';
import {
  type Extent,
  fit,
  lookFrom,
  orbit,
  pan,
  placeInPicture,
  viewBasis,
  type ViewState,
  zoom,
} from '../../src/scene/view-state.ts';
import { ViewStore } from '../../src/scene/view-store.ts';
import type { Triple } from '../../src/solids/section-plane.ts';

const START: ViewState = { target: [0, 0, 20], azimuth: 0, elevation: 0, height: 40 };
const EXTENT: Extent = { low: [-9, -14, -22], high: [9, 26, 58] };
const number = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });
const anyView = fc.record({
  target: fc.tuple(number(-20, 20), number(-20, 20), number(-20, 60)),
  azimuth: number(-3, 3),
  elevation: number(-1.57, 1.57),
  height: number(1, 200),
});

function expectTriple(actual: Triple, wanted: Triple): void {
  actual.forEach((value, i) => expect(value).toBeCloseTo(wanted[i]!, 9));
}

describe('standard views', () => {
  test.each([
    ['front', [0, 0, 1], [-1, 0, 0], [0, 1, 0]],
    ['back', [0, 0, -1], [1, 0, 0], [0, 1, 0]],
    ['right', [1, 0, 0], [0, 0, 1], [0, 1, 0]],
    ['left', [-1, 0, 0], [0, 0, -1], [0, 1, 0]],
    ['top', [0, -1, 0], [0, 0, 1], [1, 0, 0]],
    ['bottom', [0, 1, 0], [0, 0, 1], [-1, 0, 0]],
  ] as const)('%s looks along %j with %j to the right', (from, forward, right, up) => {
    const basis = viewBasis(lookFrom(START, from, null));
    expectTriple(basis.forward, forward);
    expectTriple(basis.right, right);
    expectTriple(basis.up, up);
  });

  test('the section is looked at straight, whichever way its plane lies', () => {
    const normals: Triple[] = [
      [1, 0, 0],
      [-1, 0, 0],
      [0, 0, 1],
      [0, 0, -1],
      [0, 1, 0],
      [0, -1, 0],
      [Math.SQRT1_2, 0, Math.SQRT1_2],
    ];
    for (const normal of normals) expectTriple(viewBasis(lookFrom(START, 'section', normal)).forward, normal);
    expectTriple(viewBasis(lookFrom(START, 'section', null)).forward, [1, 0, 0]);
  });

  test('each has a key, and keys that the browser owns do nothing', () => {
    const plain = { shiftKey: false, ctrlKey: false, altKey: false, metaKey: false };
    for (const [key, view] of Object.entries(VIEW_KEYS)) {
      expect(commandForKey({ key, ...plain })).toEqual({ kind: 'look from', view });
      expect(commandForKey({ key, ...plain, ctrlKey: true })).toBeNull();
      expect(commandForKey({ key, ...plain, altKey: true })).toBeNull();
    }
    expect(new Set(Object.values(VIEW_KEYS)).size).toBe(8);
    expect(commandForKey({ key: 'Tab', ...plain })).toBeNull();
    expect(commandForKey({ key: 'ArrowLeft', ...plain })).toMatchObject({ kind: 'orbit', byElevation: 0 });
    expect(commandForKey({ key: 'ArrowLeft', ...plain, shiftKey: true })).toMatchObject({
      kind: 'pan',
      byUp: 0,
    });
    expect(commandForKey({ key: '+', ...plain, shiftKey: true })).toMatchObject({ kind: 'zoom' });
    expect(commandForKey({ key: '0', ...plain })).toEqual({ kind: 'fit' });
  });
});

describe('moving the view', () => {
  propertyTest.prop({ view: anyView, right: number(-1, 1), up: number(-0.5, 0.5), factor: number(0.2, 5) })(
    'zooming about a point leaves that point where it is',
    ({ view, right, up, factor }) => {
      const { right: across, up: upward } = viewBasis(view);
      const point = view.target.map(
        (value, i) => value + (across[i]! * right + upward[i]! * up) * view.height,
      ) as unknown as Triple;
      const after = placeInPicture(zoom(view, factor, { right, up }), point);
      expect(after.right).toBeCloseTo(right, 6);
      expect(after.up).toBeCloseTo(up, 6);
    },
  );

  propertyTest.prop({ view: anyView, right: number(-1, 1), up: number(-1, 1) })(
    'panning moves everything by as much as was asked, and back again',
    ({ view, right, up }) => {
      const moved = pan(view, right, up);
      const place = placeInPicture(moved, view.target);
      expect(place.right).toBeCloseTo(right, 9);
      expect(place.up).toBeCloseTo(up, 9);
      expectTriple(pan(moved, -right, -up).target, view.target);
    },
  );

  test('orbiting stops straight above and below, and goes around without end', () => {
    expect(orbit(START, 0, 9).elevation).toBe(Math.PI / 2);
    expect(orbit(START, 0, -9).elevation).toBe(-Math.PI / 2);
    let view = START;
    for (let i = 0; i < 72; i++) view = orbit(view, (5 * Math.PI) / 180, 0);
    expect(view.azimuth).toBeCloseTo(0, 9);
  });

  propertyTest.prop({
    view: anyView,
    width: fc.integer({ min: 320, max: 2560 }),
    height: fc.integer({ min: 200, max: 1400 }),
  })(
    'fitting brings every corner into the picture with a margin, and no smaller than it must be',
    ({ view, width, height }) => {
      const fitted = fit(view, EXTENT, { width, height });
      const aspect = width / height;
      let fullest = 0;
      for (let i = 0; i < 8; i++) {
        const corner: Triple = [
          (i & 1 ? EXTENT.high : EXTENT.low)[0],
          (i & 2 ? EXTENT.high : EXTENT.low)[1],
          (i & 4 ? EXTENT.high : EXTENT.low)[2],
        ];
        const place = placeInPicture(fitted, corner);
        fullest = Math.max(fullest, Math.abs(place.up) * 2, (Math.abs(place.right) * 2) / aspect);
      }
      expect(fullest).toBeLessThan(0.9);
      expect(fullest).toBeGreaterThan(0.8);
    },
  );
});

describe('the camera', () => {
  propertyTest.prop({ view: anyView, x: number(-9, 9), y: number(-14, 26), z: number(-22, 58) })(
    'shows a point where the view says, and within its depth',
    ({ view, x, y, z }) => {
      const size = { width: 900, height: 600 };
      const { orthographic } = createCameras();
      aimCamera(orthographic, view, size, EXTENT);
      const place = placeInPicture(view, [x, y, z]);
      const seen = pointInPicture(orthographic, size, [x, y, z]);
      expect(seen.x).toBeCloseTo(450 + place.right * 600, 3);
      expect(seen.y).toBeCloseTo(300 - place.up * 600, 3);
      expect(orthographic.near).toBeGreaterThan(0);
      // Depth is kept close around what is shown: a diagonal of 94 mm and a little more.
      expect(orthographic.far - orthographic.near).toBeLessThan(100);
    },
  );

  test('with perspective the target keeps its place and its scale', () => {
    const size = { width: 900, height: 600 };
    const { perspective } = createCameras();
    aimCamera(perspective, START, size, EXTENT);
    const middle = pointInPicture(perspective, size, START.target);
    expect(middle.x).toBeCloseTo(450, 6);
    expect(middle.y).toBeCloseTo(300, 6);
    const above = pointInPicture(perspective, size, [0, START.height / 2, 20]);
    expect(above.y).toBeCloseTo(0, 3);
    expect(perspective).not.toBeInstanceOf(OrthographicCamera);
  });
});

describe('a view store', () => {
  test('frames the section once, when there is something to see', () => {
    let extent: Extent | null = null;
    const store = new ViewStore(() => extent);
    store.setSize({ width: 800, height: 600 });
    store.setPlane({ normal: [0, 0, 1], offset: 10 });
    let told = 0;
    store.subscribe(() => (told += 1));
    store.frameFirst();
    expect(told).toBe(0);
    extent = EXTENT;
    store.frameFirst();
    expectTriple(viewBasis(store.state).forward, [0, 0, 1]);
    expect(told).toBe(1);
    store.run({ kind: 'zoom', factor: 2 });
    const zoomed = store.state;
    store.frameFirst();
    expect(store.state).toBe(zoomed);
  });
});
