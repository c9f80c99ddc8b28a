/**
 * The parts on hand as lower stacks that could stand in a chamber: bottom pins alone, bottom pins on a loose ball, and ball +
 * bottom pin measured together. Stacks that differ only in height make a batch, sorted by height, so that a chamber looks
 * at the few around the height it needs and not at the whole bag. Nothing here depends on a cylinder. mm.
 */
import { known } from '../assert.ts';
import { type Measuring, readLength } from '../estimate/read-value.ts';
import { lowerStackEnd, measureStack } from '../measured/measured-stack.ts';
import { angleOf, lengthOf } from '../measured/part-ends.ts';
import type { Job } from '../schema/job-schema.ts';
import type { Item } from '../schema/key-schema.ts';
import type { Id } from '../schema/leaf.ts';
import type { EndForm, Group, Part } from '../schema/parts-schema.ts';

export type Batch = {
  /** One of them, bottom to top: the ends and diameters of all. */
  readonly example: readonly Part[];
  readonly hasBall: boolean;
  /** What stands under each pin adds this much; 0 where the height was measured together. */
  readonly added: number;
  /** Ascending. Height of a stack = its length here + `added`. */
  readonly lengths: Float64Array;
  /** Numbers of the parts, in the same order; the ball's is -1 for a pin alone. */
  readonly pins: Int32Array;
  readonly balls: Int32Array;
  /** Measured together as this group. */
  readonly groups: readonly (Group | null)[];
  /** The balls that occur. */
  readonly ballKinds: readonly number[];
};

export type SetAsideWhy = 'none left' | 'not measured' | 'dimple not measured' | 'no length' | 'a driver';

export type Stock = {
  /** In the order of labels, then ids: nothing depends on the order in the file. A part's number is its place here. */
  readonly parts: readonly Part[];
  readonly numbers: ReadonlyMap<Id, number>;
  readonly batches: readonly Batch[];
  /** Pins and balls that cannot be chosen. */
  readonly setAside: readonly { readonly part: Part; readonly why: SetAsideWhy }[];
};

/** A radius for reckoning what a ball adds; parts whose own sizes leave it open are set aside. */
const ANY_RADIUS_MM = 1.5;

/** Sorts the parts of a job into batches. */
export function takeStock(job: Job, measuring: Measuring): Stock {
  const parts = [...job.parts].sort(
    (one, other) => compareText(one.label, other.label) || compareText(one.id, other.id),
  );
  const numbers = new Map(parts.map((part, number) => [part.id, number]));
  const setAside: { part: Part; why: SetAsideWhy }[] = [];
  const pairs = pairsMeasuredTogether(job.groups, parts, numbers);
  const forms = new Forms();
  const balls: Sized[] = [];
  const pins: Sized[] = [];
  for (const [number, part] of parts.entries()) {
    if (part.kind === 'spring') continue;
    const sized = sizeOf(part, number, forms, measuring);
    if (typeof sized === 'object') (part.kind === 'ball' ? balls : pins).push(sized);
    else if (sized !== 'not measured' || !pairs.members.has(number)) setAside.push({ part, why: sized });
  }
  const open: Part[] = [];
  // Sorted once for all balls: a bag of thousands is sorted again after every edit.
  const pinForms = byForm(pins);
  const batches = [
    ...pinBatches(pinForms),
    ...balls.flatMap((ball) => batchesOnBall(pinForms, ball, pairs.pinsByBall, measuring, open)),
    ...togetherBatches(pairs.list, parts, forms, measuring),
  ];
  for (const part of new Set(open)) setAside.push({ part, why: 'dimple not measured' });
  return { parts, numbers, batches, setAside };
}

type Sized = { readonly part: Part; readonly number: number; readonly length: number; readonly form: number };

function sizeOf(part: Part, number: number, forms: Forms, measuring: Measuring): Sized | SetAsideWhy {
  if (part.quantity < 1) return 'none left';
  if (part.waist !== undefined) return 'a driver';
  const name = part.kind === 'ball' ? 'diameter' : 'length';
  const value = part.kind === 'ball' ? part.diameter : part.length;
  if (value === undefined) return 'not measured';
  const length = readLength(value, { owner: 'part', id: part.id, name }, measuring).value;
  return length > 0 ? { part, number, length, form: forms.of(part, measuring) } : 'no length';
}

