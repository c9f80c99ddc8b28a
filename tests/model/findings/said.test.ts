/**
 * What each finding says of the job in which it is so: how grave, of which chambers, where to look with the key how far out, and with
 * which figures. The figures follow from the sizes in tests/support/finding-cases.ts by the sums beside them. Inches.
 */
import { describe, expect, test } from 'vitest';
import { allFindings } from '../../../src/model/findings/all-findings.ts';
import { gatherFacts } from '../../../src/model/findings/facts.ts';
import type { FindingCode } from '../../../src/model/findings/finding-codes.ts';
import { lookAt } from '../../support/cylinder-h.ts';
import { FINDING_CASES, soundJob } from '../../support/finding-cases.ts';
import { changed } from '../../support/job-builder.ts';
import { endForm, inches } from '../../support/values.ts';

type Said = readonly [
  code: FindingCode,
  severity: 'stops' | 'warns' | 'notes',
  chambers: readonly number[],
  view: 'section' | 'close-up' | 'readings',
  keyIs: 'home' | 'out' | 'on its way',
  figures: string,
];

const ALL = [1, 2, 3, 4, 5, 6] as const;

const SAID: readonly Said[] = [
  ['all-waists-at-line', 'warns', ALL, 'section', 'out', 'Every driver'],
  ['ball-above-pin', 'stops', [1], 'section', 'home', 'a ball lies above'],
  ['ball-doubled', 'stops', [1], 'section', 'home', '2 balls'],
  // 5/32 in
  ['ball-falls-through', 'stops', ALL, 'section', 'home', '.1563 in across, the slot of the keyway .1565 in'],
  ['ball-missing', 'warns', [1], 'section', 'home', 'no ball'],
  ['bottom-pin-as-driver', 'warns', [1], 'section', 'home', 'a driver'],
  ['crest-low', 'warns', ALL, 'close-up', 'home', '.002 in lower'],
  // .352 - .350
  ['cut-off-chamber', 'warns', [1], 'section', 'home', '.002 in off, towards the tip'],
  // .2735 - .254
  [
    'driver-barely-across',
    'warns',
    [5],
    'section',
    'out',
    '.0195 in past the shear line, less than .0200 in',
  ],
  ['driver-below-at-rest', 'stops', [5], 'section', 'out', 'below the shear line'],
  // .478 - .477
  ['driver-strikes-cap', 'stops', [3], 'section', 'on its way', '.001 in before'],
  ['empty-chamber', 'stops', [1], 'section', 'home', 'nothing is in it'],
  [
    'end-play-catches',
    'warns',
    [1],
    'section',
    'home',
    'forward .004 in, and the pins only pass up to .004 in',
  ],
  // a flat pin must stay .00418 low, and this one is level
  ['flat-top-corners', 'warns', [1], 'close-up', 'home', '.004 in lower'],
  // .1975 - .197
  ['hangs-above-key', 'warns', [1], 'section', 'home', '.0005 in above the key'],
  // (.067 - .066) / 2 / tan 45
  ['jaw-wider-than-flat', 'warns', [1], 'readings', 'home', '.0670 in wide, the root flat .0660 in'],
  ['jaw-wider-than-flat', 'warns', [1], 'readings', 'home', '.0005 in too shallow'],
  ['key-too-short', 'stops', [6], 'section', 'home', 'ends before it'],
  ['loose-for-neighbour', 'warns', [], 'close-up', 'home', '.004 in, more than half a step of .0079 in'],
  [
    'mixed-lines',
    'stops',
    [2],
    'close-up',
    'home',
    'Chambers 1 are clear at the inner line, 2 only at the outer',
  ],
  ['no-driver', 'stops', [1], 'section', 'out', 'no driver'],
  // .513 - .010 - .312
  [
    'no-driver-fits',
    'warns',
    [1],
    'section',
    'out',
    'at least .1915 in long, to let the key pass at most .1910 in',
  ],
  ['no-length-turns', 'stops', [1], 'close-up', 'home', 'no length'],
  ['no-spring', 'warns', [1], 'section', 'out', 'no spring'],
  // .2395 - .194
  ['nose-too-high', 'warns', [2], 'section', 'on its way', '.0455 in above'],
  ['part-too-wide', 'stops', [1], 'section', 'home', 'the bottom pin is .1605 in across, the hole .1600 in'],
  [
    'part-used-twice',
    'stops',
    [1, 2],
    'section',
    'home',
    'Planned 2 times, and there is one of it: driver 1',
  ],
  ['pin-across-at-rest', 'stops', [1], 'section', 'out', 'the bottom pin already stands .004 in above'],
  ['pin-upside-down', 'stops', [1], 'section', 'home', 'its dimple looks up'],
  // .3315 - .337 + .0077
  ['plug-edge-wears', 'notes', [1], 'close-up', 'home', 'only .002 in above'],
  ['plug-readings-spread', 'warns', [], 'readings', 'home', '.002 in'],
  ['readings-spread', 'warns', [1], 'readings', 'home', 'by .0015 in'],
  ['rides-on-sides', 'notes', ALL, 'section', 'home', '.0005 in above the root'],
  // .4 - .066 against .337
  ['routes-disagree', 'warns', [1], 'readings', 'home', 'by .003 in'],
  // .0432 - .042
  ['same-error-everywhere', 'warns', ALL, 'readings', 'home', 'high by about .001'],
  ['split-at-line-at-rest', 'stops', [1], 'section', 'out', 'the split itself'],
  ['spring-loose', 'warns', [1], 'section', 'out', '.5400 in long and has .5405 in of room'],
  // .202 - .193
  ['spring-solid', 'warns', [3], 'section', 'on its way', '.009 in from solid, less than .0100 in'],
  // .700 - .689
  ['springs-differ', 'notes', [1], 'section', 'out', '.011 in shorter'],
  // half a millimetre is .0197 in
  ['thin-master-pin', 'warns', [1], 'section', 'home', '.0195 in thin, under .0197 in'],
  [
    'too-steep-coming-out',
    'warns',
    ALL,
    'section',
    'on its way',
    'coming out, a side of a cut meets the stack at 45°',
  ],
  ['too-steep-going-in', 'warns', [1, 2, 3, 4, 5], 'section', 'on its way', 'going in, a side of a cut'],
  ['turns-when-rocked', 'warns', [1], 'close-up', 'home', 'rocked up at the bow'],
];

