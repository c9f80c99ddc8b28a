/**
 * The example's long section as SVG text, drawn at build time by the same code that draws it on screen. tools/draw-example.ts
 * does the drawing; it is loaded through Vite because it and what it imports are TypeScript.
 */
import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

const at = (path: string) => fileURLToPath(new URL(`../${path}`, import.meta.url));

type DrawExample = { readonly drawExample: (jobText: string) => string };

export async function drawExampleSection(): Promise<string> {
  const drawer = at('tools/draw-example.ts');
  const example = at('public/examples/lighthouse.json');
  if (!existsSync(drawer) || !existsSync(example)) return '';
  const { module } = await runnerImport<DrawExample>(drawer, { configFile: false, logLevel: 'error' });
  const svg = checked(module.drawExample(await readFile(example, 'utf8')));
  return `<div class="first-picture">\n${svg.trimEnd()}\n</div>`;
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
