/**
 * Draws the picture that stands beside a link to the app, from the section that the build puts into the page: npx tsx
 * tools/draw-social.ts, after `npm run build`.
 */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { launchBrowser } from '../tests/support/browser-launch.ts';
import { startServer } from './static-server.mjs';

/** CSS px: what most places that show links ask for. */
const SIZE = { width: 1200, height: 630 };

const STYLE = `
  body { display: grid; grid-template-columns: 25rem 1fr; align-items: center; height: 100vh; background: var(--paper); }
  header { padding-left: 4rem; }
  h1 { margin: 0 0 1.5rem; font-size: 3.75rem; font-weight: 600; letter-spacing: -0.02em; }
  p { margin: 0; font-size: 1.75rem; line-height: 1.3; text-wrap: balance; }
  main { display: grid; height: 100%; padding: 1.5rem; border-left: 1px solid var(--rule); background: var(--sheet); }
  main > svg { width: 100%; height: 100%; }
`;

const server = await startServer({ root: fileURLToPath(new URL('../dist/', import.meta.url)) });
const browser = await launchBrowser({ webgl: false });
// The picture of before the app: no script is let in, and what is added here would be against the page's policy.
const context = await browser.newContext({ viewport: SIZE, bypassCSP: true, serviceWorkers: 'block' });
await context.route('**/*.js', (route) => route.abort());
const page = await context.newPage();
await page.goto(server.url);
await page.evaluate((style) => {
  const section = document.querySelector('.first-picture > svg');
  const [header, main, sheet] = ['header', 'main', 'style'].map((tag) => document.createElement(tag));
  for (const [tag, text] of [
    ['h1', 'Shearsight'],
    ['p', 'Where every pin stack meets its shear line, before the lock goes back together'],
  ] as const) {
    const line = document.createElement(tag);
    line.textContent = text;
    header?.append(line);
  }
  if (section !== null) main?.append(section);
  if (sheet !== undefined) {
    sheet.textContent = style;
    document.head.append(sheet);
  }
  document.body.replaceChildren(...[header, main].filter((each) => each !== undefined));
}, STYLE);
await page.evaluate(() => document.fonts.ready);
const png = await page.screenshot();
writeFileSync(new URL('../public/social.png', import.meta.url), png);
await browser.close();
await server.close();
