import { closeUp, closeUpCaption } from '../../drawing/close-up.ts';
import { verdictWords } from '../answer/verdict-words.ts';
import { DrawingSvg } from '../shared/drawing-svg.tsx';
import type { Look } from '../shared/look.ts';
import { useView } from '../shared/services.tsx';
import { useWidth } from '../shared/use-width.ts';
import { homePose, usePose } from './use-pose.ts';

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
  const [frame, room] = useWidth<HTMLDivElement>();
  const live = usePose(look);
  const pose = isKeyHome ? homePose(look) : live;
  const { unit } = look.job.settings;
  const open = look.rows.rows.filter(({ chamber }) => look.chamberResults.has(chamber.id));
  const isEmpty = open.every(({ chamber }) => look.chamberResults.get(chamber.id)?.splits.length === 0);
  const count = Math.max(1, open.length);
  const fitting = Math.floor((room - (count - 1) * GAP) / count);
  const width = Math.min(MOST_WIDTH, Math.max(LEAST_WIDTH, fitting));
  const options = { unit, mode: 'stretched', stretch: STRETCH } as const;
  if (isEmpty)
    return (
      <p className="small quiet">
        Close-ups come with the first stack. What is not measured yet is drawn at its usual size.
      </p>
    );
  return (
    <div ref={frame} className="close-ups-frame">
      {room === 0 ? null : (
        <ol className="close-ups">
          {open.map(({ chamber, number }) => (
            <CloseUpButton key={chamber.id} look={look} chamber={chamber.id} number={number}>
              {(isPicked) => (
                <DrawingSvg
                  isDecoration
                  drawing={closeUp(look.assembly, pose, look.evaluation, {
                    ...options,
                    chamber: chamber.id,
                    width,
                    windowHeight: WINDOW_HEIGHT,
                    isPicked,
                    badge: 'short',
                  })}
                />
              )}
            </CloseUpButton>
          ))}
        </ol>
      )}
      <p className="small quiet">
        {isKeyHome ? 'Key fully in. ' : ''}
        {closeUpCaption(look.assembly, pose, look.evaluation, options)}
      </p>
    </div>
  );
}

function CloseUpButton({
  look,
  chamber,
  number,
  children,
}: {
  readonly look: Look;
  readonly chamber: string;
  readonly number: number;
  readonly children: (isPicked: boolean) => React.ReactNode;
}) {
  const isPicked = useView((view) => view.pickedChamber === chamber);
  const pick = useView((view) => view.pickChamber);
  const result = look.chamberResults.get(chamber);
  const words = result === undefined ? null : verdictWords(result, look.job.settings.unit);
  return (
    <li>
      <button
        type="button"
        className="close-up"
        aria-pressed={isPicked}
        aria-label={`Chamber ${number}: ${words === null ? 'closed' : `${words.offset}, ${words.verdict}`}`}
        onClick={() => pick(isPicked ? null : chamber)}
      >
        {children(isPicked)}
      </button>
    </li>
  );
}