function findingsOf(job: Parameters<typeof lookAt>[0]) {
  const seen = lookAt(job);
  return { ...seen, all: allFindings(gatherFacts(seen.bench, seen.assembly, seen.evaluation)) };
}

describe('a finding', () => {
  test.each(SAID)('%s %s chambers %j, %s, key %s: %s', (code, severity, chambers, view, keyIs, figures) => {
    const { all, assembly } = findingsOf(FINDING_CASES[code]()[0]);
    const told = all.find((each) => each.code === code);
    const numberOf = (id: string) => assembly.chambers.find((each) => each.id === id)?.number;
    expect(told).toMatchObject({ severity, show: { view } });
    expect(told?.chambers.map(numberOf)).toEqual(chambers);
    expect(told?.show?.chamber).toBe(told?.chambers[0] ?? null);
    expect(told?.message).toContain(figures);
    expect(told?.fields.length).toBeGreaterThan(0);
    expect(told?.fields).not.toContain('');
    const travel = told?.show?.travel ?? NaN;
    const out = assembly.key?.outTravel ?? NaN;
    if (keyIs === 'on its way') expect(travel > 0 && travel < out).toBe(true);
    else expect(travel).toBe(keyIs === 'home' ? 0 : out);
  });

  test('what stops comes before what warns, and that before what is only noted', () => {
    const job = changed(soundJob(), (copy) => {
      // an empty chamber stops, an end play warns, a stack near the end of its window is noted
      copy.plans[0]!.stacks[3]!.items = [];
      copy.cylinders[0]!.endPlay = inches(0.0041);
      copy.groups[0]!.height = inches(0.3315);
    });
    const { all } = findingsOf(job);
    const order = all.map(({ severity }) => ['stops', 'warns', 'notes'].indexOf(severity));
    expect(new Set(order).size).toBe(3);
    expect(order).toEqual([...order].sort());
  });

  test('a pin with a dimple wants a ball under it, even where the other chambers have none', () => {
    const withoutBalls = (foot: Parameters<typeof endForm>[0], basis: 'seen' | 'assumed' = 'seen') =>
      findingsOf(
        changed(soundJob(), (copy) => {
          for (const { items } of copy.plans[0]!.stacks) items.splice(0, 1);
          for (const { label, ends } of copy.parts)
            if (label.startsWith('bottom pin')) ends![0] = endForm({ kind: 'flat' });
          const pin = copy.parts.find(({ label }) => label === 'bottom pin 1')!;
          pin.ends![0] = { ...endForm(foot), basis };
        }),
      )
        .all.filter(({ code }) => code === 'ball-missing')
        .map(({ chambers }) => chambers.length);
    const dimple = { kind: 'cup', mouthDiameter: 0.1, includedAngleDeg: 118 } as const;
    expect(withoutBalls(dimple)).toEqual([1]);
    expect(withoutBalls(dimple, 'assumed')).toEqual([]);
    expect(withoutBalls({ kind: 'cone', tipFlatDiameter: 0.03, includedAngleDeg: 90 })).toEqual([]);
  });

  test('half of the chambers with a ball are no reason to miss one, more than half are', () => {
    const without = (chambers: readonly number[]) =>
      findingsOf(
        changed(soundJob(), (copy) => {
          for (const chamber of chambers) {
            copy.plans[0]!.stacks[chamber - 1]!.items.splice(0, 1);
            const pin = copy.parts.find(({ label }) => label === `bottom pin ${chamber}`)!;
            pin.ends![0] = endForm({ kind: 'flat' });
          }
        }),
      ).all.some(({ code }) => code === 'ball-missing');
    expect(without([1, 2, 3])).toBe(false);
    expect(without([1, 2])).toBe(true);
  });

  test('a spring is held to its hole in the shell, a ball to its hole in the plug, a driver to both', () => {
    const tooWide = (label: string, across: number, plug: number, shell: number) =>
      findingsOf(
        changed(soundJob(), (copy) => {
          const { holes } = copy.cylinders[0]!.chambers[0]!;
          holes[0]!.diameter = inches(plug);
          holes[1]!.diameter = inches(shell);
          copy.parts.find((part) => part.label === label)!.diameter = inches(across);
        }),
      )
        .all.filter(
          ({ code, message }) => code === 'part-too-wide' && message.includes(label.replace(' 1', '')),
        )
        .map(({ message }) => message);
    expect(tooWide('spring 1', 0.161, 0.16, 0.162)).toEqual([]);
    expect(tooWide('spring 1', 0.163, 0.164, 0.162)[0]).toContain('.1630 in across, the hole .1620 in');
    expect(tooWide('ball 1', 0.161, 0.162, 0.16)).toEqual([]);
    expect(tooWide('driver 1', 0.161, 0.16, 0.162)).toHaveLength(1);
    expect(tooWide('driver 1', 0.161, 0.162, 0.16)).toHaveLength(1);
    expect(tooWide('driver 1', 0.161, 0.161, 0.161)).toEqual([]);
  });

  test('what looks up tells a pin that is upside down, if somebody looked', () => {
    const withPin = (
      lower: Parameters<typeof endForm>[0],
      upper: Parameters<typeof endForm>[0],
      isSeen = true,
    ) =>
      findingsOf(
        changed(soundJob(), (copy) => {
          const pin = copy.parts.find(({ label }) => label === 'bottom pin 1')!;
          const basis = isSeen ? ('seen' as const) : ('assumed' as const);
          pin.ends = [
            { ...endForm(lower), basis },
            { ...endForm(upper), basis },
          ];
        }),
      ).all.filter(({ code }) => code === 'pin-upside-down');
    const point = { kind: 'cone', tipFlatDiameter: 0.03, includedAngleDeg: 90 } as const;
    const crown = { kind: 'dome' } as const;
    const flat = { kind: 'flat' } as const;
    expect(withPin(flat, point)[0]).toMatchObject({ severity: 'stops' });
    expect(withPin(flat, point)[0]?.message).toContain('its point looks up');
    expect(withPin(flat, point, false)).toEqual([]);
    expect(withPin(crown, flat)[0]).toMatchObject({ severity: 'warns' });
    expect(withPin(crown, flat)[0]?.message).toContain('its crown looks at the key');
    expect(withPin(crown, flat, false)).toEqual([]);
    expect(withPin(crown, crown)).toEqual([]);
    expect(withPin(flat, crown)).toEqual([]);
  });
});
