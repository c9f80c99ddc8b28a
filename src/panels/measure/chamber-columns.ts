/** The columns of the table that are written in, each with one field for a chamber or for the cut under it. */
import { setCutOverBall, setCutRootDepth } from '../../model/edit/edit-key.ts';
import { setStandsUpBy } from '../../model/edit/edit-seating.ts';
import { lowerStackValue, setLowerStack, setPartLength } from '../../model/edit/edit-stack.ts';
import { addMasterPin, removeMasterPin } from '../../model/edit/edit-master-pins.ts';
import { knownStack, setKnownStack } from '../../model/edit/known-set.ts';
import { assumedValue } from '../../model/edit/values.ts';
import { usualSizes } from '../../model/edit/usual-values.ts';
import type { ChamberRow } from '../../model/edit/chamber-rows.ts';
import type { Id, LengthValue } from '../../model/schema/leaf.ts';
import type { Look } from '../shared/look.ts';
import { type FieldSpec, PLAUSIBLE } from './field-spec.ts';

export type HeightWay = 'root depth' | 'over the ball' | 'stands up by' | 'known set';
export type StackWay = 'together' | 'apart';

export type Column = {
  readonly id: string;
  readonly title: string;
  /** By chamber; none where nothing can be entered (no cut lies under it). */
  readonly fields: ReadonlyMap<Id, FieldSpec>;
};

export type ColumnSetting = {
  readonly look: Look;
  readonly key: Id;
  readonly ways: ReadonlySet<HeightWay>;
  /** Columns for master pins, even where there is none yet. */
  readonly asksMasterPins: boolean;
  readonly stackWay: StackWay;
  /** The ball + pin that stands up, before the first reading is stored. */
  readonly longStack: LengthValue | undefined;
  readonly newId: () => Id;
};

/** The ways a job already holds readings of. */
export function waysUsed({ look, key }: Pick<ColumnSetting, 'look' | 'key'>): Set<HeightWay> {
  const ways = new Set<HeightWay>();
  const cuts = look.bench.key?.cuts ?? [];
  if (cuts.some((cut) => cut.rootDepth !== undefined)) ways.add('root depth');
  if (cuts.some((cut) => cut.overBall !== undefined)) ways.add('over the ball');
  const { seating } = look.bench;
  if (seating !== null && seating.key === key && seating.standsUpBy.length > 0) ways.add('stands up by');
  if (seating !== null && seating.knownSets.length > 0) ways.add('known set');
  return ways;
}

/** Whether the stacks of a job were measured part by part. */
export function stackWayUsed(look: Look): StackWay {
  const stacks = look.rows.rows.flatMap((row) => row.parts ?? []);
  const isApart = (parts: (typeof stacks)[number]) =>
    parts.ball !== null && parts.together === null && parts.bottomPin?.length !== undefined;
  return stacks.length > 0 && stacks.some(isApart) && !stacks.some((parts) => parts.together !== null)
    ? 'apart'
    : 'together';
}

/** The columns, in the order they are asked. */
export function chamberColumns(setting: ColumnSetting): Column[] {
  const { ways, stackWay } = setting;
  const columns: Column[] = [];
  if (ways.has('root depth')) columns.push(column(setting, 'root', 'Root depth: metal left', rootField));
  if (ways.has('over the ball')) columns.push(column(setting, 'over', 'Over the ball', overBallField));
  if (ways.has('stands up by')) columns.push(column(setting, 'stands', 'Stands up by', standsField));
  if (ways.has('known set')) columns.push(column(setting, 'known', 'Worked with', knownField));
  if (stackWay === 'together') {
    const hasBalls = setting.look.rows.rows.some((row) => row.parts?.ball != null);
    columns.push(column(setting, 'stack', hasBalls ? 'Ball + bottom pin' : 'Bottom pin', stackField));
  } else {
    columns.push(column(setting, 'ball', 'Ball', ballField));
    columns.push(column(setting, 'pin', 'Bottom pin', pinField));
  }
  const most = mostMasterPins(setting.look);
  for (let place = 0; place < Math.max(most, setting.asksMasterPins ? 1 : 0); place++) {
    const title = most > 1 ? `Master pin ${place + 1}` : 'Master pin';
    columns.push(column(setting, `master ${place}`, title, masterField(place, title)));
  }
  return columns;
}

/** Whether master pins are to be asked for: there are some, or a sleeve that makes no sense without. */
export function masterPinsUsed(look: Look): boolean {
  return mostMasterPins(look) > 0 || look.assembly.lines.length > 1;
}

function mostMasterPins({ rows }: Look): number {
  return Math.max(0, ...rows.rows.map((row) => row.parts?.masterPins.length ?? 0));
}

/** The ball laid in the cuts: as it was entered, else the ball in the stacks, else the usual one. */
export function ballInCuts({ bench, rows, job }: Look): LengthValue {
  const used = bench.key?.cuts.find((cut) => cut.overBall !== undefined)?.overBall?.ball;
  const inStack = rows.rows.find((row) => row.parts?.ball != null)?.parts?.ball?.diameter;
  const { unit } = job.settings;
  return used ?? inStack ?? assumedValue(usualSizes(null).pinDiameter[unit], unit);
}

/** The long ball + pin of the readings there are. */
export function longStackUsed({ bench }: Look): LengthValue | undefined {
  return bench.seating?.standsUpBy[0]?.stack;
}

