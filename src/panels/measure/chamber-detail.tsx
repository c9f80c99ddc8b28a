/**
 * What lies behind one row: the height each route calls for, plain subtraction beside it, readings to repeat where they
 * decide, and what the bench says: felt, turned alone, turned with its driver.
 */
import type { ChamberRow } from '../../model/edit/chamber-rows.ts';
import { pinRoute } from '../../model/edit/edit-seating.ts';
import type { ChamberResult, Route } from '../../model/evaluate/evaluation.ts';
import { formatLength } from '../../model/units/format-length.ts';
import type { Id } from '../../model/schema/leaf.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';
import { splitThatMatters } from '../answer/verdict-words.ts';
import { focusOf, type Look } from '../shared/look.ts';
import { useEdit } from '../shared/services.tsx';
import { BenchTests } from './bench-tests.tsx';
import type { Column } from './chamber-columns.ts';
import { MasterPins } from './master-pins.tsx';
import { ReadAgain } from './read-again.tsx';

type ChamberDetailProps = {
  readonly row: ChamberRow;
  readonly look: Look;
  readonly columns: readonly Column[];
};

export function ChamberDetail({ row, look, columns }: ChamberDetailProps) {
  const result = look.chamberResults.get(row.chamber.id);
  const { unit } = look.job.settings;
  if (result === undefined) return <p>This chamber is closed: nothing is in it.</p>;
  const line = focusOf(look) ?? undefined;
  const found = splitThatMatters(result, line);
  const isOpenQuestion = found?.verdict === "can't say yet";
  const fields = columns.flatMap((column) => column.fields.get(row.chamber.id) ?? []);
  return (
    <div className="chamber-detail">
      {found === null ? null : <Window result={result} unit={unit} line={line} />}
      {result.missing.length === 0 ? null : <p>{result.missing.join(' ')}</p>}
      <MasterPins row={row} look={look} />
      <Routes row={row} look={look} result={result} />
      {isOpenQuestion ? <ReadAgain fields={fields} /> : null}
      <BenchTests row={row} look={look} result={result} />
    </div>
  );
}

type WindowProps = {
  readonly result: ChamberResult;
  readonly unit: JobUnit;
  readonly line: Id | undefined;
};

function Window({ result, unit, line }: WindowProps) {
  const found = splitThatMatters(result, line);
  if (found === null) return null;
  const { window, margin, expandedUncertainty, nextStep } = found.split;
  const text = (mm: number) => formatLength(Math.abs(mm), { unit, form: 'bench', keepsPlaces: true });
  const place = (mm: number) => `${mm < 0 ? 'low' : 'high'} ${text(mm)}`;
  const spare = margin >= 0 ? `${text(margin)} to spare` : `${text(margin)} outside`;
  return (
    <>
      <p>
        Turns from {place(window.lowest)} to {place(window.highest)}: {spare}, good to about ±
        {text(expandedUncertainty)} {unit}.
      </p>
      {nextStep === null ? null : <p>{nextStep}</p>}
    </>
  );
}

const ROUTE_WORDS: Readonly<Record<Route, string>> = {
  subtraction: 'by root depth',
  'over the ball': 'over the ball',
  'stands up by': 'stands up by',
  'known set': 'a set known to work',
};

function Routes({
  row,
  look,
  result,
}: Omit<ChamberDetailProps, 'columns'> & { readonly result: ChamberResult }) {
  const edit = useEdit();
  const { unit } = look.job.settings;
  const { cylinder, key } = look.selection;
  const text = (mm: number) => formatLength(mm, { unit, keepsPlaces: true });
  if (result.routes.length === 0 || key === null) return null;
  const drive = (route: Route) =>
    edit(`Chamber ${row.number}: height ${ROUTE_WORDS[route]}`, (job) =>
      pinRoute(job, cylinder, key, row.chamber.id, route),
    );
  return (
    <table className="routes">
      <caption>The height the key calls for</caption>
      <tbody>
        {result.routes.map((route) => {
          const drives = route.route === result.drivingRoute;
          return (
            <tr key={route.route} data-drives={drives}>
              <th scope="row">{ROUTE_WORDS[route.route]}</th>
              <td className="number">
                {text(route.needed)}{' '}
                <span className="quiet">
                  ±{formatLength(route.expandedUncertainty, { unit, form: 'bench', keepsPlaces: true })}
                </span>
              </td>
              <td>
                {drives ? (
                  'counts'
                ) : (
                  <button
                    type="button"
                    className="button"
                    data-kind="quiet"
                    onClick={() => drive(route.route)}
                  >
                    Let this one count
                  </button>
                )}
                {route.disagrees ? <strong> differs by more than the ±</strong> : null}
              </td>
            </tr>
          );
        })}
        {result.simpleLowerStack === null ? null : (
          <tr>
            <th scope="row">on paper</th>
            <td className="number">{text(result.simpleLowerStack)}</td>
            <td>{result.simpleDiffers ?? 'plug less metal under the key less root depth'}</td>
          </tr>
        )}
      </tbody>
    </table>
  );
}
