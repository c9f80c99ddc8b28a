/** The pictures of the key going in: one after the other for a clip, six on a strip. Of the true cuts only. */
import { insertionFrame, travelAtShare } from '../../drawing/insertion-frame.ts';
import { type PictureSheet, pictureSheet } from '../../drawing/picture-sheet.ts';
import type { Look } from '../shared/look.ts';
import { nameOnFile } from './note-pictures.ts';
import { STATE_NAMES } from './note-states.ts';

const CLIP_PX = 720;
const STRIP_PX = 400;
const STRIP_FRAMES = 6;
const STRIP_COLUMNS = 3;
const GAP_PX = 16;
const TITLE = 'The key going in';

/** One picture after a share of the way, 0 to 1. */
export function clipFrame(look: Look, share: number): PictureSheet {
  const { assembly, job } = look;
  const { unit } = job.settings;
  const drawing = insertionFrame(assembly, travelAtShare(assembly, share), { unit, width: CLIP_PX });
  return pictureSheet([drawing], { title: TITLE, lines: linesOf(look) });
}

/** Key out to key home in equal steps, each picture with how far out the key is. */
export function insertionStrip(look: Look): PictureSheet {
  const { assembly, job } = look;
  const { unit } = job.settings;
  const drawings = Array.from({ length: STRIP_FRAMES }, (_, i) =>
    insertionFrame(assembly, travelAtShare(assembly, i / (STRIP_FRAMES - 1)), { unit, width: STRIP_PX }),
  );
  const width = STRIP_COLUMNS * STRIP_PX + (STRIP_COLUMNS - 1) * GAP_PX;
  return pictureSheet(drawings, { title: TITLE, lines: linesOf(look) }, width);
}

function linesOf({ job, bench }: Look): string[] {
  const units = job.settings.unit === 'in' ? 'inches' : 'millimetres';
  return [nameOnFile(job), STATE_NAMES[bench.plan.kind].toLowerCase(), `numbers in ${units}`];
}
