/** The long section of what is looked at, drawn for the room it has on the page. */
import { longSection } from '../../drawing/long-section.ts';
import { longSectionFrame } from '../../drawing/long-section-frame.ts';
import { longSectionMetal } from '../../drawing/long-section-metal.ts';
import type { LongSectionOptions } from '../../drawing/long-section-options.ts';
import type { DrawingNode } from '../../drawing/node.ts';
import type { Pose } from '../../model/assembly/pose.ts';
import type { Id } from '../../model/schema/leaf.ts';
import type { Look } from '../shared/look.ts';

/** px. Narrower than this the drawing does not get; wider it gains nothing. */
const LEAST_WIDTH = 280;
const MOST_WIDTH = 1400;

export type SectionRoom = {
  /** CSS px. */
  readonly width: number;
  readonly maxHeight: number;
  readonly pickedChamber: Id | null;
  readonly flaggedLine: Id | null;
};

/** Draws it. */
export function drawnSection(look: Look, pose: Pose, room: SectionRoom): DrawingNode {
  return longSection(look.assembly, pose, look.evaluation, optionsFor(look, room));
}

/** Draws only its metal, most of the work, as it stands without flags; the whole drawing finds it done. */
export function drawMetal(look: Look, pose: Pose, room: SectionRoom): void {
  const frame = longSectionFrame(look.assembly, optionsFor(look, room), 1);
  longSectionMetal(look.assembly, pose, frame, 0, 'bodies');
}

function optionsFor({ job }: Look, room: SectionRoom): LongSectionOptions {
  const width = Math.min(MOST_WIDTH, Math.max(LEAST_WIDTH, room.width));
  return { ...room, width, unit: job.settings.unit };
}
