/**
 * Mouse, touch and trackpad on the view's own element. One finger or the first button turns (or pans, as set), the other
 * buttons and Shift do the other; two fingers pan and pinch; the wheel zooms about the pointer, a trackpad pans and pinches.
 */
import type { SceneViewProps } from './scene-types.ts';
import type { ViewStore } from './view-store.ts';

export type PointerSettings = {
  readonly pointer: NonNullable<SceneViewProps['pointer']>;
  readonly wheel: NonNullable<SceneViewProps['wheel']>;
};

/** Radians for one CSS pixel: half a turn in 600 pixels. */
const ORBIT_PER_PIXEL = Math.PI / 600;
/** Zoom for one unit of a wheel step, and of a pinch on a trackpad, whose units are ten times finer. */
const ZOOM_PER_WHEEL = 0.0018;
const ZOOM_PER_PINCH = 0.012;
/** CSS pixels. A step smaller than this comes from a trackpad: wheels step by 100 or so. */
const FINE_STEP = 40;

type Spot = { readonly x: number; readonly y: number };

/** Listens on an element; gives the way to stop. */
export function listenToPointer(
  element: HTMLElement,
  view: ViewStore,
  settings: () => PointerSettings,
): () => void {
  const fingers = new Map<number, Spot>();

  const down = (event: PointerEvent): void => {
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    element.setPointerCapture(event.pointerId);
  };
  const move = (event: PointerEvent): void => {
    const before = fingers.get(event.pointerId);
    if (!before) return;
    const now = { x: event.clientX, y: event.clientY };
    const other = [...fingers].find(([id]) => id !== event.pointerId)?.[1];
    fingers.set(event.pointerId, now);
    if (other) moveTwo(element, view, before, now, other);
    else if (isPanning(event, settings().pointer)) panBy(view, now.x - before.x, now.y - before.y);
    else orbitBy(view, now.x - before.x, now.y - before.y);
  };
  const up = (event: PointerEvent): void => {
    fingers.delete(event.pointerId);
  };
  const wheel = (event: WheelEvent): void => {
    event.preventDefault();
    turnWheel(element, view, event, settings().wheel);
  };
  const menu = (event: Event): void => event.preventDefault();

  element.addEventListener('pointerdown', down);
  element.addEventListener('pointermove', move);
  element.addEventListener('pointerup', up);
  element.addEventListener('pointercancel', up);
  element.addEventListener('wheel', wheel, { passive: false });
  element.addEventListener('contextmenu', menu);
  return () => {
    element.removeEventListener('pointerdown', down);
    element.removeEventListener('pointermove', move);
    element.removeEventListener('pointerup', up);
    element.removeEventListener('pointercancel', up);
    element.removeEventListener('wheel', wheel);
    element.removeEventListener('contextmenu', menu);
  };
}

/** The second and third button, and Shift, do what the first one does not. */
function isPanning(event: PointerEvent, pointer: PointerSettings['pointer']): boolean {
  const isOther = (event.buttons & 6) !== 0 || event.shiftKey;
  return isOther === (pointer === 'orbit first');
}

function orbitBy(view: ViewStore, x: number, y: number): void {
  view.run({ kind: 'orbit', byAzimuth: x * ORBIT_PER_PIXEL, byElevation: y * ORBIT_PER_PIXEL });
}

function panBy(view: ViewStore, x: number, y: number): void {
  view.run({ kind: 'pan', byRight: x / view.size.height, byUp: -y / view.size.height });
}

/** Two fingers: their middle pans, their distance zooms. */
function moveTwo(element: HTMLElement, view: ViewStore, before: Spot, now: Spot, other: Spot): void {
  panBy(view, (now.x - before.x) / 2, (now.y - before.y) / 2);
  const wide = Math.hypot(before.x - other.x, before.y - other.y);
  const wider = Math.hypot(now.x - other.x, now.y - other.y);
  if (wide < 1 || wider < 1) return;
  view.zoomAt(wider / wide, placeOf(element, view, { x: (now.x + other.x) / 2, y: (now.y + other.y) / 2 }));
}

function turnWheel(
  element: HTMLElement,
  view: ViewStore,
  event: WheelEvent,
  wheel: PointerSettings['wheel'],
): void {
  const step = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 33 : 1;
  const place = placeOf(element, view, { x: event.clientX, y: event.clientY });
  if (event.ctrlKey) {
    view.zoomAt(Math.exp(-event.deltaY * step * pinchSpeed(event)), place);
    return;
  }
  const isFine =
    event.deltaMode === WheelEvent.DOM_DELTA_PIXEL &&
    (event.deltaX !== 0 || !Number.isInteger(event.deltaY) || Math.abs(event.deltaY) < FINE_STEP);
  if (wheel === 'pan' || (wheel === 'auto' && isFine))
    panBy(view, -event.deltaX * step, -event.deltaY * step);
  else view.zoomAt(Math.exp(-event.deltaY * step * ZOOM_PER_WHEEL), place);
}

/** A pinch arrives as a wheel with Ctrl held and fine steps; Ctrl and a real wheel has coarse ones. */
function pinchSpeed(event: WheelEvent): number {
  return Math.abs(event.deltaY) < FINE_STEP ? ZOOM_PER_PINCH : ZOOM_PER_WHEEL;
}

function placeOf(element: HTMLElement, view: ViewStore, spot: Spot): { right: number; up: number } {
  const box = element.getBoundingClientRect();
  return {
    right: (spot.x - box.left - box.width / 2) / view.size.height,
    up: (box.top + box.height / 2 - spot.y) / view.size.height,
  };
}