/**
 * Numbers the forms parts come in: what two must have in common to differ in length only. Forms are numbered as they turn
 * up, and so in the order of the parts.
 */
class Forms {
  private readonly root = new Form();
  private count = 0;

  of(part: Part, measuring: Measuring): number {
    const field = { owner: 'part', id: part.id, name: 'diameter' };
    const across = part.diameter === undefined ? null : readLength(part.diameter, field, measuring).value;
    let form = this.root.next(part.kind).next(across);
    if (part.kind !== 'ball') {
      for (const end of part.ends ?? []) form = ofEnd(form, end);
    }
    form.number ??= this.count++;
    return form.number;
  }

  /** The form of two parts measured together. */
  ofBoth(ball: number, pin: number): number {
    const form = this.root.next('together').next(ball).next(pin);
    form.number ??= this.count++;
    return form.number;
  }
}

function ofEnd(start: Form, end: EndForm): Form {
  const { width, radius, tipFlatDiameter, mouthDiameter, angle, includedAngle } = end;
  let form = start.next(`${end.kind} ${end.basis}`);
  if (width !== undefined) form = form.next('width').next(lengthOf(width, 0));
  if (radius !== undefined) form = form.next('radius').next(lengthOf(radius, 0));
  if (tipFlatDiameter !== undefined) form = form.next('tip flat').next(lengthOf(tipFlatDiameter, 0));
  if (mouthDiameter !== undefined) form = form.next('mouth').next(lengthOf(mouthDiameter, 0));
  if (angle !== undefined) form = form.next('angle').next(angleOf(angle, 0));
  if (includedAngle !== undefined) form = form.next('included angle').next(angleOf(includedAngle, 0));
  return form;
}

class Form {
  number: number | null = null;
  private readonly following = new Map<string | number | null, Form>();

  next(what: string | number | null): Form {
    const before = this.following.get(what);
    if (before !== undefined) return before;
    const form = new Form();
    this.following.set(what, form);
    return form;
  }
}

function pinBatches(pinForms: readonly (readonly Sized[])[]): Batch[] {
  return pinForms.map((alike) => ({
    example: [known(alike[0], 'a pin of its form').part],
    hasBall: false,
    added: 0,
    ...columnsOn(alike, -1),
  }));
}

/** Every pin that was measured alone, on one kind of loose ball. */
function batchesOnBall(
  pinForms: readonly (readonly Sized[])[],
  ball: Sized,
  pinsByBall: Pairs['pinsByBall'],
  measuring: Measuring,
  open: Part[],
): Batch[] {
  const together = pinsByBall.get(ball.number);
  return pinForms.flatMap((all): Batch[] => {
    const alike = together === undefined ? all : all.filter((pin) => !together.has(pin.number));
    const first = alike[0];
    if (first === undefined) return [];
    if (hangsOnHole(first.part)) {
      open.push(...alike.map((each) => each.part));
      return [];
    }
    const example = [ball.part, first.part];
    const added = known(heightOf(example, measuring), 'height of a measured pair') - first.length;
    return [
      {
        example,
        hasBall: true,
        added,
        ...columnsOn(alike, ball.number),
      },
    ];
  });
}

/** How deep a ball sinks into a dimple of unknown width hangs on the pin's diameter, which must be known then. */
function hangsOnHole(pin: Part): boolean {
  return pin.diameter === undefined && pin.ends?.[0].kind === 'cup';
}

function heightOf(example: readonly Part[], measuring: Measuring): number | null {
  const items = example.map((part): Item => ({ part: part.id }));
  const parts = new Map(example.map((part) => [part.id, part]));
  const stack = measureStack(items, parts, [], ANY_RADIUS_MM * 4, ANY_RADIUS_MM, measuring);
  return stack.tops[lowerStackEnd(stack)]?.value ?? null;
}

