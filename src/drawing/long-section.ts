/**
 * The long section: the cylinder cut open along the plug, as an engineering drawing shows it. True proportions, one
 * scale, never a gap that is not there. Bodies hatched, pins and key plain, springs by convention. CSS pixels.
 */
import type { Assembly } from '../model/assembly/assembly.ts';
import type { Pose } from '../model/assembly/pose.ts';
import type { Evaluation } from '../model/evaluate/evaluation.ts';
import { type FlagLayout, layOutFlags } from './flags.ts';
import { type LongSectionFrame, longSectionFrame } from './long-section-frame.ts';
import {
  captionRow,
  chamberLabels,
  commonErrorLabel,
  commonErrorWords,
  flagWishes,
  hiddenCountWidth,
  shearLines,
} from './long-section-labels.ts';
import { flatMetal, longSectionMetal } from './long-section-metal.ts';
import type { LongSectionOptions } from './long-section-options.ts';
import { type DrawingNode, drawingRoot, group } from './node.ts';
import { unitWords } from './split-words.ts';

/** Draws the long section. Without an evaluation there are no flags. */
export function longSection(
  assembly: Assembly,
  pose: Pose,
  evaluation: Evaluation | null,
  options: LongSectionOptions,
): DrawingNode {
  const planeOffset = options.planeOffset ?? 0;
  const name = `Long section of ${assembly.label}`;
  if (options.flatColours !== undefined) {
    const frame = longSectionFrame(assembly, options, 0);
    return drawingRoot(
      frame,
      name,
      flatMetal(assembly, pose, frame.view, planeOffset, options.flatColours),
      'is-flat',
    );
  }
  const first = longSectionFrame(assembly, options, 1);
  const layout = layOut(assembly, pose, evaluation, options, first);
  const frame = layout.rows > 1 ? longSectionFrame(assembly, options, layout.rows) : first;
  const settled = frame === first ? layout : layOut(assembly, pose, evaluation, options, frame);
  const picked = options.pickedChamber ?? null;
  const said = flagsInWords(assembly, pose, evaluation, options, frame);
  return drawingRoot(frame, said === '' ? name : `${name}, in ${unitWords(options.unit)}: ${said}`, [
    group('metal', longSectionMetal(assembly, pose, frame, planeOffset, options.hatch ?? 'bodies')),
    group('lines', shearLines(assembly, frame, planeOffset)),
    group('labels', [
      ...chamberLabels(assembly, frame, settled, picked),
      ...commonErrorLabel(frame, evaluation, options),
      ...captionRow(assembly, pose, frame, options),
    ]),
  ]);
}

/** What the flags say, those that find no room as well: a picture's own text is not read out. */
function flagsInWords(
  assembly: Assembly,
  pose: Pose,
  evaluation: Evaluation | null,
  options: LongSectionOptions,
  { view }: LongSectionFrame,
): string {
  const common = evaluation && commonErrorWords(evaluation, options.unit);
  return (
    common ??
    flagWishes(assembly, pose, evaluation, options, view)
      .map(({ number, text }) => `chamber ${number} ${text}`)
      .join('; ')
  );
}

/** Lays out flags; when some do not fit, room for their count is kept free beside the others. */
function layOut(
  assembly: Assembly,
  pose: Pose,
  evaluation: Evaluation | null,
  options: LongSectionOptions,
  frame: LongSectionFrame,
): FlagLayout {
  const wishes = flagWishes(assembly, pose, evaluation, options, frame.view);
  const [left, right] = [4, frame.width - 4];
  const all = layOutFlags(wishes, frame.textSize, left, right);
  return all.hidden === 0
    ? all
    : layOutFlags(wishes, frame.textSize, left, right - hiddenCountWidth(wishes.length, frame.textSize));
}
