/**
 * What a screen reader reads of close-ups, table, pictures and repair note are the numbers of the evaluation: every offset, verdict,
 * window and height to use, in 1,000 seeded jobs (SEEDED_JOBS=1000), fewer in every run.
 */
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test, vi } from 'vitest';
import { closeUpLarge } from '../../src/drawing/close-up-large.ts';
import { longSection } from '../../src/drawing/long-section.ts';
import { poseAt } from '../../src/model/assembly/pose-at.ts';
import { answerOf } from '../../src/panels/answer/answer-of.ts';
import { ChamberTable } from '../../src/panels/measure/chamber-table.tsx';
import { ShareableSheet } from '../../src/panels/note/shareable-sheet.tsx';
import { CloseUpRow } from '../../src/panels/section/close-up-row.tsx';
import { focusOf, type Look, lookAt } from '../../src/panels/shared/look.ts';
import { ServicesProvider } from '../../src/panels/shared/services.tsx';
import { recordFigure } from '../support/figure.ts';
import { allElements, hasClass, type MarkupElement, parseMarkup, spokenText } from '../support/markup.ts';
import { jobCount, nearLineJob } from '../support/near-line-jobs.ts';
import {
  isNarrow,
  isRounded,
  isRoundedInward,
  offsetFault,
  splitsOf,
  verdictOf,
} from '../support/said-numbers.ts';
import { testServices } from '../support/test-services.ts';

// There is no window here to ask how wide things are.
vi.mock('../../src/panels/shared/use-width.ts', () => ({
  useWidth: () => [() => undefined, 1200],
  inRem: () => 75,
}));
vi.mock('../../src/panels/shared/use-media.ts', () => ({
  useMedia: () => false,
  ONE_COLUMN: '',
  ONE_HAND: '',
}));

type Compared = { readonly count: number; readonly faults: readonly string[] };

function page(look: Look, content: React.ReactNode): MarkupElement {
  const markup = renderToStaticMarkup(
    <ServicesProvider value={testServices(look.job)}>
      <main>{content}</main>
    </ServicesProvider>,
  );
  return parseMarkup(markup);
}

/** "Chamber 4: high .0025, high, rubs" on each button, at the line that is looked at. */
function compareCloseUps(look: Look): Compared {
  const { unit } = look.job.settings;
  const names = allElements(page(look, <CloseUpRow look={look} isKeyHome />))
    .filter((each) => hasClass(each, 'close-up'))
    .map(spokenText);
  const focus = focusOf(look);
  const about = splitsOf(look.evaluation).filter(({ line }) => focus === null || line === focus);
  const faults = about.flatMap(({ chamber, split }) => {
    const start = `Chamber ${chamber.number}: `;
    const said = names.find((name) => name.startsWith(start))?.slice(start.length) ?? '';
    const [offset = '', ...rest] = said.split(', ');
    // Behind the verdict the button names the part.
    const isSaid = rest.join(', ').startsWith(verdictOf(split));
    return [offsetFault(offset, split, unit), isSaid ? null : `"${said}" for ${verdictOf(split)}`];
  });
  return { count: about.length, faults: faults.filter((fault) => fault !== null) };
}

/** The row of each chamber: a cell for each line, then from where to where to use. */
function compareTable(look: Look): Compared {
  const { unit } = look.job.settings;
  const { verdictsWait } = answerOf(look);
  const table = (
    <ChamberTable look={look} columns={[]} verdictsWait={verdictsWait} onPaste={() => undefined} />
  );
  const rows = allElements(page(look, table)).filter((each) => hasClass(each, 'chamber-row'));
  const about = splitsOf(look.evaluation);
  const focus = focusOf(look);
  const faults = about.flatMap(({ chamber, lineIndex, line, split }) => {
    const row = rows.find((each) => spokenText(each).startsWith(`Chamber ${chamber.number}: more`));
    const cells = row?.children.filter((each) => each.tag === 'td') ?? [];
    const [offset = '', verdict = ''] = cells[lineIndex]?.children.map(spokenText) ?? [];
    const wanted = verdictsWait ? 'waits' : verdictOf(split);
    const isUse = line === focus;
    return [
      offsetFault(offset, split, unit),
      verdict === wanted ? null : `"${verdict}" for ${wanted}`,
      isUse ? useFault(spokenText(cells[look.evaluation.lines.length]!), split, unit) : null,
    ];
  });
  return { count: about.length, faults: faults.filter((fault) => fault !== null) };
}

type Use = { readonly useFrom: number; readonly useTo: number; readonly noneCertain: boolean };

function useFault(said: string, { useFrom, useTo, noneCertain }: Use, unit: 'in' | 'mm'): string | null {
  // Nothing is shorter than nothing.
  if (useTo <= 0) return said === 'none is short enough' ? null : `use "${said}" for ${useTo}`;
  const numbers = (said.match(/−?\d*\.\d+/g) ?? []).map(Number);
  const ends = noneCertain || useFrom <= 0 ? [useTo] : [useFrom, useTo];
  const isEnd = (number: number, i: number): boolean =>
    noneCertain
      ? isRounded(number, ends[i]!, unit)
      : isRoundedInward(number, ends[i]!, i === ends.length - 1 ? 'down' : 'up', unit) ||
        isNarrow(useFrom, useTo, unit);
  const isSaid =
    numbers.length === ends.length &&
    said.startsWith('about') === noneCertain &&
    said.startsWith('up to') === (!noneCertain && useFrom <= 0) &&
    numbers.every(isEnd);
  return isSaid ? null : `use "${said}" for ${ends.join(' to ')}`;
}

