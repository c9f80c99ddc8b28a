/** The station where readings are entered: the answer first, then what is asked once, then a row for each chamber. */
import { lazy, Suspense, useEffect, useRef, useState } from 'react';
import { known } from '../../model/assert.ts';
import { setOverBallDiameter } from '../../model/edit/edit-key.ts';
import { setStandsUpBy } from '../../model/edit/edit-seating.ts';
import type { LengthValue } from '../../model/schema/leaf.ts';
import { AnswerBox } from '../answer/answer-box.tsx';
import { answerOf } from '../answer/answer-of.ts';
import type { Answer } from '../answer/answer-text.ts';
import { focusOf, type Look } from '../shared/look.ts';
import { useServices } from '../shared/services.tsx';
import { ONE_HAND, useMedia } from '../shared/use-media.ts';
import { ChamberTable } from './chamber-table.tsx';
import {
  ballInCuts,
  chamberColumns,
  type Column,
  type HeightWay,
  longStackUsed,
  masterPinsUsed,
  type StackWay,
  stackWayUsed,
  waysUsed,
} from './chamber-columns.ts';
import { type FieldSpec, PLAUSIBLE } from './field-spec.ts';
import { LengthField } from './length-field.tsx';
import type { PastedBlock } from './paste-plan.ts';
import { SetupBlock } from './setup-block.tsx';
import { WaysChoice } from './ways-choice.tsx';
import './measure-station.css';

// What is not needed for the first field comes after it.
const LaterBlocks = lazy(async () => ({ default: (await import('./later-blocks.tsx')).LaterBlocks }));
const HelpCard = lazy(async () => ({ default: (await import('./help-card.tsx')).HelpCard }));
const PasteDialog = lazy(async () => ({ default: (await import('./paste-dialog.tsx')).PasteDialog }));

export function MeasureStation({ look }: { readonly look: Look }) {
  // What was chosen belongs to one job, cylinder and key; another one starts from what it holds.
  const { cylinder, key } = look.selection;
  return <Station key={`${look.job.id} ${cylinder} ${key ?? ''}`} look={look} />;
}

function Station({ look }: { readonly look: Look }) {
  const { newId } = useServices();
  const cutKey = known(look.selection.key ?? look.job.keys[0]?.id, 'a key to measure');
  const [chosen, setChosen] = useState<ReadonlySet<HeightWay> | null>(null);
  const [stackWay, setStackWay] = useState<StackWay>(() => stackWayUsed(look));
  const [asksMaster, setAsksMaster] = useState(false);
  const [longStack, setLongStack] = useState<LengthValue | undefined>(undefined);
  const [pasted, setPasted] = useState<PastedBlock | null>(null);
  const used = waysUsed({ look, key: cutKey });
  const ways = new Set<HeightWay>([...used, ...(chosen ?? (used.size === 0 ? ['root depth' as const] : []))]);
  const stack = longStackUsed(look) ?? longStack;
  const usesMaster = masterPinsUsed(look);
  const asksMasterPins = usesMaster || asksMaster;
  const columns = chamberColumns({
    look,
    key: cutKey,
    ways,
    asksMasterPins,
    stackWay,
    longStack: stack,
    newId,
  });
  const answer = answerOf(look);
  const isOneHand = useMedia(ONE_HAND);
  const helpers = [
    ...(ways.has('over the ball') ? [ballField(look, cutKey)] : []),
    ...(ways.has('stands up by') ? [longStackField(look, cutKey, stack, setLongStack)] : []),
  ];
  return (
    <div className="station measure">
      <AnswerBox answer={answer}>
        {isOneHand ? <QuickField field={quickField(look, columns, answer)} /> : null}
      </AnswerBox>
      <SetupBlock look={look} cutKey={cutKey} />
      <section className="chambers" aria-label="Chambers">
        <WaysChoice
          ways={ways}
          used={used}
          onChange={setChosen}
          stackWay={stackWay}
          onStackWay={setStackWay}
          master={{ asks: asksMasterPins, isUsed: usesMaster, onChange: setAsksMaster }}
          hasBalls={look.rows.rows.some((row) => row.parts?.ball != null)}
        />
        {helpers.length === 0 ? null : (
          <div className="field-grid way-helpers">
            {helpers.map((field) => (
              <LengthField key={field.id} field={field} isLabelShown />
            ))}
          </div>
        )}
        <ChamberTable look={look} columns={columns} verdictsWait={answer.verdictsWait} onPaste={setPasted} />
      </section>
      <Suspense fallback={null}>
        <LaterBlocks look={look} cutKey={cutKey} />
        {pasted === null ? null : <PasteDialog block={pasted} onClose={() => setPasted(null)} />}
      </Suspense>
      <Suspense fallback={null}>
        <HelpCard />
      </Suspense>
    </div>
  );
}

