/**
 * The one clock: moves the key and turns the plug while something plays. Whoever wants motion says so in the view store
 * (`play`); a drag stops it. With reduced motion the way is taken in a few still steps. Nothing runs while nothing plays.
 */
import { asRadians } from '../model/radians.ts';
import { lookAt, selectionIn } from '../panels/shared/look.ts';
import { turnAttempt } from '../panels/section/turn-words.ts';
import type { DocumentStore } from '../state/document-store.ts';
import type { PreferencesStore } from '../state/preferences-store.ts';
import type { Playing, ViewStore } from '../state/view-store.ts';

type MotionStores = {
  readonly document: DocumentStore;
  readonly view: ViewStore;
  readonly preferences: PreferencesStore;
};

/** s. A hand takes about this long for the whole way. */
const WHOLE_WAY_S = 2.6;
const TURN_S = 1.4;
/** rad. A plug that does not move at all is turned this little: nobody can see it, but it says that it was tried. */
const TRIED_RAD = 1e-5;
/** s. With reduced motion: this many pictures, each this long. */
const STILL_STEPS = 6;
const STILL_STEP_S = 0.35;

type Way = {
  readonly from: number;
  readonly to: number;
  readonly seconds: number;
  readonly set: (value: number) => void;
};

/** Starts listening; the result ends it. */
export function startMotion(stores: MotionStores): () => void {
  const { view } = stores;
  let stop: () => void = () => undefined;
  return view.subscribe((state, before) => {
    if (state.playing === before.playing) return;
    stop();
    stop = () => undefined;
    const way = wayOf(state.playing, stores);
    if (state.playing !== 'nothing') stop = way === null ? end(view) : run(way, isReduced(stores), view);
  });
}

function end(view: ViewStore): () => void {
  view.getState().play('nothing');
  return () => undefined;
}

function run(way: Way, isStill: boolean, view: ViewStore): () => void {
  let start: number | null = null;
  let frame = 0;
  let step = -1;
  const tick = (time: number) => {
    start ??= time;
    const passed = (time - start) / 1000;
    const share = isStill ? Math.floor(passed / STILL_STEP_S) / STILL_STEPS : passed / way.seconds;
    const now = Math.min(1, share);
    if (!isStill || now !== step) way.set(way.from + (way.to - way.from) * (isStill ? now : eased(now)));
    step = now;
    if (now < 1) frame = requestAnimationFrame(tick);
    else view.getState().play('nothing');
  };
  frame = requestAnimationFrame(tick);
  return () => cancelAnimationFrame(frame);
}

/** Slow at both ends, as a hand is. */
function eased(share: number): number {
  return share * share * (3 - 2 * share);
}

function wayOf(playing: Playing, { document, view }: MotionStores): Way | null {
  const { job } = document.getState();
  const state = view.getState();
  const selection = selectionIn(job, state);
  if (selection === null) return null;
  const look = lookAt(job, selection);
  const { key } = look.assembly;
  const moveKey = (travel: number) => view.getState().playTo({ travel });
  const turnPlug = (turn: number) => view.getState().playTo({ turn: asRadians(turn) });
  switch (playing) {
    case 'nothing':
      return null;
    case 'key in':
    case 'key out': {
      if (key === null) return null;
      const to = playing === 'key in' ? key.seatedTravel : key.outTravel;
      const share = Math.abs(to - state.travel) / Math.max(1e-6, key.outTravel - key.seatedTravel);
      return { from: state.travel, to, seconds: Math.max(0.2, WHOLE_WAY_S * share), set: moveKey };
    }
    case 'turn': {
      const attempt = turnAttempt(look, state.pickedLine);
      return attempt === null
        ? null
        : { from: state.turn, to: Math.max(attempt.reach, TRIED_RAD), seconds: TURN_S, set: turnPlug };
    }
    case 'turn back':
      return { from: state.turn, to: 0, seconds: TURN_S, set: turnPlug };
  }
}

function isReduced({ preferences }: MotionStores): boolean {
  const { motion } = preferences.getState();
  if (motion !== 'system') return motion === 'reduced';
  return window.matchMedia('(prefers-reduced-motion: reduce)').matches;
}
