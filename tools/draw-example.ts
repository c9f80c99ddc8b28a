/**
 * Draws the example's long section as it stands when the page opens, key half way in. Only the build uses it, through
 * static-section.ts.
 */
import { longSection } from '../src/drawing/long-section.ts';
import { toSvgText } from '../src/drawing/node.ts';
import { buildAssembly } from '../src/model/assembly/build-assembly.ts';
import { poseAt } from '../src/model/assembly/pose-at.ts';
import { known } from '../src/model/assert.ts';
import { evaluate } from '../src/model/evaluate/evaluate.ts';
import { firstSelection } from '../src/model/measured/selection.ts';
import { parseJob } from '../src/model/schema/parse-job.ts';
import { withShorterPaths } from './shorter-paths.ts';

/** CSS px that it is laid out for; the page scales it to the width there is. */
const width = 1100;

export function drawExample(jobText: string): string {
  const parsed = parseJob(JSON.parse(jobText));
  if (parsed.type !== 'success')
    throw new Error(`The example is no good job file: ${JSON.stringify(parsed)}`);
  const { job } = parsed;
  const selection = known(firstSelection(job), 'a cylinder with a plan in the example');
  const assembly = buildAssembly(job, selection);
  const { seatedTravel, outTravel } = known(assembly.key, 'the key of the example');
  const pose = poseAt(assembly, { travel: (seatedTravel + outTravel) / 2 });
  const drawing = longSection(assembly, pose, evaluate(job, selection), { width, unit: job.settings.unit });
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
