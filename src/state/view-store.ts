/**
 * View: neither undoable nor saved. What the person looks at, and where key and plug stand in the picture. Nothing here
 * changes the job. Travel and section offset are mm, the turn is radians from upright.
 */
import { createStore, type StoreApi } from 'zustand/vanilla';
import { asRadians, type Radians } from '../model/radians.ts';
import type { Job } from '../model/schema/job-schema.ts';
import type { Id } from '../model/schema/leaf.ts';

export const STATIONS = ['measure', 'parts', 'check', 'note', 'learn'] as const;
export type Station = (typeof STATIONS)[number];

export const SHOWN_PARTS = [
  'plug',
  'sleeve',
  'shell',
  'key',
  'ball',
  'bottomPin',
  'masterPin',
  'driver',
  'spring',
] as const;
export type ShownPart = (typeof SHOWN_PARTS)[number];
export type Showing = 'show' | 'see through' | 'pulled apart' | 'hide';

/** What moves by itself right now. */
export type Playing = 'nothing' | 'key in' | 'key out' | 'turn' | 'turn back';

/** A field that holds a text which is not read: what the field is called, and what counts in its stead. */
export type UnreadField = {
  readonly label: string;
  /** With unit; null where nothing was entered before. */
  readonly counts: string | null;
};

export type ViewState = {
  readonly station: Station;
  readonly cylinder: Id | null;
  readonly key: Id | null;
  readonly plan: Id | null;
  readonly pickedChamber: Id | null;
  /** Of several shear lines the one looked at, and turned where both would; null: the one that matters. */
  readonly pickedLine: Id | null;
  /** How far the key still is out, mm; 0 is home. */
  readonly travel: number;
  /** Of the plug, from upright. */
  readonly turn: Radians;
  readonly playing: Playing;
  readonly picture: 'drawing' | 'solid';
  readonly showing: Readonly<Record<ShownPart, Showing>>;
  /** Section plane across from the axis, mm, + to the right looking in from the front; 0 cuts through the chambers. */
  readonly sectionOffset: number;
  /** The entry field that has the focus, by its name; null when none has. */
  readonly focusedField: string | null;
  /** Fields on screen whose text cannot be read, or still asks what was meant; by a name of each one's own. */
  readonly unread: ReadonlyMap<string, UnreadField>;
  /** The cylinders and keys of the job are being looked through. */
  readonly isChoosingBench: boolean;
};

export type ViewActions = {
  readonly goTo: (station: Station) => void;
  readonly pickCylinder: (job: Job, cylinder: Id) => void;
  readonly pickKey: (key: Id | null) => void;
  readonly pickPlan: (plan: Id | null) => void;
  readonly pickChamber: (chamber: Id | null) => void;
  /** Looks at another shear line; a turned plug stands upright again. */
  readonly pickLine: (line: Id | null) => void;
  /** Puts the key somewhere along its way, which stops what plays and turns the plug back upright. Never past home. */
  readonly moveKey: (travel: number) => void;
  /** Turns the plug, which stops what plays. */
  readonly turnPlug: (turn: Radians) => void;
  /** One frame of what plays: the driver of the animation moves key and plug without stopping it. */
  readonly playTo: (place: { readonly travel?: number; readonly turn?: Radians }) => void;
  readonly play: (playing: Playing) => void;
  readonly setPicture: (picture: ViewState['picture']) => void;
  readonly setShowing: (part: ShownPart, showing: Showing) => void;
  readonly moveSection: (sectionOffset: number) => void;
  readonly focusField: (field: string | null) => void;
  /** Tells of a field that is not read; null once it is, or has gone. */
  readonly tellUnread: (name: string, field: UnreadField | null) => void;
  readonly chooseBench: (isChoosingBench: boolean) => void;
  /** Keeps the picks valid after the job changed: what is gone is let go, what is missing is picked. */
  readonly follow: (job: Job) => void;
  /** Looks at another job: its first cylinder, key and plan, key home, plug upright. */
  readonly open: (job: Job) => void;
};

export type ViewStore = StoreApi<ViewState & ViewActions>;

