/**
 * Reads a typed number that is neither a length nor an angle nor a whole count: a force off a spring tester or a kitchen
 * scale, coils of a spring with their half ones. The caller says which units there are and what each is worth.
 *
 * Any string is answered. Nothing is guessed: where units differ, one has to be written; a comma that may part thousands or
 * decimals is asked back in the sentence.
 */
import { cleanTypedText } from './clean-typed-text.ts';

export type QuantityReading =
  | { readonly type: 'quantity'; readonly value: number; readonly typed: string }
  | { readonly type: 'error'; readonly typed: string; readonly message: string }
  | { readonly type: 'empty' };

export type QuantityOptions = {
  /** What one of each unit is worth, by the unit as it is written in small letters; '' for a number without one. */
  readonly units: Readonly<Record<string, number>>;
  /** In the unit that is worth 1. */
  readonly from: number;
  readonly to: number;
  /** "a force from 0.05 to 100 N, like 2.5 N or 255 g" */
  readonly says: string;
};

const PARTS = /^\+?([0-9]*)(?:([.,])([0-9]*))?\s*([a-z]*)$/u;

/** Reads a typed quantity; see the head of this file. */
export function parseQuantity(text: string, { units, from, to, says }: QuantityOptions): QuantityReading {
  const clean = cleanTypedText(text);
  if (clean === undefined)
    return { type: 'error', typed: '', message: `This is too long to be a value; write ${says}.` };
  const { typed, plain } = clean;
  if (plain === '') return { type: 'empty' };
  const shown = `“${typed.slice(0, 24)}”`;
  const wrong = (message: string): QuantityReading => ({ type: 'error', typed, message });
  const [, whole = '', mark = '', decimals = '', unit = ''] = PARTS.exec(plain.toLowerCase()) ?? [];
  if (whole + decimals === '') return wrong(`${shown} is not ${says}.`);
  if (mark === ',' && decimals.length === 3 && whole !== '' && whole !== '0')
    return wrong(`${shown} can be read in two ways: write ${whole}.${decimals} or ${whole}${decimals}.`);
  const worth = Object.hasOwn(units, unit) ? units[unit] : undefined;
  if (worth === undefined)
    return wrong(
      unit === ''
        ? `Write the unit as well as ${shown}: ${says}.`
        : `${shown} has a unit that is not known here: write ${says}.`,
    );
  const value = Number(`${whole}.${decimals}`) * worth;
  return value >= from && value <= to
    ? { type: 'quantity', value, typed }
    : wrong(`${shown} is out of range: write ${says}.`);
}

/** N in one of each. A scale shows mass: its gram is the weight of one, by standard gravity of 9.80665 m/s². */
const NEWTONS = {
  n: 1,
  g: 0.00980665,
  gf: 0.00980665,
  kg: 9.80665,
  oz: 0.2780138509537812,
  lb: 4.4482216152605,
  lbf: 4.4482216152605,
} as const;

/** Reads the force that a spring presses with, in N. */
export function parseForce(text: string): QuantityReading {
  const says = 'a force from 0.02 to 200 N, like 2.5 N, 255 g or 9 oz';
  return parseQuantity(text, { units: NEWTONS, from: 0.02, to: 200, says });
}

/** Reads how many coils a spring has. */
export function parseCoils(text: string): QuantityReading {
  return parseQuantity(text, {
    units: { '': 1 },
    from: 1,
    to: 200,
    says: 'a number of coils from 1 to 200, like 9.5',
  });
}
