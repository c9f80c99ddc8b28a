/**
 * What the command line prints about keys: how many operate each line, and what each key of the job does against what it is
 * meant to. Numbers of keys are text, since they may be larger than a JSON number holds. Never a list of cuts.
 */
import { buildAssembly } from '../model/assembly/build-assembly.ts';
import { evaluate } from '../model/evaluate/evaluate.ts';
import type { Evaluation } from '../model/evaluate/evaluation.ts';
import { depthTableOf } from '../model/keying/depth-table.ts';
import { crossings, keyOutcomes } from '../model/keying/key-outcomes.ts';
import { keysAtLine, operatingKeys } from '../model/keying/operating-keys.ts';
import { layOut, type Selection } from '../model/measured/selection.ts';
import type { Job } from '../model/schema/job-schema.ts';

/** Gathers it for one selection. */
export function keyingOf(job: Job, selection: Selection, evaluation: Evaluation): unknown {
  const outcomes = keyOutcomes(job, selection, (each) =>
    each.key === selection.key ? evaluation : evaluate(job, each),
  );
  return {
    operatingKeys: countsOf(job, selection, evaluation),
    keys: outcomes.map(({ key, meant, does, probably, isAsMeant, isMixed, heldBy }) => ({
      key,
      meant,
      does,
      probably,
      isAsMeant,
      isMixed,
      heldBy,
    })),
    crossings: crossings(outcomes),
  };
}

function countsOf(job: Job, selection: Selection, evaluation: Evaluation): unknown {
  const bench = layOut(job, selection);
  const assembly = buildAssembly(job, selection);
  const result = operatingKeys({ bench, assembly, evaluation }, depthTableOf(job));
  if (result.type === 'missing') return { missing: result.message };
  const { setsOfHeights, byTable } = result.keys;
  return {
    lines: setsOfHeights.map(({ line, count }, i) => {
      const keys = byTable === null ? null : keysAtLine(byTable, i);
      return {
        line,
        setsOfHeights: String(count),
        ...(keys !== null && { keys: String(keys.count), withoutLargestStep: String(keys.withoutLimit) }),
      };
    }),
    ...(byTable !== null && {
      plugAlone: String(byTable.counts.plugAlone),
      together: String(byTable.counts.together),
      either: String(byTable.counts.either),
    }),
  };
}
