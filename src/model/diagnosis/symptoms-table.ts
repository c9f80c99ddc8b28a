/**
 * What is seen at the bench, and what each of it can come from, what brings about the others first. Common practice, no source; what
 * this job's readings say about a cause is worked out in diagnose.ts.
 */
import type { FindingCode } from '../findings/finding-codes.ts';
import type { SignName } from './signs.ts';

export type Cause = {
  readonly id: string;
  readonly text: string;
  /** Findings that would be it. */
  readonly codes: readonly FindingCode[];
  /** Signs that would be it, or nearly. */
  readonly signs: readonly SignName[];
  /** What must be measured before it can be told; null where readings never tell. */
  readonly needs: 'rest' | 'springs' | 'end play' | 'offsets' | 'nose' | 'step' | 'nothing' | null;
};

export type Symptom = { readonly id: string; readonly seen: string; readonly causes: readonly Cause[] };

type Row = readonly [
  id: string,
  text: string,
  codes: readonly FindingCode[],
  needs: Cause['needs'],
  signs?: readonly SignName[],
];

function symptom(id: string, seen: string, rows: readonly Row[]): Symptom {
  return {
    id,
    seen,
    causes: rows.map(([cause, text, codes, needs, signs = []]) => ({ id: cause, text, codes, needs, signs })),
  };
}

