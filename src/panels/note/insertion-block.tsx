/** The key going in: as a clip, as pictures side by side, as a scene. It shows how far each cut lifts its stack: not while the bitting is hidden. */
import type { Look } from '../shared/look.ts';
import { useServices } from '../shared/services.tsx';
import { clipFrame, insertionStrip } from './insertion-pictures.ts';
import type { PictureAsk } from './note-files.ts';
import { nameOnFile } from './note-pictures.ts';
import type { RunAction } from './run-action.ts';
import { ToolFold } from './tool-fold.tsx';

type InsertionBlockProps = { readonly look: Look; readonly isHidden: boolean; readonly run: RunAction };

export function InsertionBlock({ look, isHidden, run }: InsertionBlockProps) {
  const { noteFiles } = useServices();
  const { assembly, job } = look;
  const isOff = isHidden || assembly.key === null;
  const jobTitle = `${nameOnFile(job)} insertion`;
  const strip = (): PictureAsk => ({
    sheet: insertionStrip(look),
    words: { title: 'The key going in', description: nameOnFile(job) },
    jobTitle,
    inside: null,
  });
  const saveClip = async () =>
    (await noteFiles()).saveClip({
      frameAt: (share) => clipFrame(look, share),
      jobTitle,
      strip: strip(),
    });
  const saveStrip = async () => (await noteFiles()).savePicture(strip(), 'png');
  const saveScene = async () => (await noteFiles()).saveScene({ assembly, jobTitle: nameOnFile(job) });
  return (
    <ToolFold title="The key going in">
      <p className="small quiet">{wordsFor(isHidden, assembly.key !== null)}</p>
      <div className="tool-row">
        <button
          type="button"
          className="button"
          disabled={isOff}
          onClick={() => run(saveClip, 'Drawing the clip…')}
        >
          Save clip (WebM)…
        </button>
        <button type="button" className="button" disabled={isOff} onClick={() => run(saveStrip)}>
          Save strip (PNG)…
        </button>
        <button
          type="button"
          className="button"
          disabled={isOff}
          onClick={() => run(saveScene, 'Making the solids…')}
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
  return 'The long section as a clip of five seconds or as six pictures side by side; or solids cut open, as a scene that moves.';
}
