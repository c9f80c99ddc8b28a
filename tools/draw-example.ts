/**
 * Draws what the page shows before the app is there: the example's answer in words and its long section, key half way in, as
 * both stand when the page opens. Only the build uses it, through static-section.ts.
 */
import { longSection } from '../src/drawing/long-section.ts';
import { toSvgText } from '../src/drawing/node.ts';
import { poseAt } from '../src/model/assembly/pose-at.ts';
import { known } from '../src/model/assert.ts';
import { firstSelection } from '../src/model/measured/selection.ts';
import { parseJob } from '../src/model/schema/parse-job.ts';
import { answerOf } from '../src/panels/answer/answer-of.ts';
import { ANSWER_SYMBOLS, type VerdictSymbol } from '../src/panels/answer/verdict-words.ts';
import { type Look, lookAt } from '../src/panels/shared/look.ts';
import { VERDICT_PATHS } from '../src/panels/shared/verdict-paths.ts';
import { withShorterPaths } from './shorter-paths.ts';

/** CSS px that it is laid out for; the page scales it to the width there is. */
const width = 1100;

export type FirstPicture = {
  /** The long section, one svg element. */
  readonly section: string;
  /** The symbol before the headline, one svg element. */
  readonly mark: string;
  readonly headline: string;
  /** What the answer says first. */
  readonly point: string;
};

/** Reads the example's job file. */
export function drawExample(jobText: string): FirstPicture {
  const parsed = parseJob(JSON.parse(jobText));
  if (parsed.type !== 'success')
    throw new Error(`The example is no good job file: ${JSON.stringify(parsed)}`);
  const { job } = parsed;
  const look = lookAt(job, known(firstSelection(job), 'a cylinder with a plan in the example'));
  const { tone, headline, points } = answerOf(look);
  return {
    section: sectionOf(look),
    mark: markOf(ANSWER_SYMBOLS[tone]),
    headline,
    point: known(points[0], 'a point of the answer').text,
  };
}

function markOf(symbol: VerdictSymbol): string {
  const path = symbol === 'none' ? '' : `<path d="${VERDICT_PATHS[symbol]}"/>`;
  return `<svg class="verdict-mark" data-verdict="${symbol}" viewBox="0 0 14 14" aria-hidden="true">${path}</svg>`;
}

function sectionOf({ assembly, evaluation, job }: Look): string {
  const { seatedTravel, outTravel } = known(assembly.key, 'the key of the example');
  const pose = poseAt(assembly, { travel: (seatedTravel + outTravel) / 2 });
  const drawing = longSection(assembly, pose, evaluation, { width, unit: job.settings.unit });
  // Without a fixed size the picture takes the width that the page gives it, its height from the view box.
  const attributes = Object.fromEntries(
    Object.entries(drawing.attributes).filter(([name]) => name !== 'width' && name !== 'height'),
  );
  return withShorterPaths(rounded(toSvgText({ ...drawing, attributes })));
}

/** A tenth of a pixel is enough for a picture that is replaced in a moment, and it arrives sooner. Labels stay as they are. */
function rounded(svg: string): string {
  return svg.replace(/ (?:points|c?[xy][12]?|r[xy]?|width|height)="[^"]*"/g, (attribute) =>
    attribute.replace(/-?\d+\.\d{2,}/g, (figure) => String(Math.round(Number(figure) * 10) / 10)),
  );
}
