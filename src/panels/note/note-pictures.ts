/** The pictures a note hands out: which there are, and each made ready with its caption. Where the bitting is hidden, of stand-ins. */
import { closeUp, closeUpCaption } from '../../drawing/close-up.ts';
import { closeUpLarge } from '../../drawing/close-up-large.ts';
import { dimensionedSection } from '../../drawing/dimensioned-section.ts';
import { endView } from '../../drawing/end-view.ts';
import type { DrawingNode } from '../../drawing/node.ts';
import { type PictureSheet, pictureSheet } from '../../drawing/picture-sheet.ts';
import { longSectionAtScale } from '../../drawing/true-scale.ts';
import type { Assembly } from '../../model/assembly/assembly.ts';
import { poseAt } from '../../model/assembly/pose-at.ts';
import type { Pose } from '../../model/assembly/pose.ts';
import type { Evaluation } from '../../model/evaluate/evaluation.ts';
import type { Job } from '../../model/schema/job-schema.ts';
import type { Id } from '../../model/schema/leaf.ts';
import { standInBench } from '../../model/sharing/stand-in-bench.ts';
import { formatLength } from '../../model/units/format-length.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';
import { known } from '../../model/assert.ts';
import type { Look } from '../shared/look.ts';
import { sharedOf, STATE_NAMES } from './note-states.ts';

export type PictureKind = 'section' | 'dimensions' | 'chamber' | 'across' | 'close-ups';

/** What a picture is drawn from: the bench itself, or stand-ins. */
export type PictureSource = {
  readonly assembly: Assembly;
  readonly evaluation: Evaluation;
  readonly pose: Pose;
  readonly unit: JobUnit;
  readonly captions: readonly string[];
  readonly isHidden: boolean;
};

export const STAND_INS =
  'Bitting hidden: cuts and pins are stand-ins, all alike; only offsets and windows are real';

/** Millimetres of paper that a drawing may be wide, on A4 and on Letter. */
export const PAPER_WIDTH_MM = 176;
/** The plug's diameter stands where the section by itself names its shear line, and takes less room. */
const DIMENSION_SPARE_MM = 6;
const CHAIN_WORDS = 'on each axis root depth, then lower stack; in brackets what the key calls for';
const LARGE_PX = 620;
const CLOSE_UP_PX = 150;
const CLOSE_UP_HEIGHT_PX = 128;
const STRETCH = 10;

/**
 * What pictures and tables call the job: its number where it has one, so that the measurements of a key and the place of its
 * lock do not stand on one sheet; else its title.
 */
export function nameOnFile(job: Job): string {
  const number = job.note.shared['jobNumber'] ?? '';
  return number === '' ? job.title : `Job ${number}`;
}

/** Says what pictures are drawn from. */
export function pictureSource(look: Look, isHidden: boolean): PictureSource {
  const { job, bench } = look;
  const { unit } = job.settings;
  const units = unit === 'in' ? 'inches' : 'millimetres';
  const state = STATE_NAMES[bench.plan.kind].toLowerCase();
  const common = [nameOnFile(job), `${state}, key fully in`, `numbers in ${units}`];
  if (!isHidden) {
    const { assembly, evaluation } = look;
    return {
      assembly,
      evaluation,
      pose: homeOf(assembly),
      unit,
      captions: [...common, ...plusMinus(look)],
      isHidden,
    };
  }
  const shared = known(sharedOf(look, [look]).states[0], 'state on screen');
  const standIn = standInBench(job, bench.cylinder, shared, bench.key !== null);
  return { ...standIn, pose: homeOf(standIn.assembly), unit, captions: [...common, STAND_INS], isHidden };
}

function homeOf(assembly: Assembly): Pose {
  return poseAt(assembly, { travel: assembly.key?.seatedTravel ?? null });
}

function plusMinus({ evaluation, job }: Look): string[] {
  const { unit } = job.settings;
  const all = evaluation.chambers.flatMap(({ splits }) => splits.map((each) => each.expandedUncertainty));
  if (all.length === 0) return [];
  const most = formatLength(Math.max(...all), { unit, form: 'bench', hasUnit: true });
  return [`offsets good to about ±${most}, nineteen times in twenty`];
}

/** Makes one picture ready to be handed out. */
export function pictureOf(kind: PictureKind, chamber: Id, source: PictureSource): PictureSheet {
  const { assembly, evaluation, pose, unit, captions } = source;
  const number = assembly.chambers.find(({ id }) => id === chamber)?.number ?? 0;
  switch (kind) {
    case 'section': {
      const { drawing, scale } = longSectionAtScale(assembly, pose, evaluation, {
        mostMm: PAPER_WIDTH_MM,
        unit,
      });
      return pictureSheet([drawing], {
        title: `Long section, ${scale}`,
        lines: captions,
      });
    }
    case 'dimensions': {
      const { drawing, scale } = dimensionedSection(assembly, pose, evaluation, {
        mostMm: PAPER_WIDTH_MM + DIMENSION_SPARE_MM,
        unit,
        hasBitting: !source.isHidden,
      });
      const told = source.isHidden ? [] : [CHAIN_WORDS];
      return pictureSheet([drawing], {
        title: `Long section with dimensions, ${scale}`,
        lines: [...told, ...captions],
      });
    }
    case 'chamber': {
      const drawings = assembly.lines.map(({ id }) =>
        closeUpLarge(assembly, pose, evaluation, { chamber, line: id, width: LARGE_PX, unit }),
      );
      return pictureSheet(drawings, {
        title: `Chamber ${number} at the line`,
        lines: captions,
      });
    }
    case 'across': {
      const hasDimensions = !source.isHidden;
      const drawing = endView(assembly, pose, evaluation, { chamber, width: LARGE_PX, unit, hasDimensions });
      return pictureSheet([drawing], {
        title: `Chamber ${number} across`,
        lines: captions,
      });
    }
    case 'close-ups': {
      const options = { unit, mode: 'stretched', stretch: STRETCH } as const;
      const drawings = assembly.chambers.flatMap((each): DrawingNode[] =>
        assembly.lines.map(({ id }) =>
          closeUp(assembly, pose, evaluation, {
            ...options,
            chamber: each.id,
            line: id,
            width: CLOSE_UP_PX,
            windowHeight: CLOSE_UP_HEIGHT_PX,
            badge: 'short',
          }),
        ),
      );
      const said = closeUpCaption(assembly, pose, source.isHidden ? null : evaluation, options);
      return pictureSheet(
        drawings,
        { title: 'Every chamber at the line', lines: [said, ...captions] },
        4 * (CLOSE_UP_PX + 16),
      );
    }
  }
}
