/**
 * A scene in sentences, for ears and for eyes: before it is tried, and what came of it. The figures are those of the
 * picture: the same offsets, written the same way.
 */
import { toDegrees } from '../../model/radians.ts';
import { chamberOf, type Reading, splitOf, turnOfScene, verdictOf } from '../../model/learning/scene.ts';
import { restOfScene } from '../../model/learning/rest.ts';
import { whatTurns } from '../../model/evaluate/what-turns.ts';
import type { JobUnit } from '../../model/units/length-unit.ts';
import { fill, inTongue, lengthText, type Ruler } from './fill.ts';
import type { Words } from './words/words.ts';

/** What there is to see before the key goes in; nothing in it gives an answer away. */
export function sayBefore({ assembly }: Reading, words: Words, unit: JobUnit): string {
  const { common } = words;
  const ruler = { unit, tongue: words.tongue };
  const chambers = assembly.stacks.map(({ parts }, i) =>
    fill(
      common.beforeChamber,
      {
        number: String(assembly.chambers[i]?.number ?? i + 1),
        parts: parts.map(({ role }) => common.parts[role]).join(common.between),
      },
      ruler,
    ),
  );
  return fill(common.before, { chambers: chambers.join(' ') }, ruler);
}

/** What came of it, one sentence each. */
export function sayAfter(reading: Reading, words: Words, unit: JobUnit): string[] {
  const { common } = words;
  const ruler = { unit, tongue: words.tongue };
  if (reading.scene.tries === 'key out') return sayKeyOut(reading, common.rest, ruler);
  const { lines, chambers } = reading.evaluation;
  const said = chambers.flatMap((_, i) =>
    lines.map((_line, at) => {
      const { offset } = splitOf(reading, i, at);
      const verdict = fill(
        common.verdicts[verdictOf(reading, i, at)],
        { by: lengthText(offset, ruler) },
        ruler,
      );
      const atLine =
        lines.length < 2
          ? verdict
          : fill(
              common.after.line,
              { line: at === 0 ? common.after.inner : common.after.outer, said: verdict },
              ruler,
            );
      return chambers.length < 2
        ? atLine
        : fill(common.after.chamber, { number: String(chamberOf(reading, i).number), said: atLine }, ruler);
    }),
  );
  return [...said, sayTurn(reading, common.after, ruler)];
}

function sayTurn(reading: Reading, after: Words['common']['after'], ruler: Ruler): string {
  const { lines } = reading.evaluation;
  const { turning } = whatTurns(reading.evaluation);
  if (lines.length > 1) {
    if (turning.length === 0) return after.nothing;
    return turning[0] === lines[0]?.line ? after.plugAlone : after.together;
  }
  if (turning.length > 0) return after.plugTurns;
  const degrees = toDegrees(turnOfScene(reading).reach);
  const angle = `${degrees < 10 ? Math.round(degrees * 2) / 2 : Math.round(degrees)}°`;
  return fill(after.held, { angle: inTongue(angle, ruler.tongue) }, ruler);
}

function sayKeyOut(reading: Reading, rest: Words['common']['rest'], ruler: Ruler): string[] {
  const { atLines, driver, spring } = restOfScene(reading);
  const atLine = atLines[0];
  const state = atLine?.state ?? 'unknown';
  const isShort = state === 'driver across' && driver.verdict === 'too short';
  const spare = spring?.toSpare ?? driver.roomLeft ?? 0;
  return [
    fill(rest[state], { engaged: lengthText(atLine?.engaged ?? 0, ruler) }, ruler),
    ...(isShort ? [rest.tooShort] : []),
    fill(spare < 0 ? rest.solid : rest.fits, { spare: lengthText(spare, ruler) }, ruler),
  ];
}
