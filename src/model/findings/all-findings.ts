/**
 * Everything worth telling about one cylinder with one key and one plan: code, severity, chambers, fields, a sentence with
 * numbers, and where to look. Worked out when it is asked for, not with every evaluation. mm.
 */
import type { Finding } from '../evaluate/evaluation.ts';
import { contactFindings } from './contact-findings.ts';
import type { Facts } from './facts.ts';
import { lineFindings } from './line-findings.ts';
import { partFindings } from './part-findings.ts';
import { readingFindings } from './reading-findings.ts';
import { restFindings } from './rest-findings.ts';
import { wayFindings } from './way-findings.ts';

const ORDER: Readonly<Record<Finding['severity'], number>> = { stops: 0, warns: 1, notes: 2 };

/** Lists all findings, the gravest first. */
export function allFindings(facts: Facts): Finding[] {
  const all = [
    ...readingFindings(facts),
    ...partFindings(facts),
    ...lineFindings(facts),
    ...restFindings(facts),
    ...wayFindings(facts),
    ...contactFindings(facts),
  ];
  return together(all).sort((one, other) => ORDER[one.severity] - ORDER[other.severity]);
}

const ONE_CHAMBER = /^Chamber (\d+): /u;

/** What is true of several chambers in the same words is told once. */
function together(all: readonly Finding[]): Finding[] {
  const alike = new Map<string, Finding[]>();
  for (const finding of all) {
    const name = `${finding.code} ${finding.message.replace(ONE_CHAMBER, '')}`;
    alike.set(name, [...(alike.get(name) ?? []), finding]);
  }
  return [...alike.values()].flatMap((group) => {
    const [first] = group;
    if (first === undefined || group.length < 2) return group;
    const numbers = group.map(({ message }) => ONE_CHAMBER.exec(message)?.[1] ?? '');
    if (numbers.includes('')) return group;
    const last = numbers.pop() ?? '';
    const message = first.message.replace(ONE_CHAMBER, `Chambers ${numbers.join(', ')} and ${last}: `);
    return [{ ...first, chambers: group.flatMap(({ chambers }) => chambers), message }];
  });
}