const FIRST_VIEW: ViewState = Object.freeze<ViewState>({
  station: 'measure',
  cylinder: null,
  key: null,
  plan: null,
  pickedChamber: null,
  pickedLine: null,
  travel: 0,
  turn: asRadians(0),
  playing: 'nothing',
  picture: 'drawing',
  showing: {
    plug: 'show',
    sleeve: 'show',
    shell: 'show',
    key: 'show',
    ball: 'show',
    bottomPin: 'show',
    masterPin: 'show',
    driver: 'show',
    spring: 'show',
  },
  sectionOffset: 0,
  focusedField: null,
  unread: new Map(),
  isChoosingBench: false,
});

/** Makes the store; with a job, its first cylinder, key and plan are picked. */
export function createViewStore(first?: Job): ViewStore {
  return createStore<ViewState & ViewActions>()((set, get) => ({
    ...FIRST_VIEW,
    ...(first === undefined ? {} : picksFor(first, FIRST_VIEW)),
    goTo: (station) => set({ station }),
    pickCylinder: (from, cylinder) =>
      set({ ...picksFor(from, { ...get(), cylinder }), turn: asRadians(0), playing: 'nothing' }),
    // other cuts, other stacks: the plug may not turn as far
    pickKey: (key) => set({ key, pickedLine: null, turn: asRadians(0), playing: 'nothing' }),
    pickPlan: (plan) => set({ plan, pickedLine: null, turn: asRadians(0), playing: 'nothing' }),
    pickChamber: (pickedChamber) => set({ pickedChamber }),
    pickLine: (pickedLine) => set({ pickedLine, turn: asRadians(0), playing: 'nothing' }),
    moveKey: (travel) => set({ travel: Math.max(0, travel), turn: asRadians(0), playing: 'nothing' }),
    turnPlug: (turn) => set({ turn, playing: 'nothing' }),
    playTo: ({ travel, turn }) =>
      set((now) => ({ travel: Math.max(0, travel ?? now.travel), turn: turn ?? now.turn })),
    play: (playing) => set({ playing }),
    setPicture: (picture) => set({ picture }),
    setShowing: (part, showing) => set((now) => ({ showing: { ...now.showing, [part]: showing } })),
    moveSection: (sectionOffset) => set({ sectionOffset }),
    focusField: (focusedField) => set({ focusedField }),
    tellUnread: (name, field) =>
      set(({ unread: before }) => {
        const unread = new Map(before);
        if (field === null) unread.delete(name);
        else unread.set(name, field);
        return { unread };
      }),
    chooseBench: (isChoosingBench) => set({ isChoosingBench }),
    follow: (to) => {
      const now = get();
      const picks = picksFor(to, now);
      const isSame =
        picks.cylinder === now.cylinder &&
        picks.key === now.key &&
        picks.plan === now.plan &&
        picks.pickedChamber === now.pickedChamber &&
        picks.pickedLine === now.pickedLine;
      if (!isSame) set(picks);
      // Other stacks may not turn as far: the plug stands upright again.
      if (now.turn !== 0) set({ turn: asRadians(0), playing: 'nothing' });
    },
    open: (job) => set({ ...picksFor(job, FIRST_VIEW), travel: 0, turn: asRadians(0), playing: 'nothing' }),
  }));
}

type Picks = Pick<ViewState, 'cylinder' | 'key' | 'plan' | 'pickedChamber' | 'pickedLine'>;

/** The picks nearest to those of now that exist in the job: kept if there, else the first that fits. */
function picksFor(job: Job, now: Picks): Picks {
  const cylinder = job.cylinders.find(({ id }) => id === now.cylinder) ?? job.cylinders[0];
  if (cylinder === undefined) {
    const key = job.keys.find(({ id }) => id === now.key) ?? job.keys[0];
    return { cylinder: null, key: key?.id ?? null, plan: null, pickedChamber: null, pickedLine: null };
  }
  const seated = job.seatings.find((seating) => seating.cylinder === cylinder.id);
  const key =
    job.keys.find(({ id }) => id === now.key) ?? job.keys.find(({ id }) => id === seated?.key) ?? job.keys[0];
  const plans = job.plans.filter((plan) => plan.cylinder === cylinder.id);
  const plan =
    plans.find(({ id }) => id === now.plan) ?? plans.find(({ kind }) => kind === 'planned') ?? plans[0];
  const chamber = cylinder.chambers.find(({ id }) => id === now.pickedChamber);
  return {
    cylinder: cylinder.id,
    key: key?.id ?? null,
    plan: plan?.id ?? null,
    pickedChamber: chamber?.id ?? null,
    pickedLine: cylinder.lines.find(({ id }) => id === now.pickedLine)?.id ?? null,
  };
}
