/** The station of the repair note: the sheets as a shop files them, and beside them what can be handed out. */
import type { Look } from '../shared/look.ts';
import { noteStates } from './note-states.ts';
import { NoteTools } from './note-tools.tsx';
import { RestrictedSheet } from './restricted-sheet.tsx';
import { ShareableSheet } from './shareable-sheet.tsx';
import './note-station.css';
import './note-sheet.css';
import './note-print.css';

export function NoteStation({ look }: { readonly look: Look }) {
  const states = noteStates(look);
  const isHidden = look.job.note.hidesBitting === true;
  return (
    <div className="station note" key={look.job.id}>
      <div className="note-sheets">
        <ShareableSheet look={look} states={states} />
        {isHidden ? (
          <p className="note-hidden">
            Bitting hidden: root depths, lengths of pins and whatever else a key could be cut from are left
            out of this page, its print, its pictures and its table.
          </p>
        ) : (
          <RestrictedSheet look={look} states={states} />
        )}
      </div>
      <NoteTools look={look} states={states} />
    </div>
  );
}
