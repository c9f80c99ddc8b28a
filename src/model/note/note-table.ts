/** The pinning as a table file: with every measurement, or with what may be shared only. Lengths in the job's unit. */
import type { Bench } from '../measured/selection.ts';
import type { Evaluation } from '../evaluate/evaluation.ts';
import type { ShareableView } from '../sharing/shareable-view.ts';
import { formatLength } from '../units/format-length.ts';
import type { JobUnit } from '../units/length-unit.ts';
import { type Cell, csvText } from './csv.ts';
import { type Measured, pinningRows } from './pinning-rows.ts';

/** What may be shared: offsets, windows, verdicts. */
export function shareableTable(view: ShareableView): string {
  const { unit } = view;
  const length = (mm: number | undefined) => numberCell(mm ?? null, unit);
  return csvText([
    ...headOf(view.title, 'Bitting hidden: offsets, windows and verdicts only'),
    [
      'State',
      'Chamber',
      'Shear line',
      `At the shear line (${unit}, + high)`,
      `Turns from (${unit})`,
      `Turns to (${unit})`,
      'Verdict',
    ].map(textCell),
    ...view.states.flatMap(({ kind, chambers }) =>
      chambers.flatMap(({ number, splits }) =>
        splits.map(({ at, verdict, lean }, line) => [
          textCell(kind),
          { number: String(number) },
          { number: String(line + 1) },
          length(at?.offset),
          length(at?.window.lowest),
          length(at?.window.highest),
          textCell(lean === null ? verdict : `${verdict}: ${lean}`),
        ]),
      ),
    ),
  ]);
}

/** Everything that was measured: a key can be cut from it. */
export function pinningTable(
  states: readonly { readonly bench: Bench; readonly evaluation: Evaluation }[],
  title: string,
  unit: JobUnit,
): string {
  return csvText([
    ...headOf(title, 'Restricted: a key can be cut from this table'),
    [
      'State',
      'Chamber',
      ...[
        'Root depth',
        'Root depth ±',
        'Over the ball',
        'Ball',
        'Bottom pin',
        'Bottom pin ±',
        'Ball + bottom pin',
        'Lower stack called for',
        'Called for ±',
        'Master pins',
        'Driver',
        'Spring, free',
        'At the shear line, + high',
      ].map((name) => `${name} (${unit})`),
      'Verdict',
    ].map(textCell),
    ...states.flatMap(({ bench, evaluation }) =>
      pinningRows(bench, evaluation).map((row): Cell[] => {
        const result = evaluation.chambers.find((each) => each.chamber === row.chamber);
        const first = result?.verdicts[0];
        const split = first?.split == null ? undefined : result?.splits[first.split];
        return [
          textCell(bench.plan.kind),
          { number: String(row.number) },
          measured(row.rootDepth, unit),
          plusMinus(row.rootDepth, unit),
          measured(row.overBall, unit),
          measured(row.ball, unit),
          measured(row.bottomPin, unit),
          plusMinus(row.bottomPin, unit),
          measured(row.together, unit),
          numberCell(row.needed?.mm ?? null, unit),
          numberCell(row.needed?.plusMinus ?? null, unit),
          masterPins(row.masterPins, unit),
          measured(row.driver, unit),
          measured(row.spring, unit),
          numberCell(split?.offset ?? null, unit),
          textCell(first?.verdict ?? 'unknown'),
        ];
      }),
    ),
  ]);
}

function headOf(title: string, said: string): Cell[][] {
  return [[textCell('Job'), textCell(title)], [textCell(said)], []];
}

function textCell(text: string): Cell {
  return { text };
}

function numberCell(mm: number | null, unit: JobUnit): Cell {
  return { number: mm === null || !Number.isFinite(mm) ? '' : formatLength(mm, { unit, form: 'export' }) };
}

function measured(value: Measured | null, unit: JobUnit): Cell {
  return numberCell(value?.mm ?? null, unit);
}

function plusMinus(value: Measured | null, unit: JobUnit): Cell {
  return numberCell(value?.plusMinus ?? null, unit);
}

/** One is a number; several stand beside each other as a text, bottom to top. */
function masterPins(pins: readonly Measured[], unit: JobUnit): Cell {
  const [only] = pins;
  if (only === undefined || pins.length === 1) return measured(only ?? null, unit);
  return textCell(pins.map(({ mm }) => formatLength(mm, { unit, form: 'export' })).join(' + '));
}
