/**
 * Where the solid view is looked at from, as numbers, and every way to change it. The same functions serve mouse, touch,
 * trackpad, keys and buttons. Knows no camera and no page.
 *
 * Frame: x across, y up, z inwards along the plug; mm, radians. `azimuth` turns about y: 0 looks along +x with the plug
 * lying left to right, a quarter turn looks along +z into the keyway. `elevation` is how far from above.
 */
import type { Triple } from '../solids/section-plane.ts';

export type ViewState = {
  /** The point in the middle of the picture. */
  readonly target: Triple;
  readonly azimuth: number;
  readonly elevation: number;
  /** Height of what the picture shows at the target, mm. */
  readonly height: number;
};

export type StandardView = 'section' | 'front' | 'back' | 'left' | 'right' | 'top' | 'bottom' | 'iso';

export type ViewBasis = { readonly forward: Triple; readonly right: Triple; readonly up: Triple };

/** A box around what is shown. */
export type Extent = { readonly low: Triple; readonly high: Triple };

/** Size of the picture, CSS pixels. */
export type PictureSize = { readonly width: number; readonly height: number };

const QUARTER = Math.PI / 2;

/** mm. Nearer than this there is nothing to see: a hundredth of a thou fills the picture. */
const LEAST_HEIGHT_MM = 0.02;
/** mm. Further away a cylinder is a speck. */
const MOST_HEIGHT_MM = 2000;

/** Share of the picture left free around what is fitted into it. */
const FIT_MARGIN = 0.07;

const DIRECTIONS: Readonly<
  Record<Exclude<StandardView, 'section'>, { readonly azimuth: number; readonly elevation: number }>
> = {
  front: { azimuth: QUARTER, elevation: 0 },
  back: { azimuth: -QUARTER, elevation: 0 },
  left: { azimuth: Math.PI, elevation: 0 },
  right: { azimuth: 0, elevation: 0 },
  top: { azimuth: 0, elevation: QUARTER },
  bottom: { azimuth: 0, elevation: -QUARTER },
  iso: { azimuth: 0.62, elevation: 0.42 },
};

/** Gives the directions of the picture in the frame of the cylinder. */
export function viewBasis({ azimuth, elevation }: Pick<ViewState, 'azimuth' | 'elevation'>): ViewBasis {
  const [sideways, along] = [Math.cos(azimuth), Math.sin(azimuth)];
  const [level, down] = [Math.cos(elevation), Math.sin(elevation)];
  return {
    forward: [level * sideways, -down, level * along],
    right: [-along, 0, sideways],
    up: [down * sideways, level, down * along],
  };
}

/** Turns the view; past straight above or below it stops. */
export function orbit(view: ViewState, byAzimuth: number, byElevation: number): ViewState {
  const elevation = Math.min(QUARTER, Math.max(-QUARTER, view.elevation + byElevation));
  return { ...view, azimuth: wrapped(view.azimuth + byAzimuth), elevation };
}

/** Moves the view across the picture by shares of its height: what is shown goes right and up. */
export function pan(view: ViewState, byRight: number, byUp: number): ViewState {
  const { right, up } = viewBasis(view);
  const [x, y, z] = view.target;
  const across = -byRight * view.height;
  const upward = -byUp * view.height;
  return {
    ...view,
    target: [
      x + right[0] * across + up[0] * upward,
      y + right[1] * across + up[1] * upward,
      z + right[2] * across + up[2] * upward,
    ],
  };
}

/**
 * Enlarges about a point of the picture, which stays where it is.
 *
 * @param factor more than 1 comes nearer
 * @param place right and up of the picture's middle, in shares of its height
 */
export function zoom(view: ViewState, factor: number, place: { right: number; up: number }): ViewState {
  const height = Math.min(MOST_HEIGHT_MM, Math.max(LEAST_HEIGHT_MM, view.height / factor));
  const { right, up } = viewBasis(view);
  const moved = view.height - height;
  const [x, y, z] = view.target;
  return {
    ...view,
    height,
    target: [
      x + (right[0] * place.right + up[0] * place.up) * moved,
      y + (right[1] * place.right + up[1] * place.up) * moved,
      z + (right[2] * place.right + up[2] * place.up) * moved,
    ],
  };
}

/** Looks from a standard direction; `section` looks straight at the cut face. */
export function lookFrom(view: ViewState, from: StandardView, planeNormal: Triple | null): ViewState {
  return { ...view, ...(from === 'section' ? alongNormal(planeNormal ?? [1, 0, 0]) : DIRECTIONS[from]) };
}

function alongNormal([x, y, z]: Triple): { azimuth: number; elevation: number } {
  const level = Math.hypot(x, z);
  if (level < 1e-9) return { azimuth: 0, elevation: y > 0 ? -QUARTER : QUARTER };
  return { azimuth: Math.atan2(z, x), elevation: Math.atan2(-y, level) };
}

/** Brings a box into the middle, as large as fits. */
export function fit(view: ViewState, extent: Extent, size: PictureSize): ViewState {
  const { right, up } = viewBasis(view);
  const middle: Triple = [
    (extent.low[0] + extent.high[0]) / 2,
    (extent.low[1] + extent.high[1]) / 2,
    (extent.low[2] + extent.high[2]) / 2,
  ];
  const reach = (direction: Triple): number =>
    [0, 1, 2].reduce(
      (sum, axis) =>
        sum + Math.abs((direction[axis] ?? 0) * ((extent.high[axis] ?? 0) - (extent.low[axis] ?? 0))),
      0,
    );
  const free = 1 - 2 * FIT_MARGIN;
  const aspect = size.width / Math.max(1, size.height);
  const height = Math.max(reach(up) / free, reach(right) / free / aspect, LEAST_HEIGHT_MM);
  return { ...view, target: middle, height };
}

/** Finds where a point appears: right and up of the middle, in shares of the picture's height. Without perspective. */
export function placeInPicture(view: ViewState, point: Triple): { right: number; up: number } {
  const { right, up } = viewBasis(view);
  const from = point.map((value, axis) => value - (view.target[axis] ?? 0));
  const along = (direction: Triple): number =>
    direction.reduce((sum, value, axis) => sum + value * (from[axis] ?? 0), 0) / view.height;
  return { right: along(right), up: along(up) };
}

function wrapped(angle: number): number {
  const turns = Math.round(angle / (2 * Math.PI));
  return angle - turns * 2 * Math.PI;
}
