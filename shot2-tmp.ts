import { launchBrowser } from './tests/support/browser-launch.ts';
import { manyJob } from './tests/support/many-job.ts';
const job = manyJob({ keys: 3, cylinders: 3, chambers: 6, parts: 150, seed: 5 });
job.cylinders.forEach((c,i)=>{c.label=['Boat house','Oil store','Lamp room'][i]!});
const browser = await launchBrowser({ webgl: false });
for (const viewport of [{width:768,height:1000},{width:320,height:700}]) {
 for (const act of [false,true]) {
  const context = await browser.newContext({ viewport, reducedMotion:'reduce' });
  await context.route('**/examples/lighthouse.json', (r) => r.fulfill({ json: job }));
  const page = await context.newPage();
  await page.goto('http://localhost:4571/#parts');
  await page.getByRole('button', { name: 'Choose the best parts' }).waitFor();
  if (act) { await page.getByRole('button', { name: 'Choose the best parts' }).click(); await page.locator('.choice-answer').first().waitFor(); await page.getByRole('button', { name: 'Fill in the table' }).click();  await page.locator('.pair-cells').waitFor();}
  await page.waitForTimeout(800);
  console.log(viewport.width, act, await page.evaluate(() => { const w=document.documentElement.clientWidth; const out:string[]=[]; for (const e of document.querySelectorAll('#root *')) { const r=e.getBoundingClientRect(); if (r.right>w+0.5 && r.width>0) out.push(e.tagName+'.'+(e.getAttribute('class')??'')+' '+Math.round(r.right)); } return out.slice(0,14).join('\n')+document.documentElement.scrollWidth; }));
  await context.close();
 }
}
await browser.close();