/** The names of the pictures: what holds it in the long section; offset, +- and window of each chamber enlarged. */
function comparePictures(look: Look): Compared {
  const { assembly, evaluation, job } = look;
  const { unit } = job.settings;
  const pose = poseAt(assembly, { travel: assembly.key?.seatedTravel ?? 0 });
  const about = splitsOf(evaluation);
  const faults = about.flatMap(({ chamber, line, split }) => {
    const options = { chamber: chamber.chamber, line, width: 640, unit };
    const name = String(closeUpLarge(assembly, pose, evaluation, options).attributes['aria-label']);
    const said = (word: string): number =>
      Number(
        new RegExp(`${word} ([+−]?)(\\d*\\.\\d+)`).exec(name)?.slice(1).join('').replace('−', '-') ?? NaN,
      );
    const { lowest, highest } = split.window;
    const pairs = [
      ['lowest', lowest],
      ['highest', highest],
    ] as const;
    return [
      ...pairs.map(([word, mm]) =>
        isRounded(said(word), mm, unit) ? null : `${word} in "${name}" for ${mm}`,
      ),
      isRounded(Number(/±(\d*\.\d+)/.exec(name)?.[1] ?? 0), split.expandedUncertainty, unit)
        ? null
        : `± in "${name}" for ${split.expandedUncertainty}`,
    ];
  });
  const section = String(
    longSection(assembly, pose, evaluation, { width: 900, unit }).attributes['aria-label'],
  );
  return {
    count: about.length + 1,
    faults: [...faults, ...sectionFaults(section, look)].filter((each) => each !== null),
  };
}

/** Every chamber that holds a line is named once with its amount, unless a line turns or all share one error. */
function sectionFaults(name: string, { evaluation, job }: Look): string[] {
  const { unit } = job.settings;
  const said = name.split(': ').slice(1).join(': ');
  if (evaluation.lines.some(({ verdict }) => verdict === 'turns'))
    return said === '' ? [] : [`"${name}" though it turns`];
  if (evaluation.commonError !== null) {
    const { offset } = evaluation.commonError;
    const words = said.replace('every chamber ', '');
    const amount = Number(/(\d*\.\d+)$/.exec(words)?.[1]) * (words.startsWith('high') ? 1 : -1);
    return isRounded(amount, offset, unit) ? [] : [`"${name}" for ${offset} everywhere`];
  }
  return evaluation.lines.flatMap(({ line, blockedBy }) =>
    blockedBy.flatMap((id) => {
      const found = splitsOf(evaluation).find((each) => each.chamber.chamber === id && each.line === line);
      if (found === undefined || ['level', 'low, turns'].includes(found.split.verdict)) return [];
      const about = said.split('; ').find((each) => each.startsWith(`chamber ${found.chamber.number} `));
      if (about === undefined) return [`chamber ${found.chamber.number} is not in "${name}"`];
      // With two lines a chamber is flagged once, at the inner one that it holds.
      if (evaluation.lines.length > 1 && !about.includes(found.lineIndex === 0 ? 'inner' : 'outer'))
        return [];
      const amount = Number(/(\d*\.\d+)/.exec(about)?.[1] ?? 0);
      const isThere = isRounded(amount, Math.abs(found.split.offset), unit) || about.includes('no length');
      return isThere ? [] : [`"${about}" for ${found.split.offset}`];
    }),
  );
}

/** The page that may be shared: each split in the column of its state. */
function compareNote(look: Look): Compared {
  const { unit } = look.job.settings;
  const sheet = page(look, <ShareableSheet look={look} states={[look]} />);
  const table = allElements(sheet).find((each) => hasClass(each, 'sheet-table'));
  const rows = allElements(table!).filter(({ tag }) => tag === 'tr');
  const about = splitsOf(look.evaluation);
  const lineCount = look.evaluation.lines.length;
  const faults = about.flatMap(({ chamber, lineIndex, split }) => {
    const place = lineCount > 1 ? ` ${lineIndex === 0 ? 'inner' : 'outer'}` : '';
    const head = `Chamber ${chamber.number}${place}`;
    const row = rows.find((each) => spokenText(each.children[0]!) === head);
    const planned = row?.children[2];
    const [offset = '', verdict = ''] = planned?.children.map(spokenText) ?? [];
    return [
      offsetFault(offset, split, unit),
      verdict === verdictOf(split) ? null : `note says "${verdict}" for ${verdictOf(split)}`,
    ];
  });
  return { count: about.length, faults: faults.filter((fault) => fault !== null) };
}

describe('what is read out', () => {
  test('of close-ups, table, pictures and note says the numbers of the evaluation', () => {
    const jobs = jobCount(12);
    const faults: string[] = [];
    let compared = 0;
    for (let seed = 0; seed < jobs; seed++) {
      const { job, selection } = nearLineJob(seed);
      const look = lookAt(job, selection);
      for (const compare of [compareCloseUps, compareTable, comparePictures, compareNote]) {
        const { count, faults: found } = compare(look);
        compared += count;
        faults.push(...found.map((fault) => `seed ${seed}, ${compare.name}: ${fault}`));
      }
    }
    recordFigure({
      what: 'read out and reckoned: differences',
      measured: faults.length,
      unit: 'places',
      aim: { atMost: 0 },
      note: `${compared} compared in ${jobs} jobs`,
    });
    expect(faults).toEqual([]);
    expect(compared).toBeGreaterThan(jobs * 15);
  });
});
