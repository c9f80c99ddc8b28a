import { parseCount } from '../../model/units/parse-count.ts';
import { PlainField } from './plain-field.tsx';

/** Of which there can be, in one little bag. */
const MOST_ALIKE = 100_000;

/** How many there are of a part. */
export function CountField({
  label,
  value,
  least,
  onCount,
  isLabelShown = true,
  shortLabel,
}: {
  readonly label: string;
  readonly value: number;
  readonly least: 0 | 1;
  readonly onCount: (count: number) => void;
  readonly isLabelShown?: boolean;
  readonly shortLabel?: string;
}) {
  return (
    <div className="is-count">
      <PlainField
        label={label}
        isLabelShown={isLabelShown}
        {...(shortLabel !== undefined && { shortLabel })}
        value={String(value)}
        inputMode="numeric"
        size={4}
        commit={(text) => {
          const reading = parseCount(text, { from: least, to: MOST_ALIKE });
          if (reading.type === 'count') onCount(reading.count);
          return reading.type === 'count'
            ? null
            : reading.type === 'empty'
              ? 'Write how many there are, like 1.'
              : reading.message;
        }}
      />
    </div>
  );
}
