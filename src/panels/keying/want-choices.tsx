/** Which keys are planned for, and what each is to turn. Until somebody chooses, what was said they are meant to do counts. */
import type { KeyAtLine } from '../../model/matching/two-key-options.ts';
import type { Id } from '../../model/schema/leaf.ts';
import type { Look } from '../shared/look.ts';

/** The id of a line of the cylinder, or `LEFT_OUT`. */
export type WantChoice = string;
const LEFT_OUT = '';

/** The keys to plan for: those chosen, else those meant to turn something, else all that sit in the cylinder. */
export function wantsOf(look: Look, choices: ReadonlyMap<Id, WantChoice>): KeyAtLine[] {
  const { lines } = look.bench.cylinder;
  return look.job.keys.flatMap(({ id }): KeyAtLine[] => {
    const line = choices.get(id) ?? usualWant(look, id);
    return !lines.some((each) => each.id === line) ? [] : [{ key: id, line }];
  });
}

/** With a sleeve and nothing said, the first key is for the plug and the second for the sleeve. */
function usualWant({ job, selection, bench }: Look, key: Id): WantChoice {
  const own = job.intents.filter((each) => each.cylinder === selection.cylinder);
  const said = own.find((each) => each.key === key && each.turns);
  if (said !== undefined) return said.line;
  if (own.length > 0) return LEFT_OUT;
  const seated = job.keys.filter(({ id }) =>
    job.seatings.some((each) => each.key === id && each.cylinder === selection.cylinder),
  );
  const place = seated.findIndex(({ id }) => id === key);
  if (place < 0) return LEFT_OUT;
  const { lines } = bench.cylinder;
  return (lines[Math.min(place, lines.length - 1)] ?? lines[0])?.id ?? LEFT_OUT;
}

type WantChoicesProps = {
  readonly look: Look;
  readonly wants: readonly KeyAtLine[];
  readonly onChoose: (key: Id, choice: WantChoice) => void;
};

export function WantChoices({ look, wants, onChoose }: WantChoicesProps) {
  const { lines } = look.bench.cylinder;
  return (
    <ul className="want-rows">
      {look.job.keys.map(({ id, label }) => (
        <li key={id} className="want-row">
          <label className="want">
            <span className="want-name">{label}</span>
            <select
              className="keying-select"
              value={wants.find(({ key }) => key === id)?.line ?? LEFT_OUT}
              onChange={({ target }) => onChoose(id, target.value)}
            >
              {lines.map((line, i) => (
                <option key={line.id} value={line.id}>
                  {lineWords(i, lines.length)}
                </option>
              ))}
              <option value={LEFT_OUT}>is left out</option>
            </select>
          </label>
        </li>
      ))}
    </ul>
  );
}

function lineWords(index: number, count: number): string {
  if (count === 1) return 'turns the plug';
  return index === 0 ? 'turns the plug alone' : 'turns plug and sleeve together';
}
