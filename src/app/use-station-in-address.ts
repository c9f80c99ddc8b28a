import { useEffect } from 'react';
import type { ViewStore } from '../state/view-store.ts';
import { STATIONS } from './stations.tsx';

/** The station is in the page's address, so that back and forward, and a bookmark, work. */
export function useStationInAddress(view: ViewStore): void {
  useEffect(() => {
    const follow = () => {
      const found = STATIONS.find(({ id }) => isUnder(id));
      if (found !== undefined) view.getState().goTo(found.id);
    };
    follow();
    window.addEventListener('hashchange', follow);
    // Gone to by a button: else the link of the station before would be the address already, and do nothing.
    const stop = view.subscribe(({ station }, before) => {
      if (station !== before.station && !isUnder(station))
        window.history.replaceState(null, '', `#${station}`);
    });
    return () => {
      window.removeEventListener('hashchange', follow);
      stop();
    };
  }, [view]);
}

/** A station may say more of itself behind a stroke. */
function isUnder(station: string): boolean {
  return window.location.hash.split('/', 1)[0] === `#${station}`;
}
