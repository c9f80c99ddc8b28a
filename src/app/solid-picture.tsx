/** The solid view as it is framed, saved as a picture with its caption. It shows the cuts: not while the bitting is hidden. */
import { useRef, useState } from 'react';
import { drawingRoot, node } from '../drawing/node.ts';
import { pictureSheet } from '../drawing/picture-sheet.ts';
import { PX_PER_MM } from '../drawing/view.ts';
import { nameOnFile } from '../panels/note/note-pictures.ts';
import type { Look } from '../panels/shared/look.ts';
import { useServices } from '../panels/shared/services.tsx';
import type { SceneHandle } from '../scene/scene-types.ts';

/** Millimetres of paper, and dots on each. */
const WIDTH_MM = 160;
const DOTS_PER_MM = 300 / 25.4;

export function SolidPicture({ handle, look }: { readonly handle: SceneHandle | null; readonly look: Look }) {
  const { noteFiles } = useServices();
  const place = useRef<HTMLDivElement>(null);
  const [said, say] = useState('');
  const { job } = look;
  const isHidden = job.note.hidesBitting === true;
  const save = async (): Promise<string | null> => {
    const canvas = place.current?.parentElement?.querySelector('canvas');
    if (handle === null || canvas == null || canvas.clientWidth === 0) return null;
    const shape = canvas.clientHeight / canvas.clientWidth;
    const width = Math.round(WIDTH_MM * DOTS_PER_MM);
    const pixels = await handle.capture({ width, height: Math.round(width * shape) });
    const title = 'Solid view, as framed on screen, not to scale';
    const lines = [nameOnFile(job)];
    const picture = picturedAs(title, await addressOf(pixels), shape);
    const sheet = pictureSheet([picture], { title, lines });
    const words = { title, description: lines.join('. ') };
    return (await noteFiles()).savePicture({ sheet, words, jobTitle: nameOnFile(job), inside: null }, 'png');
  };
  return (
    <div className="solid-row solid-picture" ref={place}>
      <button
        type="button"
        className="button"
        disabled={handle === null || isHidden}
        onClick={() => {
          say('');
          save().then(
            (words) => say(words ?? ''),
            () => say('The picture came out blank, so it was not saved. Look at the view and try again.'),
          );
        }}
      >
        Save this picture…
      </button>
      <span className="small quiet" role="status">
        {isHidden ? 'Not while the bitting is hidden: it shows the cuts.' : said}
      </span>
    </div>
  );
}

/** A drawing that is one picture of pixels. */
function picturedAs(title: string, href: string, shape: number) {
  const width = WIDTH_MM * PX_PER_MM;
  const size = { width, height: width * shape };
  return drawingRoot(size, title, [node('image', { href, x: 0, y: 0, ...size })]);
}

function addressOf(blob: Blob): Promise<string> {
  return new Promise((done, fail) => {
    const reader = new FileReader();
    reader.onload = () => done(typeof reader.result === 'string' ? reader.result : '');
    reader.onerror = () => fail(new Error('The picture could not be read.'));
    reader.readAsDataURL(blob);
  });
}