export const SYMPTOMS: readonly Symptom[] = [
  symptom('stops-short', 'The key does not go in all the way', [
    [
      'foreign',
      'A part too many, or the wrong way up, makes a stack too long.',
      ['ball-doubled', 'ball-above-pin', 'pin-upside-down'],
      'nothing',
    ],
    ['wide', 'A part sticks in its hole.', ['part-too-wide'], 'nothing'],
    [
      'spring-solid',
      'A driver is too long, or a spring goes solid, as a peak of the key passes.',
      ['spring-solid', 'driver-strikes-cap'],
      'springs',
      ['tight spring'],
    ],
    ['nose', "The key's nose does not get under a pin.", ['nose-too-high'], 'rest'],
    ['steep', 'A side of the key is too steep to climb.', ['too-steep-going-in'], 'nothing'],
    [
      'dirt',
      'Packed dirt holds a pin up, or the blade is bent: look down the keyway, and lay a straight edge on the key.',
      [],
      null,
    ],
  ]),
  symptom('no-turn', 'It goes in, and nothing turns', [
    [
      'common',
      'One wrong reading shifts every chamber: zero of the caliper, plug diameter, how the key sits.',
      ['same-error-everywhere', 'routes-disagree', 'plug-readings-spread'],
      'offsets',
    ],
    ['off', 'Stacks stand too high or too low.', [], 'offsets', ['chambers off']],
    ['mixed', 'Some chambers are clear at the inner line and some at the outer.', ['mixed-lines'], 'offsets'],
    [
      'seat',
      'The key is not home against its stop, or it is not the key for these cuts.',
      ['turns-when-drawn', 'cut-off-chamber'],
      'offsets',
    ],
    [
      'ends',
      'The ends of the pins let nothing turn at any length.',
      ['no-length-turns', 'flat-top-corners'],
      'offsets',
    ],
    ['rest', 'A bottom pin stands across the line even with the key out.', ['pin-across-at-rest'], 'rest'],
  ]),
  symptom('one-blocks', 'One chamber blocks', [
    [
      'ball',
      'Its ball is missing, or there are two.',
      ['ball-missing', 'ball-doubled', 'ball-falls-through'],
      'nothing',
    ],
    [
      'upside',
      'Its pin stands upside down, or its flat top has corners that stand proud.',
      ['pin-upside-down', 'flat-top-corners', 'no-length-turns'],
      'nothing',
    ],
    ['wide', 'A part sticks in its hole.', ['part-too-wide'], 'nothing'],
    [
      'cut',
      'Its cut does not lie under it, or a neighbour ate into it.',
      ['cut-off-chamber', 'neighbour-eats-cut', 'hangs-above-key'],
      'offsets',
    ],
    ['off', 'Its stack stands too high or too low.', [], 'offsets', ['one chamber off', 'chambers off']],
    [
      'dirt',
      'Dirt in the dimple or under the ball: a film of .001 in under both is .002 in of height. Clean and measure again.',
      [],
      null,
    ],
  ]),
  symptom('lifted', 'It turns only with the key lifted', [
    ['bow', 'The stacks next to the bow are low.', ['turns-when-rocked'], 'offsets'],
    [
      'low',
      'The stacks are low all together: a worn key, short pins, a reading that is off everywhere.',
      ['turns-when-lifted', 'same-error-everywhere'],
      'offsets',
      ['chambers low'],
    ],
    [
      'jaw',
      'The jaw did not reach the roots, and the pins were chosen too short.',
      ['jaw-wider-than-flat'],
      'nothing',
    ],
  ]),
  symptom('drawn', 'It turns only with the key drawn out a hair', [
    ['stop', 'The stop or the places of the cuts are off.', ['turns-when-drawn'], 'offsets'],
    [
      'side',
      'Pins ride on the sides of their cuts, where every thousandth along the key is a thousandth of height.',
      ['cut-off-chamber', 'rides-on-sides', 'tip-rides-on-sides'],
      'offsets',
    ],
  ]),
  symptom('a-little', 'It turns a little each way, then stops', [
    [
      'waist',
      'The waists of the drivers stand at the line: it only rattles between them.',
      ['all-waists-at-line'],
      'rest',
      ['a waist at the line'],
    ],
    ['high', 'A pin is high and rubs until it binds.', [], 'offsets', ['high and rubs', 'chambers high']],
    ['low', 'A driver hangs in, and the edge of the plug meets its side.', [], 'offsets', ['chambers low']],
  ]),
  symptom('rough', 'It turns rough', [
    [
      'edge',
      "The plug's edge lifts the drivers at every turn.",
      ['plug-edge-wears'],
      'offsets',
      ['little to spare'],
    ],
    ['high', 'A pin is high and rubs.', [], 'offsets', ['high and rubs']],
    ['dirt', 'Grit, or graphite with oil: wash it out and try again.', [], null],
  ]),
  symptom('trapped', 'The key does not come out, plug upright', [
    [
      'end-play',
      'The plug comes forward with the key and the pins catch: a loose retainer.',
      ['end-play-catches'],
      'end play',
    ],
    ['steep', 'A side of the key is too steep to climb on the way out.', ['too-steep-coming-out'], 'nothing'],
    ['short', 'A spring goes solid on the way out.', ['spring-solid'], 'springs', ['tight spring']],
  ]),
  symptom('pulls-out', 'The key can be pulled out while it is turned', [
    [
      'no-peak',
      'No peak of the key has to push a pin into the shell.',
      ['pulls-out-turned'],
      'offsets',
      ['barely held'],
    ],
    ['bore', 'The bore is worn or the plug is filed.', ['crest-low', 'loose-for-neighbour'], 'nothing'],
  ]),
  symptom('no-key', 'It turns without a key', [
    ['split', 'With the key out the splits lie at the line.', ['split-at-line-at-rest'], 'rest'],
    [
      'short',
      'Drivers are too short and fall below the line.',
      ['driver-below-at-rest', 'driver-barely-across'],
      'rest',
      ['does not lock'],
    ],
    [
      'none',
      'Drivers, springs or whole stacks are missing.',
      ['no-driver', 'no-spring', 'empty-chamber'],
      'nothing',
    ],
    ['loose', 'Springs do not press.', ['spring-loose', 'springs-differ'], 'springs'],
    ['stuck', 'Drivers stick in the shell: push each with a rod, it must spring back.', [], null],
  ]),
  symptom('any-key', 'Other keys turn it too', [
    [
      'loose',
      'Play and a lowered crest let neighbouring depths work.',
      ['loose-for-neighbour', 'crest-low'],
      'step',
    ],
    [
      'empty',
      'Chambers are empty or do not lock.',
      ['empty-chamber', 'no-driver', 'split-at-line-at-rest'],
      'rest',
    ],
    [
      'master',
      'Master pins make more splits than were wanted.',
      ['thin-master-pin'],
      'nothing',
      ['master pins'],
    ],
    ['hangs', 'Some stacks are not set by the key at all.', ['hangs-above-key', 'key-too-short'], 'rest'],
  ]),
  symptom('rattles', 'The plug rattles to and fro, key out', [
    [
      'waist',
      'Every driver is a spool and stands at the line with its waist.',
      ['all-waists-at-line'],
      'rest',
      ['a waist at the line'],
    ],
    [
      'play',
      'The drivers are thin for their holes, or the bore is worn.',
      ['crest-low', 'loose-for-neighbour'],
      'nothing',
    ],
  ]),
];
