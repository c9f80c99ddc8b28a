/** Reads a pasted text in slices between frames, anew whenever something about it changes; the text itself is never touched. */
import { useEffect, useMemo, useState } from 'react';
import {
  type ColumnGuess,
  guessColumns,
  type PastedColumn,
  separatorOf,
} from '../../model/edit/pasted-columns.ts';
import { type PastedRow, type PasteSettings, readPastedRows } from '../../model/edit/pasted-parts.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';
import { type BlockReading, parseBlock, type Separator } from '../../model/units/parse-block.ts';

/** What a person changed about how the text is read; null: as suggested. */
export type PasteChoices = {
  readonly separator: Separator | null;
  readonly hasHeading: boolean | null;
  readonly columns: readonly PastedColumn[] | null;
};

export const AS_SUGGESTED: PasteChoices = { separator: null, hasHeading: null, columns: null };

export type PastedTable = {
  readonly separator: Separator;
  readonly block: BlockReading;
  readonly guess: ColumnGuess;
};

/** Cuts the text into cells and names its columns. */
export function usePastedTable(text: string, choices: PasteChoices, unit: JobUnit): PastedTable {
  const cut = useMemo(() => {
    const separator = choices.separator ?? separatorOf(text);
    return { separator, block: parseBlock(text, separator) };
  }, [text, choices.separator]);
  return useMemo(() => {
    const { block, separator } = cut;
    const guess =
      block.type === 'block' ? guessColumns(block.rows, unit) : { hasHeading: false, columns: [] };
    const columns = guess.columns.map((column, i) => choices.columns?.[i] ?? column);
    return { separator, block, guess: { hasHeading: choices.hasHeading ?? guess.hasHeading, columns } };
  }, [cut, choices.columns, choices.hasHeading, unit]);
}

export type PasteProgress =
  | { readonly kind: 'reading'; readonly done: number; readonly of: number }
  | { readonly kind: 'stopped'; readonly done: number; readonly of: number }
  /** Not settled: read in another way than is asked for now; the new reading is about to come. */
  | { readonly kind: 'read'; readonly rows: readonly PastedRow[]; readonly isSettled: boolean };

type Slice =
  | { readonly kind: 'reading'; readonly done: number }
  | { readonly kind: 'read'; readonly rows: readonly PastedRow[]; readonly with: PasteSettings | null };

/** ms. Time that one slice of reading may take: well inside a frame. */
const SLICE_MS = 12;
/** ms. Between two words about how far it is: drawing them costs more than reading. */
const TELL_MS = 200;

/** Reads the rows beside everything else. `stop` ends it where it is. */
export function usePastedRows(
  rows: readonly (readonly string[])[],
  settings: PasteSettings,
): { readonly progress: PasteProgress; readonly stop: () => void } {
  const [slice, setSlice] = useState<Slice>({ kind: 'read', rows: [], with: null });
  const [stopped, setStopped] = useState<PasteSettings | null>(null);
  const isStopped = stopped === settings;
  useEffect(() => {
    if (isStopped) return undefined;
    const steps = readPastedRows(rows, settings);
    let timer = 0;
    let told = performance.now();
    const goOn = () => {
      const until = performance.now() + SLICE_MS;
      for (;;) {
        const step = steps.next();
        if (step.done === true) {
          setSlice({ kind: 'read', rows: step.value, with: settings });
          return;
        }
        if (performance.now() < until) continue;
        if (until - told > TELL_MS) {
          told = until;
          setSlice({ kind: 'reading', done: step.value });
        }
        timer = window.setTimeout(goOn, 0);
        return;
      }
    };
    timer = window.setTimeout(goOn, 0);
    return () => window.clearTimeout(timer);
  }, [rows, settings, isStopped]);
  return { progress: progressOf(slice, settings, rows.length, isStopped), stop: () => setStopped(settings) };
}

function progressOf(slice: Slice, settings: PasteSettings, of: number, isStopped: boolean): PasteProgress {
  if (slice.kind === 'read') return { ...slice, isSettled: slice.with === settings };
  return { kind: isStopped ? 'stopped' : 'reading', done: slice.done, of };
}
