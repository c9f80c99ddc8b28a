import type { ChamberRow } from '../../model/edit/chamber-rows.ts';
import type { ChamberResult } from '../../model/evaluate/evaluation.ts';
import { formatLength } from '../../model/units/format-length.ts';
import { formatAtMost, formatRange } from '../../model/units/format-range.ts';
import type { Id } from '../../model/schema/leaf.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';
import { splitThatMatters, verdictWords } from '../answer/verdict-words.ts';
import type { Look } from '../shared/look.ts';
import { useView } from '../shared/services.tsx';
import { VerdictMark } from '../shared/verdict-mark.tsx';
import type { Column } from './chamber-columns.ts';
import { LengthField } from './length-field.tsx';

/** Inside to outside. */
export const LINE_TITLES = ['Inner line', 'Outer line'] as const;

type ChamberRowProps = {
  readonly row: ChamberRow;
  readonly look: Look;
  readonly columns: readonly Column[];
  readonly verdictsWait: boolean;
  /** The line whose heights to use are told. */
  readonly focusLine: Id | null;
  readonly useTitle: string;
  readonly isOpen: boolean;
  readonly detailId: string;
  readonly onToggle: () => void;
};

export function ChamberRowView(props: ChamberRowProps) {
  const { row, look, columns, isOpen, detailId, onToggle } = props;
  const pick = useView((view) => view.pickChamber);
  const isPicked = useView((view) => view.pickedChamber === row.chamber.id);
  const result = look.chamberResults.get(row.chamber.id);
  const { unit } = look.job.settings;
  return (
    <tr role="row" className="chamber-row" data-picked={isPicked} onFocus={() => pick(row.chamber.id)}>
      <th role="rowheader" scope="row" className="chamber-number">
        <button
          type="button"
          className="chamber-toggle"
          aria-expanded={isOpen}
          aria-controls={detailId}
          aria-label={`Chamber ${row.number}: more`}
          onClick={onToggle}
        >
          {row.number}
        </button>
      </th>
      {look.evaluation.lines.map(({ line }, i, lines) => (
        <td
          key={line}
          role="cell"
          className="chamber-verdict"
          data-line-title={lines.length > 1 ? LINE_TITLES[i] : undefined}
          data-quiet={lines.length > 1 && line !== props.focusLine}
        >
          <AtTheLine
            result={result}
            unit={unit}
            line={line}
            verdictsWait={props.verdictsWait}
            isSmall={lines.length > 1}
          />
        </td>
      ))}
      <td
        role="cell"
        className="chamber-use is-number"
        data-column-title={result?.useFrom == null ? '' : props.useTitle}
      >
        {result === undefined ? null : <RangeToUse result={result} unit={unit} line={props.focusLine} />}
      </td>
      {columns.map((column) => {
        const field = column.fields.get(row.chamber.id);
        return (
          <td key={column.id} role="cell" className="chamber-entry" data-column-title={column.title}>
            {field === undefined ? (
              <span className="quiet small">{row.under === null ? 'no cut here' : '–'}</span>
            ) : (
              <LengthField field={field} column={column.id} />
            )}
            {row.under !== null && row.under.number !== row.number && column.id === 'root' ? (
              <span className="cut-number">cut {row.under.number}</span>
            ) : null}
          </td>
        );
      })}
    </tr>
  );
}

function AtTheLine({
  result,
  unit,
  line,
  verdictsWait,
  isSmall,
}: {
  readonly result: ChamberResult | undefined;
  readonly unit: JobUnit;
  readonly line: Id;
  readonly verdictsWait: boolean;
  /** Beside another line's: no larger than it has to be. */
  readonly isSmall: boolean;
}) {
  if (result === undefined) return <span className="quiet">closed</span>;
  const words = verdictWords(result, unit, line);
  if (words.symbol === 'none')
    return (
      <>
        <span className="offset-words is-empty" aria-hidden="true">
          –
        </span>
        <span className="verdict">{words.verdict}</span>
      </>
    );
  return (
    <>
      <strong
        className="offset-words"
        data-small={isSmall}
        data-verdict={verdictsWait ? undefined : words.symbol}
      >
        {words.offset}
      </strong>
      {verdictsWait ? (
        <span className="verdict">waits</span>
      ) : (
        <span className="verdict" data-verdict={words.symbol}>
          <VerdictMark symbol={words.symbol} />
          {words.verdict}
        </span>
      )}
    </>
  );
}

/** "from – to", "up to" where anything shorter does, or about one height when no length is certain. */
function RangeToUse({
  result,
  unit,
  line,
}: {
  readonly result: ChamberResult;
  readonly unit: JobUnit;
  readonly line: Id | null;
}) {
  const { useFrom, useTo, noneCertain } =
    (line === null ? null : splitThatMatters(result, line)?.split) ?? result;
  if (useFrom === null || useTo === null) return null;
  if (useTo <= 0) return <span className="quiet small">none is short enough</span>;
  if (noneCertain || useFrom <= 0)
    return (
      <span className="use-range">
        <span className="small">{noneCertain ? 'about' : 'up to'}</span>{' '}
        {noneCertain
          ? formatLength(useTo, { unit, form: 'bench', keepsPlaces: true })
          : formatAtMost(useTo, unit)}
      </span>
    );
  const [least, most] = formatRange(useFrom, useTo, unit);
  return (
    <span className="use-range">
      {least}
      <span className="visually-hidden"> to </span>
      <span aria-hidden="true"> –&nbsp;</span>
      {most}
    </span>
  );
}
