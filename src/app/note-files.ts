/** Pictures, tables and solids of the repair note, as files and on the clipboard. Loaded when the first one is asked for. */
import { fileStyle } from '../drawing/drawing-style.ts';
import { toSvgText, withStyle } from '../drawing/node.ts';
import type { NoteFiles, PictureAsk } from '../panels/note/note-files.ts';
import { saveOtherFile } from '../persist/job-file.ts';
import { finishPng, finishSvg } from '../persist/job-in-picture.ts';
import { pngOfSheet } from './picture-pixels.ts';
import { tellSaved } from './tell-saved.ts';

export const noteFiles: NoteFiles = {
  savePicture: async (ask, form) => {
    const bytes = form === 'png' ? await pngBytes(ask) : svgBytes(ask);
    if (typeof bytes === 'string') return bytes;
    const kind =
      form === 'png'
        ? { ending: '.png', mimeType: 'image/png' }
        : { ending: '.svg', mimeType: 'image/svg+xml' };
    const saved = await saveOtherFile({ bytes, ...kind, description: 'Picture' }, ask.jobTitle);
    return tellSaved(saved, ask.inside === null ? '' : ' The job is inside: who gets it can cut the key.');
  },
  copyPicture: async (ask) => {
    const bytes = await pngBytes({ ...ask, inside: null });
    if (typeof bytes === 'string') return bytes;
    try {
      const blob = new Blob([bytes], { type: 'image/png' });
      await navigator.clipboard.write([new ClipboardItem({ 'image/png': blob })]);
      return 'Picture copied, without the job.';
    } catch {
      return 'The browser did not let the picture onto the clipboard. Save it as a file instead.';
    }
  },
  savePrint: async (ask, form) => (await import('./note-solids.ts')).savePrint(ask, form),
  saveClip: async (ask) => {
    const clip = await (await import('./note-clip.ts')).clipOf(ask.frameAt);
    if (clip.type === 'success') {
      const kind = { ending: '.webm', mimeType: 'video/webm', description: 'Clip' };
      return tellSaved(await saveOtherFile({ bytes: clip.bytes, ...kind }, ask.jobTitle), '');
    }
    const words = await noteFiles.savePicture(ask.strip, 'png');
    return words === null ? null : `${clip.sentence} ${words}`;
  },
  saveScene: async (ask) => (await import('./note-solids.ts')).saveScene(ask),
  saveTable: async (csv, jobTitle) => {
    const bytes = new TextEncoder().encode(csv);
    const kind = { ending: '.csv', mimeType: 'text/csv', description: 'Table' };
    return tellSaved(await saveOtherFile({ bytes, ...kind }, jobTitle), '');
  },
};

async function pngBytes(ask: PictureAsk): Promise<Uint8Array<ArrayBuffer> | string> {
  const raw = await pngOfSheet(ask.sheet);
  if (typeof raw === 'string') return raw;
  return (
    finishPng(raw, ask.words, ask.inside) ?? 'The browser wrote no good picture. Save it as SVG instead.'
  );
}

function svgBytes({ sheet, inside }: PictureAsk): Uint8Array {
  const text = toSvgText(withStyle(sheet.drawing, fileStyle('print')));
  return new TextEncoder().encode(finishSvg(text, inside));
}
