import { fc, test } from '@fast-check/vitest';
import { describe, expect, it } from 'vitest';
import { fileStyle } from '../../../src/drawing/drawing-style.ts';
import { toSvgText, withStyle } from '../../../src/drawing/node.ts';
import { longSectionAtScale } from '../../../src/drawing/true-scale.ts';
import { poseAt } from '../../../src/model/assembly/pose-at.ts';
import { evaluate } from '../../../src/model/evaluate/evaluate.ts';
import { shareableTable } from '../../../src/model/note/note-table.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import { asSaid, shareableView, type ShareableView } from '../../../src/model/sharing/shareable-view.ts';
import { standInBench } from '../../../src/model/sharing/stand-in-bench.ts';
import { type PictureKind, pictureOf, pictureSource } from '../../../src/panels/note/note-pictures.ts';
import { noteStates, sharedOf } from '../../../src/panels/note/note-states.ts';
import { lookAt } from '../../../src/panels/shared/look.ts';
import { namedParts } from '../../../src/geometry/part-names.ts';
import { loadManifold } from '../../../src/solids/load-manifold.ts';
import { printFile } from '../../../src/solids/print/print-file.ts';
import { type PrintChoice, printOrder } from '../../../src/solids/print/print-order.ts';
import { finishSvg } from '../../../src/persist/job-in-picture.ts';
import { buildJob, changed } from '../../support/job-builder.ts';
import { jobCount } from '../../support/near-line-jobs.ts';
import { sameOffsets } from '../../support/same-offsets.ts';

const SELECTION = { cylinder: 'cylinder', key: 'key', plan: 'plan' };
const KINDS: readonly PictureKind[] = ['section', 'dimensions', 'close-ups', 'chamber', 'across'];

const PRINTS: readonly PrintChoice[] = [{ kind: 'cutaway' }, { kind: 'all' }];

const viewOf = (job: Job): ShareableView => {
  const [cylinder, key, plan] = [job.cylinders[0]!, job.keys[0]!, job.plans[0]!];
  return shareableView(job, cylinder, key, [{ plan, evaluation: evaluate(job, SELECTION) }]);
};

/**
 * What leaves the page while the bitting is hidden: the table, the words, what pictures are drawn from, one picture after
 * the other as its file, and what solids are made of. A PNG is drawn from the text of the SVG, with the same words. The clip,
 * the strip and the scene of the insertion are not given then (tests/e2e/note.spec.ts).
 */
function exportsOf(job: Job, turn: number): readonly string[] {
  const look = lookAt(job, SELECTION);
  const source = pictureSource(look, true);
  const kind = KINDS[turn % (KINDS.length + 1)];
  const picture =
    kind === undefined
      ? longSectionAtScale(source.assembly, source.pose, source.evaluation, {
          mostMm: 176,
          unit: source.unit,
        }).drawing
      : pictureOf(kind, 'chamber-2', source).drawing;
  const shared = sharedOf(look, noteStates(look));
  return [
    finishSvg(toSvgText(withStyle(picture, fileStyle('print'))), null),
    JSON.stringify([source.assembly, source.evaluation]),
    source.captions.join('\n'),
    shareableTable(shared),
    JSON.stringify(shared),
    JSON.stringify(namedParts(source.assembly)),
    JSON.stringify(printOrder(source.assembly, PRINTS[turn % PRINTS.length]!, { factor: 4, clearance: 0.2 })),
  ];
}

const verdictsOf = (job: Job): string =>
  JSON.stringify(
    evaluate(job, SELECTION).chambers.map(({ splits }) => splits.map(({ verdict, lean }) => [verdict, lean])),
  );

/** SEEDED_JOBS=200 is the long form. */
const PAIRS = jobCount(40);
/** ms, for the long form on a busy machine. */
const PATIENCE = 120_000 + 6_000 * PAIRS;
const SEEDS = Array.from({ length: 20 }, (_, seed) => seed);

