/** Beside the sheet: whether the bitting is hidden, and what can be handed out. */
import { useId, useState } from 'react';
import { setHidesBitting } from '../../model/edit/edit-note.ts';
import { pinningTable, shareableTable } from '../../model/note/note-table.ts';
import { Choice } from '../shared/choice.tsx';
import type { Look } from '../shared/look.ts';
import { useEdit, useServices, useView } from '../shared/services.tsx';
import { InsertionBlock } from './insertion-block.tsx';
import type { PictureAsk } from './note-files.ts';
import { nameOnFile, type PictureKind, pictureOf, pictureSource } from './note-pictures.ts';
import { latestState, sharedOf } from './note-states.ts';
import type { RunAction } from './run-action.ts';
import { SolidsBlock } from './solids-block.tsx';

type ToolsProps = { readonly look: Look; readonly states: readonly Look[] };

export function NoteTools({ look, states }: ToolsProps) {
  const { noteFiles } = useServices();
  const [said, say] = useState('');
  const { job } = look;
  const isHidden = job.note.hidesBitting === true;
  const run: RunAction = (action, meanwhile = '') => {
    say(meanwhile);
    action().then(
      (words) => say(words ?? ''),
      () => say('That did not work. The job is unchanged; try again.'),
    );
  };
  const saveTable = async () => {
    const csv = isHidden
      ? shareableTable(sharedOf(look, states))
      : pinningTable(states, nameOnFile(job), job.settings.unit);
    return (await noteFiles()).saveTable(csv, nameOnFile(job));
  };
  return (
    <aside className="note-tools no-print" aria-label="Hand out">
      <HideSwitch isHidden={isHidden} />
      <div className="tool-block">
        <h2>On paper</h2>
        <button type="button" className="button" data-kind="main" onClick={() => window.print()}>
          Print{isHidden ? ' the sheet to share' : ' both sheets'}…
        </button>
        <p className="small quiet">
          A4 or Letter, at 100 %, nothing fitted to the page: then the ruler measures 50 mm and the scale
          holds.
        </p>
      </div>
      <PictureBlock look={latestState(states, look)} isHidden={isHidden} run={run} />
      <div className="tool-block">
        <h2>Table</h2>
        <button type="button" className="button" onClick={() => run(saveTable)}>
          Save the pinning as CSV…
        </button>
      </div>
      <InsertionBlock look={latestState(states, look)} isHidden={isHidden} run={run} />
      <SolidsBlock look={latestState(states, look)} isHidden={isHidden} run={run} />
      <p className="tool-said" role="status">
        {said}
      </p>
    </aside>
  );
}

function HideSwitch({ isHidden }: { readonly isHidden: boolean }) {
  const edit = useEdit();
  const id = useId();
  return (
    <div className="tool-block" data-hidden={isHidden}>
      <label className="tool-switch">
        <input
          type="checkbox"
          role="switch"
          checked={isHidden}
          aria-describedby={id}
          onChange={({ target }) =>
            edit(target.checked ? 'Bitting hidden' : 'Bitting shown', (job) =>
              setHidesBitting(job, target.checked),
            )
          }
        />
        Hide bitting
      </label>
      <p className="small quiet" id={id}>
        {isHidden
          ? 'Sheet, pictures and table hold offsets, windows and verdicts only. Drawings show cuts that are all alike.'
          : 'Root depths and lengths are on the restricted sheet, in pictures and in the table: a key can be cut from them.'}
      </p>
    </div>
  );
}

type PictureBlockProps = {
  readonly look: Look;
  readonly isHidden: boolean;
  readonly run: RunAction;
};

function PictureBlock({ look, isHidden, run }: PictureBlockProps) {
  const { noteFiles } = useServices();
  const picked = useView((view) => view.pickedChamber);
  const id = useId();
  const [kind, setKind] = useState<PictureKind>('section');
  const [isInside, setInside] = useState(false);
  const { job, assembly } = look;
  const chamber = assembly.chambers.find((each) => each.id === picked) ?? assembly.chambers[0];
  if (chamber === undefined) return null;
  const ask = (): PictureAsk => {
    const source = pictureSource(look, isHidden);
    const sheet = pictureOf(kind, chamber.id, source);
    const title = String(sheet.drawing.attributes['aria-label'] ?? '');
    const description = source.captions.join('. ');
    return {
      sheet,
      words: { title, description },
      jobTitle: nameOnFile(job),
      inside: isInside && !isHidden ? job : null,
    };
  };
  return (
    <div className="tool-block">
      <h2>Picture</h2>
      <Choice
        question="What it shows"
        isQuestionHidden
        options={[
          { value: 'section', label: 'Long section' },
          { value: 'dimensions', label: 'With dimensions' },
          { value: 'close-ups', label: 'Every close-up' },
          { value: 'chamber', label: `Chamber ${chamber.number} at the line` },
          { value: 'across', label: `Chamber ${chamber.number} across` },
        ]}
        value={kind}
        onChoose={setKind}
      />
      <label className="tool-tick">
        <input
          type="checkbox"
          checked={isInside && !isHidden}
          disabled={isHidden}
          aria-describedby={id}
          onChange={({ target }) => setInside(target.checked)}
        />
        Put the job inside this picture (anyone who gets it can cut the key)
      </label>
      <p className="small quiet" id={id}>
        {isHidden
          ? 'Not while the bitting is hidden.'
          : 'Dropped on the page, a picture with the job inside opens it again.'}
      </p>
      <div className="tool-row">
        <button
          type="button"
          className="button"
          onClick={() => run(async () => (await noteFiles()).savePicture(ask(), 'png'))}
        >
          Save PNG…
        </button>
        <button
          type="button"
          className="button"
          onClick={() => run(async () => (await noteFiles()).savePicture(ask(), 'svg'))}
        >
          Save SVG…
        </button>
        <button
          type="button"
          className="button"
          onClick={() => run(async () => (await noteFiles()).copyPicture(ask()))}
        >
          Copy
        </button>
      </div>
    </div>
  );
}
