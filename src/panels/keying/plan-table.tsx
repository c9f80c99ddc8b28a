/** The planned lengths, chamber by chamber, with master pins that are too thin and splits that could serve several keys. */
import type { KeysPlan, MergeOffer, PlannedChamber, PlannedSplit } from '../../model/keying/plan-keys.ts';
import type { Id } from '../../model/schema/leaf.ts';
import { formatLength, formatOffset } from '../../model/units/format-length.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';
import { listWords } from '../answer/list-words.ts';
import type { Look } from '../shared/look.ts';
import { useView } from '../shared/services.tsx';

type PlanTableProps = {
  readonly look: Look;
  readonly plan: KeysPlan;
  readonly picked: Id | null;
  readonly onMerge: (chamber: Id, isMerged: boolean) => void;
};

export function PlanTable({ look, plan, picked, onMerge }: PlanTableProps) {
  const pick = useView((view) => view.pickChamber);
  const hasBall = plan.chambers.some(({ ball }) => ball !== null);
  return (
    <table className="plan-table">
      <caption className="visually-hidden">Planned lengths, chamber by chamber</caption>
      <thead>
        <tr>
          <th scope="col">Chamber</th>
          <th scope="col">{hasBall ? 'Ball + bottom pin' : 'Bottom pin'}</th>
          <th scope="col">Master pin</th>
        </tr>
      </thead>
      <tbody>
        {plan.chambers.map((chamber) => (
          <tr key={chamber.chamber} data-picked={chamber.chamber === picked}>
            <th scope="row">
              <button
                type="button"
                className="keying-link"
                aria-pressed={chamber.chamber === picked}
                aria-label={`Chamber ${chamber.number}, show it`}
                onClick={() => pick(chamber.chamber)}
              >
                {chamber.number}
              </button>
            </th>
            <Lengths look={look} plan={plan} chamber={chamber} onMerge={onMerge} />
          </tr>
        ))}
      </tbody>
    </table>
  );
}

type LengthsProps = Omit<PlanTableProps, 'picked'> & { readonly chamber: PlannedChamber };

function Lengths({ look, plan, chamber, onMerge }: LengthsProps) {
  const { unit } = look.job.settings;
  const { isLocked, problem, bottom, masters, offer, isMerged, splits } = chamber;
  if (isLocked) return <td colSpan={2}>Locked in the plan: stays as it is.</td>;
  if (problem !== null || bottom === null)
    return (
      <td colSpan={2} className="plan-problem">
        {problem}
      </td>
    );
  return (
    <>
      <td className="number">{say(bottom, unit)}</td>
      <td>
        <span className="number">
          {masters.length === 0 ? 'none' : listWords(masters.map(({ length }) => say(length, unit)))}
        </span>
        <Thin chamber={chamber} plan={plan} unit={unit} />
        {offer === null ? null : (
          <Offer look={look} offer={offer} onTake={() => onMerge(chamber.chamber, true)} chamber={chamber} />
        )}
        {isMerged ? (
          <span className="plan-note">
            One split for several: {shared(look, splits)}.{' '}
            <button
              type="button"
              className="keying-link"
              aria-label={`A split for each key again, chamber ${chamber.number}`}
              onClick={() => onMerge(chamber.chamber, false)}
            >
              A split for each again
            </button>
          </span>
        ) : null}
      </td>
    </>
  );
}

function Thin({
  chamber,
  plan,
  unit,
}: {
  readonly chamber: PlannedChamber;
  readonly plan: KeysPlan;
  readonly unit: JobUnit;
}) {
  const thin = chamber.masters.filter(({ isThin }) => isThin);
  if (thin.length === 0) return null;
  const which =
    chamber.masters.length === thin.length
      ? ''
      : `${listWords(thin.map(({ length }) => say(length, unit)))}: `;
  return (
    <span className="plan-note plan-thin">
      {which}too thin to keep flat (under {say(plan.thinnest, unit)})
      {chamber.offer === null && !chamber.isMerged ? ', and no one height serves both' : ''}
    </span>
  );
}

type OfferProps = {
  readonly look: Look;
  readonly chamber: PlannedChamber;
  readonly offer: MergeOffer;
  readonly onTake: () => void;
};

function Offer({ look, chamber, offer, onTake }: OfferProps) {
  return (
    <span className="plan-note">
      One split would serve: {shared(look, offer.splits)}.{' '}
      <button
        type="button"
        className="keying-link"
        aria-label={`Use one split, chamber ${chamber.number}`}
        onClick={onTake}
      >
        Use one split
      </button>
    </span>
  );
}

/** "Oil store level, Cellar −.0025" */
function shared({ job }: Look, splits: readonly PlannedSplit[]): string {
  const { unit } = job.settings;
  const words = splits
    .filter(({ serves }) => serves.length > 1)
    .flatMap(({ serves }) =>
      serves.map(({ key, offset }) => {
        const amount = formatOffset(offset, unit);
        const label = job.keys.find(({ id }) => id === key)?.label ?? 'a key';
        return `${label} ${/[1-9]/u.test(amount) ? amount : 'level'}`;
      }),
    );
  return listWords(words);
}

function say(mm: number, unit: JobUnit): string {
  return formatLength(mm, { unit, keepsPlaces: true });
}