/** On a phone the field that decides is in the answer itself: no scrolling to try another pin. */
function QuickField({ field }: { readonly field: FieldSpec | null }) {
  const place = useRef<HTMLDivElement>(null);
  const goesOn = useRef(false);
  // Another field in the same place: who went on with Enter goes on in it.
  useEffect(() => {
    if (goesOn.current) place.current?.querySelector('input')?.focus();
    goesOn.current = false;
  }, [field?.id]);
  if (field === null) return null;
  return (
    <div
      className="quick-field"
      ref={place}
      onKeyDownCapture={({ key }) => {
        goesOn.current = key === 'Enter';
      }}
    >
      <span aria-hidden="true">{field.label}</span>
      <LengthField key={field.id} field={field} isSecond />
    </div>
  );
}

/** The stack of the chamber the answer is about, or what is to be measured next. */
function quickField(look: Look, columns: readonly Column[], answer: Answer): FieldSpec | null {
  // The first question is open right below.
  if (look.bench.cylinder.bodies[0]?.outerDiameter === undefined) return null;
  const named = answer.points.find((point) => point.chamber !== null)?.chamber;
  const isInner = focusOf(look) === look.evaluation.lines[0]?.line;
  const fields = columns
    .filter(({ id }) => !(isInner && id.startsWith('master')))
    .flatMap((column) => [...column.fields.entries()]);
  if (answer.tone === 'waiting') {
    // In the order in which the answer asks: chamber by chamber.
    const open = fields.filter(([, field]) => field.value === undefined);
    const first = look.rows.rows.find((row) => open.some(([id]) => id === row.chamber.id));
    return open.find(([id]) => id === first?.chamber.id)?.[1] ?? null;
  }
  const chamber = named ?? look.rows.rows[0]?.chamber.id;
  return fields.findLast(([id]) => id === chamber)?.[1] ?? null;
}

function ballField(look: Look, key: string): FieldSpec {
  return {
    id: `cut/all/overBallBall/${key}`,
    label: 'The ball laid in the cuts',
    value: ballInCuts(look),
    set: (job, value) => (value === undefined ? job : setOverBallDiameter(job, key, value)),
    plausible: PLAUSIBLE.diameter,
    help: 'ball',
  };
}

/** Kept here until the first reading, then with the readings: a change goes to all of them. */
function longStackField(
  look: Look,
  key: string,
  stack: LengthValue | undefined,
  keep: (value: LengthValue | undefined) => void,
): FieldSpec {
  const { cylinder } = look.selection;
  return {
    id: `standsUpBy/${key}/stack`,
    label: 'The ball + pin that stands up',
    value: stack,
    set: (job, value) => {
      keep(value);
      if (value === undefined) return job;
      const entries = look.bench.seating?.standsUpBy ?? [];
      return entries.reduce(
        (changed, { chamber, items, reading }) =>
          setStandsUpBy(changed, cylinder, key, chamber, { stack: value, reading, items }),
        job,
      );
    },
    plausible: PLAUSIBLE.lowerStack,
    help: 'long stack',
  };
}
