/** What the next part is taken to be: what the last one was, as far as a person does not say otherwise. Lengths mm. */
import { endName } from '../../model/edit/end-forms.ts';
import { measuredOnBall } from '../../model/edit/edit-parts.ts';
import type { NewPart } from '../../model/edit/loose-parts.ts';
import { pinTopsSeen } from '../../model/edit/seen-shapes.ts';
import { usesOfAll } from '../../model/matching/used-parts.ts';
import type { Id } from '../../model/schema/leaf.ts';
import type { Part } from '../../model/schema/parts-schema.ts';
import { lengthOf } from '../../model/measured/part-ends.ts';
import { formatLength } from '../../model/units/format-length.ts';
import type { Look } from '../shared/look.ts';
import { endWords } from './end-choice.tsx';

/** Everything of a part but its label and what is read each time. */
export type Like = Omit<NewPart, 'label' | 'length'>;

const FIRST: Like = {
  kind: 'pin',
  onBall: null,
  diameter: null,
  lower: null,
  upper: null,
  quantity: 1,
  from: '',
  original: false,
  condition: null,
};

/** Like the last loose part of the job; for the first one, with the tops that the pins of the plan were seen to have. */
export function likeLast({ job, selection }: Look): Like {
  const uses = usesOfAll(job);
  const last = job.parts.findLast((part) => !uses.has(part.id));
  if (last === undefined) return { ...FIRST, upper: pinTopsSeen(job, selection.plan) };
  return {
    kind: last.kind,
    onBall: last.kind === 'pin' ? (measuredOnBall(job, last.id)?.parts[0] ?? null) : null,
    diameter: last.kind === 'pin' ? (last.diameter ?? null) : null,
    lower: endName(last.ends?.[0]),
    upper: endName(last.ends?.[1]),
    quantity: 1,
    from: last.from ?? '',
    original: last.original,
    condition: last.condition ?? null,
  };
}

/** "A pin, dimpled below, domed above, .1150 across, measured standing on B01, from the coal shed" */
export function likeWords(like: Like, { job }: Look): string {
  const { unit } = job.settings;
  const ball = job.parts.find(({ id }) => id === like.onBall);
  const across =
    like.diameter === null
      ? 'not measured across'
      : `${formatLength(lengthOf(like.diameter, 0), { unit, hasUnit: true })} across`;
  const words =
    like.kind === 'pin'
      ? [
          'a pin',
          endWords(like.lower, like.upper),
          across,
          ball === undefined ? 'measured alone' : `measured standing on ${ball.label}`,
        ]
      : [like.kind === 'ball' ? 'a ball' : 'a spring'];
  const more = [
    ...(like.quantity === 1 ? [] : [`${like.quantity} alike`]),
    ...(like.original ? ['original'] : []),
    ...(like.condition === null ? [] : [like.condition]),
    ...(like.from === '' ? [] : [`from ${like.from}`]),
  ];
  return [...words, ...more].join(', ');
}

/** The balls a pin can be measured standing on, the loose ones first. */
export function ballsOf({ job }: Look): { readonly loose: readonly Part[]; readonly inUse: readonly Part[] } {
  const uses = usesOfAll(job);
  const balls = job.parts.filter(({ kind }) => kind === 'ball');
  return {
    loose: balls.filter(({ id }) => !uses.has(id)),
    inUse: balls.filter(({ id }) => uses.has(id)),
  };
}

/** Where the parts of the job came from, each place once. */
export function placesOf({ job }: Look): string[] {
  return [...new Set(job.parts.flatMap(({ from }) => (from === undefined ? [] : [from])))].slice(0, 50);
}

export type SetLike = (changes: Partial<Like>) => void;
export type BallId = Id;
