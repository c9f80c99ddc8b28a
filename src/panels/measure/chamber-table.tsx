/**
 * One row for each chamber, in the order they sit: at the shear line first and big, then what to use, then what was
 * measured. The same table on a narrow screen, folded into cards.
 */
import { type ClipboardEvent, lazy, Suspense, useState } from 'react';
import type { Id } from '../../model/schema/leaf.ts';
import { focusOf, type Look } from '../shared/look.ts';
import { firstWidths } from '../shared/first-widths.ts';
import { inRem, useWidth } from '../shared/use-width.ts';
import type { Column } from './chamber-columns.ts';
import { ChamberRowView, LINE_TITLES } from './chamber-row.tsx';
import type { PastedBlock } from './paste-plan.ts';
import './chamber-table.css';

const ChamberDetail = lazy(async () => ({ default: (await import('./chamber-detail.tsx')).ChamberDetail }));

type ChamberTableProps = {
  readonly look: Look;
  readonly columns: readonly Column[];
  readonly verdictsWait: boolean;
  readonly onPaste: (block: PastedBlock) => void;
};

/** Room in text sizes: for number, verdict and range to use, and for each column that is written in. */
const RESULTS_REM = 19.5;
const ENTRY_REM = 6.25;
/** A further line's offset and verdict. */
const LINE_REM = 6.5;

export function ChamberTable({ look, columns, verdictsWait, onPaste }: ChamberTableProps) {
  const [open, setOpen] = useState<Id | null>(null);
  const onPasteInside = (event: ClipboardEvent<HTMLElement>) => {
    const field = event.target instanceof HTMLElement ? event.target.dataset['field'] : undefined;
    const text = event.clipboardData.getData('text');
    // A single value is the field's own business.
    if (!/[\t\r\n]/u.test(text.trim())) return;
    event.preventDefault();
    void import('./paste-plan.ts').then(({ pastedBlock }) => {
      const block = pastedBlock(text, field, look, columns);
      if (block !== null) onPaste(block);
    });
  };
  const { looseCuts } = look.rows;
  const [frame, width] = useWidth<HTMLDivElement>(firstWidths().station);
  const { lines } = look.evaluation;
  const focusLine = focusOf(look);
  const useTitle = useWords(look, focusLine);
  const resultsRem = RESULTS_REM + (lines.length - 1) * LINE_REM;
  const isFolded = width > 0 && inRem(width) < resultsRem + columns.length * ENTRY_REM;
  return (
    <div ref={frame}>
      <table
        className="chamber-table"
        role="table"
        data-walk="chambers"
        data-layout={isFolded ? 'cards' : 'rows'}
        onPaste={onPasteInside}
      >
        <caption className="visually-hidden">
          Chambers: where each stack stands at the shear line, what to use, and what was measured
        </caption>
        <thead role="rowgroup">
          <tr role="row">
            <th role="columnheader" scope="col">
              <span className="visually-hidden">Chamber</span>
            </th>
            {lines.map(({ line }, i) => (
              <th key={line} role="columnheader" scope="col">
                {lines.length > 1 ? LINE_TITLES[i] : 'At the shear line'}
              </th>
            ))}
            <th role="columnheader" scope="col" className="is-number">
              {useTitle}
            </th>
            {columns.map((column) => (
              <th key={column.id} role="columnheader" scope="col" className="is-number">
                {column.title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody role="rowgroup">
          {look.rows.rows.map((row) => {
            const { id } = row.chamber;
            const isOpen = open === id;
            const detailId = `chamber-detail-${id}`;
            return [
              <ChamberRowView
                key={id}
                row={row}
                look={look}
                columns={columns}
                verdictsWait={verdictsWait}
                focusLine={focusLine}
                useTitle={useTitle}
                isOpen={isOpen}
                detailId={detailId}
                onToggle={() => setOpen(isOpen ? null : id)}
              />,
              isOpen ? (
                <tr key={`${id} detail`} role="row" id={detailId} className="chamber-detail-row">
                  <td role="cell" colSpan={2 + lines.length + columns.length}>
                    <Suspense fallback={null}>
                      <ChamberDetail row={row} look={look} columns={columns} />
                    </Suspense>
                  </td>
                </tr>
              ) : null,
            ];
          })}
        </tbody>
      </table>
      {looseCuts.length === 0 ? null : (
        <p className="loose-cuts quiet">
          {looseCuts.length === 1 ? 'No chamber lies over cut ' : 'No chambers lie over cuts '}
          {looseCuts.map((cut) => cut.number).join(', ')}.
        </p>
      )}
    </div>
  );
}

/** What the range to use is of: the lower stack at the inner line, everything under the split at an outer one. */
function useWords({ rows, evaluation }: Look, line: Id | null): string {
  const hasBalls = rows.rows.some((row) => row.parts?.ball != null);
  const lower = hasBalls ? 'ball + pin' : 'pin';
  const isOuter = evaluation.lines.length > 1 && line !== evaluation.lines[0]?.line;
  return isOuter ? `Use ${lower} + master of` : `Use a ${lower} of`;
}
