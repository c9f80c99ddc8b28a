/**
 * Writes the paths of an SVG shorter: a tenth of a pixel, every point from the one before. Rounded places are added up, so that
 * nothing drifts. For a picture that is replaced in a moment; the commands M, L, A, Q, H, V and Z in either case.
 */

/** How many numbers a command takes. */
const NUMBERS: Readonly<Record<string, number>> = { m: 2, l: 2, a: 7, q: 4, h: 1, v: 1 };

type Point = { readonly x: number; readonly y: number };

/** Shortens every path of an SVG text. */
export function withShorterPaths(svg: string): string {
  return svg.replace(/ d="([^"]*)"/g, (_, d: string) => ` d="${shorterPath(d)}"`);
}

/** Shortens one path's data. */
export function shorterPath(d: string): string {
  let at: Point = { x: 0, y: 0 };
  let shown: Point = at;
  let start: { at: Point; shown: Point } = { at, shown };
  let text = '';
  const steps = (points: readonly Point[]): string => {
    const from = shown;
    return numbersText(
      points.flatMap((point, i) => {
        const step = { x: tenth(point.x - from.x), y: tenth(point.y - from.y) };
        if (i === points.length - 1) shown = { x: tenth(from.x + step.x), y: tenth(from.y + step.y) };
        return [step.x, step.y];
      }),
    );
  };
  for (const [, command = '', rest = ''] of d.matchAll(/([A-Za-z])([^A-Za-z]*)/g)) {
    const kind = command.toLowerCase();
    if (kind === 'z') {
      ({ at, shown } = start);
      text += 'z';
      continue;
    }
    const count = NUMBERS[kind];
    if (count === undefined) throw new Error(`A path has the command ${command}, which is not known here.`);
    const all = (rest.match(/-?(?:\d+\.?\d*|\.\d+)/g) ?? []).map(Number);
    const base = command === kind ? at : { x: 0, y: 0 };
    for (let i = 0; i < all.length; i += count) {
      const own = all.slice(i, i + count);
      const to = endOf(kind, own, command === kind, at);
      const control = { x: base.x + (own[0] ?? 0), y: base.y + (own[1] ?? 0) };
      const head =
        kind === 'a' ? numbersText([tenth(own[0] ?? 0), tenth(own[1] ?? 0), ...own.slice(2, 5)]) : '';
      const tail = steps(kind === 'q' ? [control, to] : [to]);
      const letter = kind === 'h' || kind === 'v' ? 'l' : kind;
      text += `${letter}${head}${head === '' || tail.startsWith('-') ? '' : ' '}${tail}`;
      at = to;
      if (kind === 'm') start = { at, shown };
    }
  }
  return text;
}

function endOf(kind: string, own: readonly number[], isRelative: boolean, at: Point): Point {
  const base = isRelative ? at : { x: 0, y: 0 };
  if (kind === 'h') return { x: base.x + (own[0] ?? 0), y: at.y };
  if (kind === 'v') return { x: at.x, y: base.y + (own[0] ?? 0) };
  return { x: base.x + (own.at(-2) ?? 0), y: base.y + (own.at(-1) ?? 0) };
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10 + 0;
}

/** Numbers side by side; a minus parts them as well as a space. */
function numbersText(values: readonly number[]): string {
  return values
    .map((value) => String(value).replace(/^(-?)0\./, '$1.'))
    .reduce((text, next) => (text === '' || next.startsWith('-') ? text + next : `${text} ${next}`), '');
}
