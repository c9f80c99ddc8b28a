/** The first questions in one line, and whether all that matter are answered. */
import { driverEndsSeen, keyFoot, pinTopsSeen } from '../../model/edit/seen-shapes.ts';
import { lengthOf } from '../../model/measured/part-ends.ts';
import { formatLength } from '../../model/units/format-length.ts';
import type { Look } from '../shared/look.ts';

/** The plug is measured and somebody said where the key sits; shapes may stay assumed. */
export function setupIsAnswered({ bench }: Look): boolean {
  const plug = bench.cylinder.bodies[0]?.outerDiameter;
  const { seating } = bench;
  const hasSeat = seating?.bottomEdge !== undefined || seating?.plugMinusFloor !== undefined;
  return plug !== undefined && plug.basis !== 'assumed' && (hasSeat || bench.key === null);
}

/** "plug .7480 in, key .0420 above, cut 1 at the bow, domed pins, drivers with a broken edge". */
export function setupSummary(look: Look): string {
  const { job, bench, selection } = look;
  const { unit, numbering } = job.settings;
  const plug = bench.cylinder.bodies[0]?.outerDiameter;
  const facts = [
    plug === undefined
      ? 'plug not measured yet'
      : `plug ${plug.basis === 'assumed' ? 'taken as ' : ''}${formatLength(lengthOf(plug, 0), { unit, hasUnit: true, keepsPlaces: true })}`,
    seatWords(look),
    `cut 1 at the ${numbering}`,
    keyFoot(job, selection.plan) === 'ball' ? 'balls' : null,
    topWords(pinTopsSeen(job, selection.plan)),
    driverWords(driverEndsSeen(job, selection.plan)),
  ];
  return facts.filter((fact) => fact !== null).join(', ');
}

function seatWords({ job, bench }: Look): string | null {
  const { seating } = bench;
  if (bench.key === null) return null;
  const { unit } = job.settings;
  if (seating?.keywayFloorHeight !== undefined)
    return `key ${formatLength(lengthOf(seating.keywayFloorHeight, 0), { unit, keepsPlaces: true })} above its underside`;
  if (seating?.plugMinusFloor !== undefined)
    return `floor to crest ${formatLength(lengthOf(seating.plugMinusFloor, 0), { unit, keepsPlaces: true })}`;
  switch (seating?.bottomEdge) {
    case 'level':
      return 'key level with it';
    case 'above':
      return 'key above it';
    case 'unknown':
      return 'where the key sits not known';
    case undefined:
      return 'where the key sits not answered yet';
  }
}

function topWords(top: ReturnType<typeof pinTopsSeen>): string {
  switch (top) {
    case 'domed':
      return 'pins domed';
    case 'broken edge':
      return 'pins flat with a broken edge';
    case 'sharp edge':
      return 'pins flat with a sharp edge';
    case null:
      return 'pins assumed domed';
  }
}

function driverWords(end: ReturnType<typeof driverEndsSeen>): string {
  return end === null ? 'drivers assumed with a broken edge' : `drivers with a ${end}`;
}
