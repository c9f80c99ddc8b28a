/** Where is my work? In one line. */
import type { SaveState } from '../model/history/save-state.ts';

/** Says where the job is kept. */
export function savedWords(saved: SaveState): string {
  switch (saved.kind) {
    case 'not kept':
      return 'not changed yet';
    case 'saving':
      return 'saving…';
    case 'saved':
      return `saved ${timeOfDay(saved.at)} on this computer`;
    case 'conflict':
    case 'failed':
      return 'not saved';
  }
}

function timeOfDay(at: string): string {
  return new Date(at).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit', hour12: false });
}
