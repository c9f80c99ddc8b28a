/** Draws the icons that installed apps need from public/icon.svg. Run by hand when it changes: npx tsx tools/draw-icons.ts */
import { readFileSync, writeFileSync } from 'node:fs';
import { launchBrowser } from '../tests/support/browser-launch.ts';

const icon = readFileSync(new URL('../public/icon.svg', import.meta.url), 'utf8');
/** For a mask of any shape: the ground to the edge, the drawing within the inner four fifths. */
const full = icon
  .replace('viewBox="0 0 64 64"', 'viewBox="-8 -8 80 80"')
  .replace('<rect width="64" height="64" rx="10"', '<rect x="-8" y="-8" width="80" height="80"');

const browser = await launchBrowser({ webgl: false });
for (const [name, size, text] of [
  ['icon-192.png', 192, icon],
  ['icon-512.png', 512, icon],
  ['icon-512-full.png', 512, full],
] as const) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  await page.setContent(
    `<style>body{margin:0}svg{display:block;width:${size}px;height:${size}px}</style>${text}`,
  );
  const png = await page.screenshot({ omitBackground: true });
  writeFileSync(new URL(`../public/${name}`, import.meta.url), png);
  await page.close();
}
await browser.close();
