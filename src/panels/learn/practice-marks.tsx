/** Marks of a practice cylinder: first whether each reading and each stack is within; on release what is true beside it. */
import { useEffect, useId, useRef, useState } from 'react';
import {
  type Figures,
  type FigureMark,
  markReadings,
  type PracticeCard,
  READING_TOLERANCE_MM,
  STACK_TOLERANCE_MM,
  type StackMark,
} from '../../model/learning/practice-figures.ts';
import { figureLabel } from './figure-fields.tsx';
import { countText, fill, givenText, lengthText, type Ruler, signedLength } from './fill.ts';
import { NameLine, PrintButton } from './learner-sheet.tsx';
import { useWords } from './words-context.ts';
import type { Words } from './words/words.ts';

type PracticeMarksProps = {
  readonly card: PracticeCard;
  readonly truth: Figures;
  readonly read: Figures;
};

type Row = { readonly what: string; readonly mark: Omit<FigureMark, 'name'>; readonly isOffset: boolean };

export function PracticeMarks({ card, truth, read }: PracticeMarksProps) {
  const words = useWords();
  const { practice, common, tongue } = words;
  const [isReleased, setReleased] = useState(false);
  const title = useId();
  const place = useRef<HTMLParagraphElement>(null);
  useEffect(() => place.current?.focus(), [isReleased]);
  const ruler: Ruler = { unit: card.unit, tongue };
  const { figures, stacks } = markReadings(card, truth, read);
  const tally = (marks: readonly (FigureMark | StackMark)[], forms: Words['practice']['marks']) =>
    countText(marks.length, forms, tongue).replace(
      '{right}',
      String(marks.filter(({ isWithin }) => isWithin).length),
    );
  const rows: readonly Row[] = [
    ...figures.map((mark) => ({ what: figureLabel(mark.name, practice.figures), mark, isOffset: false })),
    ...stacks.map((mark) => ({
      what: practice.stack.replace('{number}', String(mark.number)),
      mark,
      isOffset: true,
    })),
  ];
  return (
    <section className="practice-marks learn-paper" aria-labelledby={title}>
      <header className="paper-head">
        <h3 id={title}>{words.station.pages.practice}</h3>
        <p className="paper-tally">
          {fill(
            practice.card,
            { label: card.label, unit: card.unit === 'in' ? common.unitIn : common.unitMm },
            ruler,
          )}
        </p>
        <NameLine />
      </header>
      <p ref={place} tabIndex={-1} className="question-result">
        {isReleased ? practice.released : practice.marked} {tally(figures, practice.marks)}{' '}
        {tally(stacks, practice.stackMarks)}
      </p>
      <p className="small quiet">
        {fill(
          practice.rules,
          {
            reading: `±${givenText(READING_TOLERANCE_MM, ruler)}`,
            stack: `±${givenText(STACK_TOLERANCE_MM, ruler)}`,
          },
          ruler,
        )}
      </p>
      <MarkTable rows={rows} isReleased={isReleased} ruler={ruler} />
      {isReleased ? null : (
        <button type="button" className="button no-print" data-kind="main" onClick={() => setReleased(true)}>
          {practice.release}
        </button>
      )}
      <PrintButton />
    </section>
  );
}

type MarkTableProps = {
  readonly rows: readonly Row[];
  readonly isReleased: boolean;
  readonly ruler: Ruler;
};

function MarkTable({ rows, isReleased, ruler }: MarkTableProps) {
  const { practice } = useWords();
  const written = (mm: number, isOffset: boolean) =>
    isOffset ? signedLength(mm, ruler) : lengthText(mm, ruler);
  return (
    <div className="practice-scroll" tabIndex={0} role="group" aria-label={practice.mark}>
      <table className="paper-table">
        <thead>
          <tr>
            <th scope="col">{practice.what}</th>
            <th scope="col">{practice.read}</th>
            <th scope="col">{practice.markHead}</th>
            {isReleased ? (
              <>
                <th scope="col">{practice.truth}</th>
                <th scope="col">{practice.difference}</th>
              </>
            ) : null}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ what, mark, isOffset }) => (
            <tr key={what} data-within={mark.isWithin}>
              <th scope="row">{what}</th>
              <td className="number">{written(mark.read, isOffset)}</td>
              <td>
                {mark.isWithin ? '✓' : '✗'} {mark.isWithin ? practice.within : practice.off}
              </td>
              {isReleased ? (
                <>
                  <td className="number">{written(mark.truth, isOffset)}</td>
                  <td className="number">{signedLength(mark.difference, ruler)}</td>
                </>
              ) : null}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
