import axe from 'axe-core';
import { launchBrowser } from './tests/support/browser-launch.ts';
import { manyJob } from './tests/support/many-job.ts';
const job = manyJob({ keys: 3, cylinders: 3, chambers: 6, parts: 150, seed: 5 });
job.title='Three doors';
job.cylinders.forEach((c,i)=>{c.label=['Boat house','Oil store','Lamp room'][i]!});
job.keys.forEach((c,i)=>{c.label=['Key on twine','Brass key','Bent key'][i]!});
for (const p of job.parts) if (p.id.includes('bottom-pin')) { delete p.length; p.label='bottom pin'; }
const browser = await launchBrowser({ webgl: false });
for (const [name, viewport, colorScheme] of [['tab',{width:768,height:1000},'light'],['phone',{width:375,height:812},'dark'],['tiny',{width:320,height:700},'light'],['dark',{width:1440,height:900},'dark']] as const) {
  const context = await browser.newContext({ viewport, colorScheme, reducedMotion:'reduce' });
  await context.route('**/examples/lighthouse.json', (r) => r.fulfill({ json: job }));
  const page = await context.newPage();
  page.on('console', m => m.type()==='error' && console.log(name, m.text()));
  page.on('pageerror', e => console.log(name, 'ERR', e.message));
  await page.goto('http://localhost:4571/#parts');
  await page.getByRole('checkbox', { name: "A loose pin's crown may be filed" }).check();
  await page.getByRole('button', { name: 'Choose the best parts' }).click();
  await page.locator('.choice-answer').first().waitFor();
  await page.getByRole('button', { name: /Others for chamber 2/ }).click();
  await page.locator('.alternative').first().waitFor();
  await page.getByRole('button', { name: 'Fill in the table' }).click();
  await page.locator('.pair-cells').waitFor();
  await page.getByRole('button', { name: /Brass key in Oil store/ }).click();
  await page.getByRole('button', { name: 'Choose the keys too' }).click();
  await page.locator('.together').waitFor();
  await page.evaluate(axe.source);
  console.log(name, await page.evaluate(async () => { const v=(await (window as any).axe.run({include:['.match','.bench-choice']})).violations; return JSON.stringify(v.map((x:any)=>[x.id, x.nodes.map((n:any)=>n.html+n.failureSummary)])) + ((()=>{const w=document.documentElement.clientWidth; if (document.documentElement.scrollWidth<=w) return 'fits'; return [...document.querySelectorAll('#root *')].filter(e=>e.getBoundingClientRect().right>w+0.5&&e.getBoundingClientRect().width>0&&!e.closest('svg')).map(e=>e.tagName+'.'+e.className+Math.round(e.getBoundingClientRect().right)).slice(0,12).join(' | ')})()); }));
  await page.getByRole('button', { name: 'Put these in the plan', exact: true }).click();
  await page.waitForTimeout(600);
  await page.locator('.one-pair').scrollIntoViewIfNeeded();
  if (name==='dark') { await page.locator('.filing').evaluate(e=>e.scrollIntoView()); }
  await page.screenshot({ path: `/tmp/shots-match-${name}.png`, fullPage: name!=='dark' });
  if (name==='dark') {
    await page.goto('http://localhost:4571/#check'); await page.waitForTimeout(1500);
    await page.screenshot({ path: `/tmp/shots-match-check.png` });
  }
  await context.close();
}
await browser.close();
