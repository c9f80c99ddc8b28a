/**
 * Gaps between a split and its line, measured in the close-ups of a job: small and stretched as in the row, and large in true
 * proportions. Everything is taken from the SVG text; from the job only what the picture is about. px; mm.
 */
import { closeUp } from '../../src/drawing/close-up.ts';
import { closeUpLarge } from '../../src/drawing/close-up-large.ts';
import { toSvgText } from '../../src/drawing/node.ts';
import { poseAt } from '../../src/model/assembly/pose-at.ts';
import { allElements, hasClass, type MarkupElement, parseMarkup } from './markup.ts';
import type { NearLineJob } from './near-line-jobs.ts';
import { pathExtent } from './path-extent.ts';

export type MeasuredGap = {
  readonly where: string;
  /** What is drawn against what was reckoned, by the stated factor. 0 where the split lies outside the window. */
  readonly errorPx: number;
  readonly isOutside: boolean;
  /** What else is wrong with it. */
  readonly fault: string | null;
};

const PX_PER_INCH = 96;
const MM_PER_INCH = 25.4;
const STRETCH = 10;
/** px and px per px: how well a ladder and a width can be read from four decimals. */
const READ_OFF = 0.002;

/** Measures every split that a job's close-ups show. */
export function measuredGaps({ job, assembly, evaluation }: NearLineJob): MeasuredGap[] {
  const pose = poseAt(assembly, { travel: assembly.key?.seatedTravel ?? 0 });
  const { unit } = job.settings;
  return evaluation.chambers.flatMap(({ chamber, number, verdicts, splits }) =>
    verdicts.flatMap(({ line, split: at }) => {
      const split = at === null ? undefined : splits[at];
      if (split === undefined) return [];
      const stack = assembly.stacks.find((each) => each.chamber === chamber)!;
      const place = stack.parts.findIndex(({ part }) => part === split.below);
      const part = `part ${chamber} ${place}`;
      const diameter = 2 * stack.parts[place]!.radius;
      const base = { chamber, line, unit };
      const small = closeUp(assembly, pose, evaluation, {
        ...base,
        width: 168,
        windowHeight: 128,
        mode: 'stretched',
        stretch: STRETCH,
        badge: 'short',
      });
      const large = closeUpLarge(assembly, pose, evaluation, { ...base, width: 640, maxHeight: 460 });
      const where = `chamber ${number}, ${line}`;
      const seen = { part, diameter, offset: split.offset, unit } as const;
      return [
        measured(parseMarkup(toSvgText(small)), {
          ...seen,
          where: `${where}, stretched`,
          readScale: ladderScale,
        }),
        measured(parseMarkup(toSvgText(large)), {
          ...seen,
          where: `${where}, large`,
          readScale: writtenScale,
        }),
      ];
    }),
  );
}

type Seen = {
  readonly where: string;
  readonly part: string;
  readonly diameter: number;
  readonly offset: number;
  readonly unit: 'in' | 'mm';
  readonly readScale: (svg: MarkupElement, seen: Seen) => number;
};

function measured(svg: MarkupElement, seen: Seen): MeasuredGap {
  const { where, offset } = seen;
  const elements = allElements(svg);
  const pxPerMm = seen.readScale(svg, seen);
  const isOutside = elements.some((each) => hasClass(each, 'outside'));
  if (isOutside) return { where, errorPx: 0, isOutside, fault: outsideFault(svg, seen, pxPerMm) };
  const part = elements.find(({ attributes }) => attributes['data-part'] === seen.part);
  const face = part?.children.find((each) => (each.attributes['class'] ?? '').startsWith('fill'));
  const line = elements.find((each) => hasClass(each, 'shear-line') && !hasClass(each, 'is-other'));
  if (face === undefined || line === undefined)
    return { where, errorPx: Infinity, isOutside, fault: 'part or line is not drawn' };
  const top = pathExtent(face.attributes['d'] ?? '');
  const drawnPx = pathExtent(line.attributes['d'] ?? '').top - top.top;
  const acrossPx = (top.right - top.left) / seen.diameter;
  const factor = statedStretch(elements);
  const isAsStated = Math.abs(pxPerMm / acrossPx / factor - 1) < READ_OFF;
  return {
    where,
    errorPx: Math.abs(drawnPx - offset * pxPerMm),
    isOutside,
    fault: isAsStated ? null : `states ×${factor} but is drawn ×${pxPerMm / acrossPx}`,
  };
}

/** Height against width as the picture says it: "height ×10", "×10 high"; true where nothing is said. */
function statedStretch(elements: readonly MarkupElement[]): number {
  const said = elements.map(({ tag, text }) => (tag === 'text' ? /×(\d+)/.exec(text) : null));
  return Number(said.find((each) => each !== null)?.[1] ?? 1);
}

/** px per mm of height, from the ladder: its bar and the number at the bar's end. */
function ladderScale(svg: MarkupElement, { unit }: Seen): number {
  const ladder = allElements(svg).find((each) => hasClass(each, 'ladder'));
  const bar = ladder?.children.find((each) => hasClass(each, 'bar-full'));
  const number = ladder?.children.find((each) => each.tag === 'text' && each.text !== '0');
  const mm = Number(number?.text) * (unit === 'in' ? MM_PER_INCH : 1);
  return Number(bar?.attributes['height']) / mm;
}

/** px per mm from the written scale, "20:1": 96 px to an inch of paper. */
function writtenScale(svg: MarkupElement): number {
  const texts = allElements(svg).filter(({ tag }) => tag === 'text');
  const written = texts.map(({ text }) => /^([\d.]+):1$/.exec(text)).find((each) => each !== null);
  return (Number(written?.[1]) * PX_PER_INCH) / MM_PER_INCH;
}

/** Beyond the window: an arrow on the right side, with the amount to the half thousandth or 0.01 mm. */
function outsideFault(svg: MarkupElement, { offset, unit }: Seen, pxPerMm: number): string | null {
  const elements = allElements(svg);
  const window = elements.find((each) => hasClass(each, 'window'))!;
  const line = elements.find((each) => hasClass(each, 'shear-line') && !hasClass(each, 'is-other'))!;
  const top = Number(window.attributes['y']);
  const bottom = top + Number(window.attributes['height']);
  const y = pathExtent(line.attributes['d'] ?? '').top - offset * pxPerMm;
  if (y > top + 1 + READ_OFF && y < bottom - 1 - READ_OFF)
    return `lies at ${y} inside ${top} to ${bottom}, but is said to lie outside`;
  const mark = elements.find((each) => hasClass(each, 'outside'))!;
  const said = Number(allElements(mark).find(({ tag }) => tag === 'text')?.text);
  const step = unit === 'in' ? 0.0005 : 0.01;
  const meant = Math.abs(offset) / (unit === 'in' ? MM_PER_INCH : 1);
  return Math.abs(said - meant) <= step / 2 + 1e-9 ? null : `says ${said} for ${meant}`;
}
