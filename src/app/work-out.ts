/**
 * What the panels will ask for when they come: look, pose, drawing. Worked out before, in pieces of work of their own, so that a
 * press gets in between; the panels find most of it done.
 */
import { focusOf, lookAt, selectionIn } from '../panels/shared/look.ts';
import { drawMetal, drawnSection } from '../panels/section/drawn-section.ts';
import { pictureHeight } from '../panels/section/picture-height.ts';
import { poseOf } from '../panels/section/use-pose.ts';
import { firstWidths } from '../panels/shared/first-widths.ts';
import { ONE_COLUMN, ONE_HAND } from '../panels/shared/use-media.ts';
import type { Workshop } from './create-workshop.ts';
import { breath } from './page-has-time.ts';

/** Works it out for what the page will open with. */
export async function workOut({ document, view }: Workshop): Promise<void> {
  const { job } = document.getState();
  const seen = view.getState();
  const selection = selectionIn(job, seen);
  if (selection === null) return;
  const look = lookAt(job, selection);
  const width = firstWidths().section;
  if (width === 0) return;
  await breath();
  const maxHeight = pictureHeight({
    windowHeight: window.innerHeight,
    isBeside: true,
    isOneColumn: matchMedia(ONE_COLUMN).matches,
    isOneHand: matchMedia(ONE_HAND).matches,
  });
  const { pickedChamber, travel, turn } = seen;
  const pose = poseOf(look, travel, turn, null);
  const room = { width, maxHeight, pickedChamber, flaggedLine: focusOf(look) };
  drawMetal(look, pose, room);
  await breath();
  drawnSection(look, pose, room);
}
