/** "Show me": moves the key to where it is so, picks the chamber, and goes to the picture that shows it. */
import type { Show } from '../../model/evaluate/evaluation.ts';
import { useView } from '../shared/services.tsx';

type ShowMeProps = {
  readonly show: Show;
  /** What is shown, for those who hear the button without what stands beside it. */
  readonly about: string;
};

const PLACES: Readonly<Record<Exclude<Show['view'], 'readings'>, string>> = {
  section: 'section',
  'close-up': 'picked-chamber',
};

export function ShowMe({ show, about }: ShowMeProps) {
  const moveKey = useView((view) => view.moveKey);
  const pick = useView((view) => view.pickChamber);
  const goTo = useView((view) => view.goTo);
  const words = show.view === 'readings' ? 'To the readings' : 'Show me';
  return (
    <button
      type="button"
      className="link-button"
      aria-label={`${words}: ${about}`}
      onClick={() => {
        if (show.chamber !== null) pick(show.chamber);
        if (show.view === 'readings') {
          goTo('measure');
          return;
        }
        moveKey(show.travel);
        const place = document.getElementById(PLACES[show.view]);
        place?.focus({ preventScroll: true });
        place?.scrollIntoView({ block: 'nearest' });
      }}
    >
      {words}
    </button>
  );
}
