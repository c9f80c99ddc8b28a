/** The key going in, as something that moves. It shows how far each cut lifts its stack: not while the bitting is hidden. */
import type { Look } from '../shared/look.ts';
import { useServices } from '../shared/services.tsx';
import { nameOnFile } from './note-pictures.ts';
import type { RunAction } from './run-action.ts';
import { ToolFold } from './tool-fold.tsx';

type InsertionBlockProps = { readonly look: Look; readonly isHidden: boolean; readonly run: RunAction };

export function InsertionBlock({ look, isHidden, run }: InsertionBlockProps) {
  const { noteFiles } = useServices();
  const { assembly, job } = look;
  const hasKey = assembly.key !== null;
  const ask = { assembly, jobTitle: nameOnFile(job) };
  return (
    <ToolFold title="The key going in">
      <p className="small quiet">{wordsFor(isHidden, hasKey)}</p>
      <div className="tool-row">
        <button
          type="button"
          className="button"
          disabled={isHidden || !hasKey}
          onClick={() => run(async () => (await noteFiles()).saveScene(ask), 'Making the solids…')}
        >
          Save scene (GLB)…
        </button>
      </div>
    </ToolFold>
  );
}

function wordsFor(isHidden: boolean, hasKey: boolean): string {
  if (isHidden) return 'Not while the bitting is hidden: how a key lifts the pins is its cuts.';
  if (!hasKey) return 'There is no key in this job to slide in.';
  return 'As a scene in three dimensions that moves, cut open.';
}
