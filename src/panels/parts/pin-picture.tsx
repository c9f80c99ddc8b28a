/** Small pictures of loose parts: a pin with the ends it was seen to have, a ball, a spring; and each end on its own. */
import type { EndName } from '../../model/edit/end-forms.ts';
import type { Part } from '../../model/schema/parts-schema.ts';
import '../measure/shape-picture.css';

/** The lower end of a pin 18 wide whose sides are at 19 and 37: from its right side to its left, y down. */
const LOWER: Readonly<Record<EndName | 'unknown', string>> = {
  domed: 'V32Q28 39 19 32',
  'broken edge': 'V32L34 36H22L19 32',
  'sharp edge': 'V36H19',
  'rounded edge': 'V32Q37 36 33 36H23Q19 36 19 32',
  dimpled: 'V36H34L28 30L22 36H19',
  pointed: 'V29L30 37H26L19 29',
  rounded: 'V28A9 9 0 0 1 19 28',
  unknown: 'V36H19',
};

/** The upper end, from its left side to its right. */
const UPPER: Readonly<Record<EndName | 'unknown', string>> = {
  domed: 'V8Q28 1 37 8',
  'broken edge': 'V8L22 4H34L37 8',
  'sharp edge': 'V4H37',
  'rounded edge': 'V8Q19 4 23 4H33Q37 4 37 8',
  dimpled: 'V4H22L28 10L34 4H37',
  pointed: 'V11L26 3H30L37 11',
  rounded: 'V12A9 9 0 0 1 37 12',
  unknown: 'V4H37',
};

/** A pin lying as it stands in its chamber. */
export function PartPicture({
  kind,
  lower,
  upper,
}: {
  readonly kind: Part['kind'];
  readonly lower: EndName | null;
  readonly upper: EndName | null;
}) {
  return (
    <svg className="shape-picture" viewBox="0 0 56 40" aria-hidden="true">
      {kind === 'ball' ? <circle className="picture-steel" cx="28" cy="20" r="12" /> : null}
      {kind === 'spring' ? (
        <path
          className="picture-spring"
          d="M18 34L38 31M18 28L38 25M18 22L38 19M18 16L38 13M18 10L38 7M38 31L18 28M38 25L18 22M38 19L18 16M38 13L18 10"
        />
      ) : null}
      {kind === 'pin' ? (
        <path
          className="picture-pin"
          d={`M37 20${LOWER[lower ?? 'unknown']}V20${UPPER[upper ?? 'unknown']}Z`}
          strokeDasharray={lower === null && upper === null ? '3 2' : undefined}
        />
      ) : null}
    </svg>
  );
}

/** One end, large: the rest of the pin runs out of the picture. */
export function EndPicture({ name, which }: { readonly name: EndName; readonly which: 0 | 1 }) {
  const d = which === 0 ? `M37 10${LOWER[name]}V10` : `M19 30${UPPER[name]}V30`;
  return (
    <svg className="shape-picture" viewBox={which === 0 ? '11 12 34 28' : '11 0 34 28'} aria-hidden="true">
      <path className="picture-pin" d={d} />
    </svg>
  );
}