type Together = { readonly group: Group; readonly ball: number; readonly pin: number };
type Pairs = {
  readonly list: readonly Together[];
  /** Numbers of the pins measured together with a ball, by the ball's number. */
  readonly pinsByBall: ReadonlyMap<number, ReadonlySet<number>>;
  readonly members: ReadonlySet<number>;
};

/** Groups of one ball and one pin. Of two for the same parts the first counts, as it does in a stack. */
function pairsMeasuredTogether(
  groups: readonly Group[],
  parts: readonly Part[],
  numbers: ReadonlyMap<Id, number>,
): Pairs {
  const pinsByBall = new Map<number, Set<number>>();
  const members = new Set<number>();
  const list = groups.flatMap((group): Together[] => {
    const [ballId, pinId] = group.parts;
    if (group.parts.length !== 2 || ballId === undefined || pinId === undefined) return [];
    const ball = numbers.get(ballId);
    const pin = numbers.get(pinId);
    if (ball === undefined || pin === undefined) return [];
    const before = pinsByBall.get(ball) ?? new Set<number>();
    if (before.has(pin) || parts[ball]?.kind !== 'ball' || parts[pin]?.kind !== 'pin') return [];
    pinsByBall.set(ball, before.add(pin));
    members.add(ball).add(pin);
    return [{ group, ball, pin }];
  });
  list.sort((one, other) => one.pin - other.pin || one.ball - other.ball);
  return { list, pinsByBall, members };
}

function togetherBatches(
  list: readonly Together[],
  parts: readonly Part[],
  forms: Forms,
  measuring: Measuring,
): Batch[] {
  const measured = list.flatMap(({ group, ball, pin }): (Sized & { ball: number; group: Group })[] => {
    const ballPart = known(parts[ball], 'ball of a group');
    const part = known(parts[pin], 'pin of a group');
    if (ballPart.quantity < 1 || part.quantity < 1 || part.waist !== undefined) return [];
    const length = readLength(
      group.height,
      { owner: 'group', id: group.id, name: 'height' },
      measuring,
    ).value;
    const form = forms.ofBoth(forms.of(ballPart, measuring), forms.of(part, measuring));
    return length > 0 ? [{ part, number: pin, length, form, ball, group }] : [];
  });
  return byForm(measured).map((alike) => {
    const first = known(alike[0], 'a pair of its form');
    return {
      example: [known(parts[first.ball], 'ball of a group'), first.part],
      hasBall: true,
      added: 0,
      ...columns(alike),
    };
  });
}

/** By form, in the order forms turn up; within a form shortest first, equally long ones by number. */
function byForm<T extends Sized>(list: readonly T[]): T[][] {
  const forms = new Map<number, T[]>();
  for (const each of list) {
    const alike = forms.get(each.form);
    if (alike === undefined) forms.set(each.form, [each]);
    else alike.push(each);
  }
  return [...forms.values()].map((alike) =>
    alike.sort((one, other) => one.length - other.length || one.number - other.number),
  );
}

/** Pins that were measured alone, all on the same ball or on none. */
function columnsOn(
  pins: readonly Sized[],
  ball: number,
): Pick<Batch, 'lengths' | 'pins' | 'balls' | 'groups' | 'ballKinds'> {
  const { length } = pins;
  const lengths = new Float64Array(length);
  const numbers = new Int32Array(length);
  for (let i = 0; i < length; i++) {
    const pin = known(pins[i], 'a pin of its form');
    lengths[i] = pin.length;
    numbers[i] = pin.number;
  }
  return {
    ballKinds: ball < 0 ? [] : [ball],
    lengths,
    pins: numbers,
    balls: new Int32Array(length).fill(ball),
    groups: new Array<null>(length).fill(null),
  };
}

function columns(
  list: readonly (Sized & { readonly ball: number; readonly group: Group | null })[],
): Pick<Batch, 'lengths' | 'pins' | 'balls' | 'groups' | 'ballKinds'> {
  return {
    ballKinds: [...new Set(list.map((each) => each.ball))].filter((ball) => ball >= 0),
    lengths: Float64Array.from(list, (each) => each.length),
    pins: Int32Array.from(list, (each) => each.number),
    balls: Int32Array.from(list, (each) => each.ball),
    groups: list.map((each) => each.group),
  };
}

function compareText(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
