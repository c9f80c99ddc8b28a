/**
 * Readings as dots over a rule: as far to the right as they are long, equal ones piled up; the mean as a line, its ± as a
 * bar. A row for those with care, one for those in a hurry. Units of the picture: 720 across.
 */
import type { Scatter } from '../../model/learning/ten-readings.ts';
import { fill, lengthText, type Ruler } from './fill.ts';
import { useWords } from './words-context.ts';

type ScatterPictureProps = {
  readonly careful: readonly number[];
  readonly hurried: readonly number[];
  readonly scatter: Scatter;
  readonly ruler: Ruler;
};

const LEFT = 110;
const RIGHT = 690;
const DOT = 6;
/** Units. From the foot of a row to its dots. */
const ROW = 92;

export function ScatterPicture({ careful, hurried, scatter, ruler }: ScatterPictureProps) {
  const { ten } = useWords();
  const all = [...careful, ...hurried];
  const low = Math.min(...all, scatter.mean - scatter.meanDoubt);
  const high = Math.max(...all, scatter.mean + scatter.meanDoubt);
  const x = (mm: number) => LEFT + ((mm - low) / (high - low || 1)) * (RIGHT - LEFT);
  const rows = hurried.length === 0 ? [careful] : [careful, hurried];
  const height = rows.length * ROW + 40;
  const said = fill(
    ten.picture,
    {
      hurried: hurried.length === 0 ? '' : ten.pictureHurried,
      from: lengthText(Math.min(...all), ruler),
      to: lengthText(Math.max(...all), ruler),
      mean: lengthText(scatter.mean, ruler),
    },
    ruler,
  );
  return (
    <svg className="scatter" viewBox={`0 0 720 ${height}`} role="img" aria-label={said}>
      <path
        className="scatter-doubt"
        d={`M${x(scatter.mean - scatter.meanDoubt)} 12V${height - 34}H${x(scatter.mean + scatter.meanDoubt)}V12Z`}
      />
      <path className="scatter-mean" d={`M${x(scatter.mean)} 8V${height - 34}`} />
      {rows.map((row, i) => (
        <g key={i === 0 ? 'careful' : 'hurried'} className={i === 0 ? 'scatter-careful' : 'scatter-hurried'}>
          <path className="scatter-base" d={`M${LEFT - 12} ${(i + 1) * ROW}H${RIGHT + 12}`} />
          <text x={LEFT - 22} y={(i + 1) * ROW - 6} textAnchor="end">
            {i === 0 ? ten.careful : ten.hurried}
          </text>
          {row.map((mm, at) => (
            <circle
              // Readings are told apart by their place in the row only.
              key={at}
              cx={x(mm)}
              cy={
                (i + 1) * ROW - 10 - 2.1 * DOT * row.slice(0, at).filter((other) => isSame(other, mm)).length
              }
              r={DOT - 0.5}
            />
          ))}
        </g>
      ))}
      <text x={x(low)} y={height - 10} textAnchor="start">
        {lengthText(low, ruler)}
      </text>
      <text x={x(high)} y={height - 10} textAnchor="end">
        {lengthText(high, ruler)}
      </text>
    </svg>
  );
}

/** mm. Nearer to each other than any display steps. */
function isSame(one: number, other: number): boolean {
  return Math.abs(one - other) < 0.001;
}
