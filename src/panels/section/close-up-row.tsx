import { lazy, type ReactNode, Suspense, useMemo } from 'react';
import { closeUp, closeUpCaption } from '../../drawing/close-up.ts';
import type { Pose } from '../../model/assembly/pose.ts';
import type { Id } from '../../model/schema/leaf.ts';
import { verdictWords } from '../answer/verdict-words.ts';
import { DrawingSvg } from '../shared/drawing-svg.tsx';
import { type Look, useLine } from '../shared/look.ts';
import { lowerStackName } from '../shared/part-labels.ts';
import { useView } from '../shared/services.tsx';
import { useWidth } from '../shared/use-width.ts';
import { HOME_WORDS, keyWords } from './key-words.ts';
import { homePose, usePose } from './use-pose.ts';

const LineSwitch = lazy(async () => ({ default: (await import('./line-switch.tsx')).LineSwitch }));

/** px. Between neighbours; the narrowest that can be read; the widest that still is one of a row. */
const GAP = 12;
const LEAST_WIDTH = 104;
const MOST_WIDTH = 168;
const WINDOW_HEIGHT = 128;
/** Height against width, so that half thousandths show. */
const STRETCH = 10;

type CloseUpRowProps = {
  readonly look: Look;
  /** Beside the readings the close-ups show what they say, wherever the key is; elsewhere they follow the key. */
  readonly isKeyHome: boolean;
};

/** One close-up for each stack; picking one picks its chamber everywhere. */
export function CloseUpRow({ look, isKeyHome }: CloseUpRowProps) {
  return isKeyHome ? <HomeCloseUps look={look} /> : <LiveCloseUps look={look} />;
}

/** Not drawn anew while the key moves. */
function HomeCloseUps({ look }: { readonly look: Look }) {
  const pose = useMemo(() => homePose(look), [look]);
  return <CloseUps look={look} pose={pose} note={<WhereTheKeyIs look={look} />} />;
}

/** The answer is about a key that is home; while the section shows it elsewhere, that is said. */
function WhereTheKeyIs({ look }: { readonly look: Look }) {
  const { key } = look.assembly;
  const travel = useView((view) => view.travel);
  if (key === null) return null;
  const way = { seated: key.seatedTravel, out: key.outTravel };
  const words = keyWords(travel, way, look.job.settings.unit);
  return words === HOME_WORDS
    ? `${HOME_WORDS}. `
    : `${HOME_WORDS} here, as the answer reckons; in the section above: ${words.toLowerCase()}. `;
}

function LiveCloseUps({ look }: { readonly look: Look }) {
  return <CloseUps look={look} pose={usePose(look)} note={null} />;
}

type CloseUpsProps = { readonly look: Look; readonly pose: Pose; readonly note: ReactNode };

function CloseUps({ look, pose, note }: CloseUpsProps) {
  const [frame, room] = useWidth<HTMLDivElement>();
  const { unit } = look.job.settings;
  const open = look.rows.rows.filter(({ chamber }) => look.chamberResults.has(chamber.id));
  const isEmpty = open.every(({ chamber }) => look.chamberResults.get(chamber.id)?.splits.length === 0);
  const count = Math.max(1, open.length);
  const fitting = Math.floor((room - (count - 1) * GAP) / count);
  const width = Math.min(MOST_WIDTH, Math.max(LEAST_WIDTH, fitting));
  const line = useLine(look);
  const options = {
    unit,
    mode: 'stretched',
    stretch: STRETCH,
    ...(line !== null && { line }),
  } as const;
  if (isEmpty)
    return (
      <p className="small quiet">
        Close-ups come with the first stack. What is not measured yet is drawn at its usual size.
      </p>
    );
  return (
    <div ref={frame} className="close-ups-frame">
      {look.assembly.lines.length < 2 ? null : (
        <Suspense fallback={null}>
          <LineSwitch look={look} line={line} />
        </Suspense>
      )}
      {room === 0 ? null : (
        <ol className="close-ups">
          {open.map(({ chamber, number }) => (
            <CloseUpButton
              key={chamber.id}
              look={look}
              pose={pose}
              chamber={chamber.id}
              number={number}
              width={width}
              line={line}
            />
          ))}
        </ol>
      )}
      <p className="small quiet">
        {note}
        {closeUpCaption(look.assembly, pose, look.evaluation, options)}
      </p>
    </div>
  );
}

type CloseUpButtonProps = {
  readonly look: Look;
  readonly pose: Pose;
  readonly chamber: Id;
  readonly number: number;
  readonly width: number;
  readonly line: Id | null;
};

function CloseUpButton({ look, pose, chamber, number, width, line }: CloseUpButtonProps) {
  const isPicked = useView((view) => view.pickedChamber === chamber);
  const pick = useView((view) => view.pickChamber);
  const { unit } = look.job.settings;
  const picture = useMemo(
    () => (
      <DrawingSvg
        isDecoration
        drawing={closeUp(look.assembly, pose, look.evaluation, {
          chamber,
          ...(line !== null && { line }),
          width,
          windowHeight: WINDOW_HEIGHT,
          unit,
          mode: 'stretched',
          stretch: STRETCH,
          isPicked,
          badge: 'short',
        })}
      />
    ),
    [look, pose, chamber, width, unit, isPicked, line],
  );
  const result = look.chamberResults.get(chamber);
  const words = result === undefined ? null : verdictWords(result, unit, line ?? undefined);
  const name = lowerStackName(look.job, look.bench.plan, chamber);
  return (
    <li>
      <button
        type="button"
        className="close-up"
        aria-pressed={isPicked}
        onClick={() => pick(isPicked ? null : chamber)}
      >
        <span className="visually-hidden">
          Chamber {number}: {words === null ? 'closed' : `${words.offset}, ${words.verdict}`}
        </span>
        {picture}
        {name === null ? null : <span className="close-up-part small">{name}</span>}
      </button>
    </li>
  );
}
