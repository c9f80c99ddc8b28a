/** Keys of the focused view. Keys that belong to the browser or to the page are left alone. */
import type { StandardView } from './view-state.ts';
import type { ViewCommand } from './scene-types.ts';

/** 5 degrees. */
const ORBIT_STEP = (5 * Math.PI) / 180;
/** Share of the picture's height. */
const PAN_STEP = 0.05;
const ZOOM_STEP = 1.2;

/** Standard views by their key. */
export const VIEW_KEYS: Readonly<Record<string, StandardView>> = {
  '1': 'section',
  '2': 'front',
  '3': 'back',
  '4': 'left',
  '5': 'top',
  '6': 'bottom',
  '7': 'iso',
  '8': 'right',
};

export type KeyPress = {
  readonly key: string;
  readonly shiftKey: boolean;
  readonly ctrlKey: boolean;
  readonly altKey: boolean;
  readonly metaKey: boolean;
};

/** Gives what a key asks for, or null when it means nothing here. Arrows move the eye, not the cylinder. */
export function commandForKey(press: KeyPress): ViewCommand | null {
  if (press.ctrlKey || press.altKey || press.metaKey) return null;
  const arrow = ARROWS[press.key];
  if (arrow) {
    const [right, up] = arrow;
    return press.shiftKey
      ? { kind: 'pan', byRight: right * PAN_STEP, byUp: up * PAN_STEP }
      : { kind: 'orbit', byAzimuth: -right * ORBIT_STEP, byElevation: up * ORBIT_STEP };
  }
  const view = VIEW_KEYS[press.key];
  if (view) return { kind: 'look from', view };
  switch (press.key) {
    case '+':
    case '=':
      return { kind: 'zoom', factor: ZOOM_STEP };
    case '-':
    case '_':
      return { kind: 'zoom', factor: 1 / ZOOM_STEP };
    case '0':
    case 'Home':
      return { kind: 'fit' };
    default:
      return null;
  }
}

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};