type FieldMaker = (setting: ColumnSetting, row: ChamberRow) => FieldSpec | null;

function column(setting: ColumnSetting, id: string, title: string, make: FieldMaker): Column {
  const fields = new Map<Id, FieldSpec>();
  for (const row of setting.look.rows.rows) {
    const field = make(setting, row);
    if (field !== null) fields.set(row.chamber.id, field);
  }
  return { id, title, fields };
}

function rootField({ key }: ColumnSetting, { under }: ChamberRow): FieldSpec | null {
  if (under === null) return null;
  const { cut, number } = under;
  return {
    id: `cut/${cut.id}/rootDepth`,
    label: `Root depth, cut ${number}`,
    value: cut.rootDepth,
    set: (job, value) => setCutRootDepth(job, key, cut.id, value),
    plausible: PLAUSIBLE.rootDepth,
    help: 'root depth',
  };
}

function overBallField({ key, look }: ColumnSetting, { under }: ChamberRow): FieldSpec | null {
  if (under === null) return null;
  const { cut, number } = under;
  const ball = ballInCuts(look);
  return {
    id: `cut/${cut.id}/overBall`,
    label: `Over the ball, cut ${number}`,
    value: cut.overBall?.reading,
    set: (job, value) => setCutOverBall(job, key, cut.id, value, cut.overBall?.ball ?? ball),
    plausible: PLAUSIBLE.overBall,
    help: 'over the ball',
  };
}

function standsField(
  { key, look, longStack }: ColumnSetting,
  { chamber, number }: ChamberRow,
): FieldSpec | null {
  const { cylinder } = look.selection;
  const entry = look.bench.seating?.standsUpBy.find((each) => each.chamber === chamber.id);
  const stack = entry?.stack ?? longStack;
  if (stack === undefined) return null;
  return {
    id: `standsUpBy/${chamber.id}/reading`,
    label: `Stands up by, chamber ${number}`,
    value: entry?.reading,
    set: (job, reading) =>
      setStandsUpBy(
        job,
        cylinder,
        key,
        chamber.id,
        reading === undefined ? undefined : { stack, reading, items: entry?.items ?? [] },
      ),
    plausible: PLAUSIBLE.standsUpBy,
    help: 'stands up by',
  };
}

function knownField({ key, look, newId }: ColumnSetting, { chamber, number }: ChamberRow): FieldSpec {
  const where = { cylinder: look.selection.cylinder, key };
  return {
    id: `knownSet/${chamber.id}/height`,
    label: `Ball + bottom pin that worked, chamber ${number}`,
    value: knownStack(look.job, where, chamber.id),
    set: (job, value) => setKnownStack(job, where, chamber.id, value, newId),
    plausible: PLAUSIBLE.lowerStack,
    help: 'known set',
  };
}

function stackField(
  { look, newId }: ColumnSetting,
  { chamber, number, parts }: ChamberRow,
): FieldSpec | null {
  if (parts === null) return null;
  const { plan } = look.selection;
  const hasBall = parts.ball !== null;
  const id = parts.together?.id ?? parts.bottomPin?.id ?? chamber.id;
  return {
    id: hasBall ? `group/${id}/height` : `part/${id}/length`,
    label: `${hasBall ? 'Ball + bottom pin' : 'Bottom pin'}, chamber ${number}`,
    value: lowerStackValue(parts),
    set: (job, value) => setLowerStack(job, plan, chamber.id, value, newId),
    plausible: PLAUSIBLE.lowerStack,
    help: hasBall ? 'ball and pin' : 'pin length',
  };
}

function ballField(_setting: ColumnSetting, { number, parts }: ChamberRow): FieldSpec | null {
  const ball = parts?.ball ?? null;
  if (ball === null) return null;
  return {
    id: `part/${ball.id}/diameter`,
    label: `Ball, chamber ${number}`,
    value: ball.diameter,
    set: (job, value) => setPartLength(job, ball.id, 'diameter', value),
    plausible: PLAUSIBLE.diameter,
    help: 'ball',
  };
}

function pinField(_setting: ColumnSetting, { number, parts }: ChamberRow): FieldSpec | null {
  const pin = parts?.bottomPin ?? null;
  if (pin === null) return null;
  return {
    id: `part/${pin.id}/length`,
    label: `Bottom pin, chamber ${number}`,
    value: pin.length,
    set: (job, value) => setPartLength(job, pin.id, 'length', value),
    plausible: PLAUSIBLE.pinLength,
    help: 'pin length',
  };
}

/** A length typed where there is no master pin yet puts one there; emptied, the pin goes. */
function masterField(place: number, title: string): FieldMaker {
  return ({ look, newId }, { chamber, number, parts }) => {
    if (parts === null || parts.driver === null || place > parts.masterPins.length) return null;
    const { plan } = look.selection;
    const pin = parts.masterPins[place];
    return {
      id: pin === undefined ? `chamber/${chamber.id}/masterPin` : `part/${pin.id}/length`,
      label: `${title}, chamber ${number}`,
      value: pin?.length,
      set: (job, value) => {
        if (pin === undefined)
          return value === undefined ? job : addMasterPin(job, plan, chamber.id, value, newId);
        return value === undefined
          ? removeMasterPin(job, plan, chamber.id, pin.id)
          : setPartLength(job, pin.id, 'length', value);
      },
      plausible: PLAUSIBLE.masterPin,
      help: 'master pin',
    };
  };
}
