/** A guess about a worn key: its root depths on even steps, with how far each cut is off. Never used for anything else. */
import { useId, useState } from 'react';
import { fitSteps, WORTH_TELLING } from '../../model/sureness/step-fit.ts';
import { formatLength } from '../../model/units/format-length.ts';
import { parseLength } from '../../model/units/parse-length.ts';
import { measureKey } from '../../model/measured/measured-key.ts';
import type { Look } from '../shared/look.ts';

export function StepsOfKey({ look }: { readonly look: Look }) {
  const [text, setText] = useState('');
  const field = useId();
  const { bench, assembly } = look;
  const { unit } = look.job.settings;
  if (bench.key === null) return null;
  const diameter = 2 * (assembly.lines[0]?.radius ?? 0);
  const key = measureKey(
    bench.key,
    bench.seating,
    diameter,
    assembly.chambers.at(-1)?.z ?? diameter,
    bench.measuring,
  );
  const depths = key.cuts.flatMap(({ rootDepth }) => (rootDepth === null ? [] : [rootDepth.value]));
  if (depths.length < 4) return null;
  const read = text.trim() === '' ? null : parseLength(text, { unit });
  const step = read?.type === 'length' ? read.mm : null;
  const fit = step === null ? null : fitSteps(depths, step);
  const say = (mm: number) => formatLength(mm, { unit, hasUnit: true });
  return (
    <details className="fold sure-figures">
      <summary className="small">Is the key worn? Try even steps</summary>
      <p className="small quiet">
        If the key was cut to even steps, its root depths show them. A guess only: nothing is changed by it,
        and fine steps fit anything.
      </p>
      <label className="small" htmlFor={field}>
        Step between depths{' '}
        <input
          id={field}
          className="step-input"
          inputMode="decimal"
          autoComplete="off"
          value={text}
          placeholder={unit === 'in' ? '.015' : '0.4'}
          onChange={(event) => setText(event.target.value)}
        />
      </label>
      <p className="small" role="status">
        {read !== null && step === null
          ? `"${text}" is no length, for example ${unit === 'in' ? '.015' : '0.4'}.`
          : fit === null
            ? ''
            : fit.againstChance > WORTH_TELLING
              ? `These cuts do not lie on steps of ${say(fit.step)} any better than cuts at random would.`
              : `They lie on steps: ${fit.cuts
                  .map(
                    ({ residual }, i) =>
                      `cut ${i + 1} ${residual < 0 ? 'deeper' : 'shallower'} by ${say(Math.abs(residual))}`,
                  )
                  .join(', ')}.`}
      </p>
    </details>
  );
}
