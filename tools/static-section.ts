/**
 * The example's answer and long section as a piece of the page, made at build time by the same code that makes them on screen.
 * tools/draw-example.ts does it; it is loaded through Vite because it and what it imports are TypeScript.
 */
import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

const at = (path: string) => fileURLToPath(new URL(`../${path}`, import.meta.url));

type DrawExample = {
  readonly drawExample: (
    jobText: string,
  ) => Readonly<Record<'section' | 'mark' | 'headline' | 'point', string>>;
};

export async function drawExampleSection(): Promise<string> {
  const drawer = at('tools/draw-example.ts');
  const example = at('public/examples/lighthouse.json');
  if (!existsSync(drawer) || !existsSync(example)) return '';
  const { module } = await runnerImport<DrawExample>(drawer, { configFile: false, logLevel: 'error' });
  const { section, mark, headline, point } = module.drawExample(await readFile(example, 'utf8'));
  return `<div class="desk first">
<p class="first-bar">Shearsight</p>
<div class="desk-station first-answer"><div class="first-station">
<p class="quiet">An example, invented.</p>
<p class="answer-headline">${checked(mark)}<span>${escaped(headline)}</span></p>
<div class="answer-body"><p class="answer-point">${escaped(point)}</p></div>
</div></div>
<div class="desk-section first-section">
<div class="first-picture">
${checked(section).trimEnd()}
</div>
</div>
</div>`;
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
}

/** The page's policy allows no inline style and no script: a picture that has one would arrive broken. */
function checked(svg: string): string {
  if (!svg.startsWith('<svg') || !svg.trimEnd().endsWith('</svg>'))
    throw new Error('The example is not drawn as one svg element.');
  const inline = /<(style|script)\b|\sstyle=|\son\w+=/.exec(svg);
  if (inline !== null)
    throw new Error(
      `The example's drawing has something inline that the page's policy forbids: ${inline[0]}`,
    );
  return svg;
}
