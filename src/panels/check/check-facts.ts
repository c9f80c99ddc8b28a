/** What Check tells beyond the evaluation, worked out once for each look. */
import type { Finding } from '../../model/evaluate/evaluation.ts';
import { allFindings } from '../../model/findings/all-findings.ts';
import { type Facts, gatherFacts } from '../../model/findings/facts.ts';
import type { Look } from '../shared/look.ts';

export type CheckFacts = { readonly facts: Facts; readonly findings: readonly Finding[] };

const known = new WeakMap<Look, CheckFacts>();

/** Gathers the facts and findings of what is looked at. */
export function checkFacts(look: Look): CheckFacts {
  const before = known.get(look);
  if (before !== undefined) return before;
  const facts = gatherFacts(look.bench, look.assembly, look.evaluation);
  const gathered = { facts, findings: allFindings(facts) };
  known.set(look, gathered);
  return gathered;
}