describe('hidden bitting', () => {
  it(
    'two jobs with equal offsets and verdicts, other cuts and other pins give the same bytes',
    () => {
      let seed = 0;
      let [same, otherVerdicts] = [0, 0];
      for (; same < PAIRS; seed++) {
        const [one, other] = sameOffsets(seed);
        expect(JSON.stringify(one.parts)).not.toBe(JSON.stringify(other.parts));
        // The +- depends a little on how long what was read is, so that a verdict at a limit may differ. It may be shared.
        if (verdictsOf(one) !== verdictsOf(other)) {
          otherVerdicts += 1;
          continue;
        }
        expect(exportsOf(other, seed), `seed ${seed}`).toEqual(exportsOf(one, seed));
        same += 1;
      }
      expect(otherVerdicts).toBeLessThan(PAIRS / 20);
    },
    PATIENCE,
  );

  it('solids to print have the same bytes for such a pair, and other bytes for the true cuts', async () => {
    const library = await loadManifold();
    const bytesOf = (job: Job, isHidden: boolean, form: '3mf' | 'stl') => {
      const { assembly } = pictureSource(lookAt(job, SELECTION), isHidden);
      const ordered = printOrder(assembly, { kind: 'cutaway' }, { factor: 4, clearance: 0.2 });
      if (ordered.type === 'error') throw new Error(ordered.sentence);
      return Buffer.from(printFile(library, ordered.order, form, 'Job 7').bytes).toString('base64');
    };
    const pairs = SEEDS.map(sameOffsets).filter(([one, other]) => verdictsOf(one) === verdictsOf(other));
    for (const [i, [one, other]] of pairs.slice(0, 2).entries()) {
      const form = i % 2 === 0 ? '3mf' : 'stl';
      expect(bytesOf(one, true, form) === bytesOf(other, true, form), `pair ${i}`).toBe(true);
      expect(bytesOf(one, false, form) === bytesOf(other, false, form), `pair ${i}`).toBe(false);
    }
  });

  it('without it the same pairs do differ, so that the check above can fail', () => {
    for (const seed of SEEDS.slice(0, 10)) {
      const [one, other] = sameOffsets(seed);
      const drawn = [one, other].map((job) => {
        const source = pictureSource(lookAt(job, SELECTION), false);
        return toSvgText(pictureOf('section', 'chamber-1', source).drawing);
      });
      expect(drawn[0], `seed ${seed}`).not.toBe(drawn[1]);
    }
  });

  it('other offsets do show: what may be shared is not lost', () => {
    const job = buildJob({ chambers: [{}, {}, {}] });
    const high = changed(job, (copy) => {
      copy.parts.find(({ id }) => id === 'bottom-pin-2')!.length!.readings[0]!.value += 0.0508;
      copy.groups = [];
    });
    const at = (each: Job) => viewOf(each).states[0]!.chambers.map(({ splits }) => splits[0]!.at?.offset);
    const [before, after] = [at({ ...job, groups: [] }), at(high)];
    expect(after[0]).toBe(before[0]);
    expect(after[1]! - before[1]!).toBeCloseTo(0.0508, 9);
  });

  it('draws cuts that are all of one depth', () => {
    const job = buildJob();
    const view = viewOf(job);
    const { assembly } = standInBench(job, job.cylinders[0]!, view.states[0]!, true);
    const depths = new Set(assembly.key!.shape.cuts.map(({ rootDepth }) => rootDepth));
    expect(depths.size).toBe(1);
    const lengths = new Set(assembly.stacks.map(({ parts }) => parts[0]!.length.toFixed(6)));
    expect(lengths.size).toBe(1);
    expect(new Set(job.keys[0]!.cuts.map(({ rootDepth }) => rootDepth!.readings[0]!.value)).size).toBe(5);
  });

  it('shows the offset that it says, as drawn', () => {
    for (const seed of SEEDS) {
      const [job] = sameOffsets(seed);
      const state = viewOf(job).states[0]!;
      const { assembly } = standInBench(job, job.cylinders[0]!, state, true);
      const pose = poseAt(assembly, { travel: assembly.key!.seatedTravel });
      const [line] = assembly.lines;
      for (const { chamber, splits } of state.chambers) {
        const top = pose.stacks.find((each) => each.chamber === chamber)!.parts[0]!.topY;
        expect(top - line!.innerAxisY - line!.radius, `seed ${seed}`).toBeCloseTo(splits[0]!.at!.offset, 6);
      }
    }
  });
});

describe('what is said of an offset', () => {
  it.each([
    [0.00635, 'in', 0.0127],
    [-0.00635, 'in', -0.0127],
    [0.0063, 'in', 0],
    [0.0254, 'in', 0.0254],
    [0.0254 + 3e-16, 'in', 0.0254],
    [0.005, 'mm', 0.01],
    [-0.0049, 'mm', 0],
  ] as const)('%s mm in %s is %s', (mm, unit, said) => {
    expect(asSaid(mm, unit)).toBe(said);
  });

  test.prop([fc.double({ min: -1, max: 1, noNaN: true }), fc.constantFrom('in' as const, 'mm' as const)])(
    'is never further off than half a step, and the noise of the arithmetic does not move it',
    (mm, unit) => {
      const step = unit === 'in' ? 0.0127 : 0.01;
      expect(Math.abs(asSaid(mm, unit) - mm)).toBeLessThanOrEqual(step / 2 + 2e-6);
      const told = asSaid(mm, unit);
      expect([asSaid(told + 1e-12, unit), asSaid(told - 1e-12, unit)]).toEqual([told, told]);
    },
  );
});
