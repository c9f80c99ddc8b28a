/** Learn: every lesson solved from the keyboard, with WebGL and without, wrong answers built, links, narrow and dark, the person's job left alone. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { answerOf, roundOf } from '../../src/model/learning/ask.ts';
import { LESSON_IDS, type LessonId, type Step } from '../../src/model/learning/lesson.ts';
import { lessonLink } from '../../src/model/learning/lesson-link.ts';
import { formatLength } from '../../src/model/units/format-length.ts';
import { axeViolations } from '../support/axe.ts';
import { desk, openApp } from '../support/browser.ts';

const SEED = 4711;
const unit = 'in' as const;
const eventually = <T>(read: () => Promise<T>) => expect.poll(read, { timeout: 20_000 });

function openLesson(lesson: LessonId, options: Parameters<typeof openApp>[0] = {}) {
  const path = lessonLink({ lesson, seed: SEED, unit });
  return openApp({ viewport: desk, webgl: false, path, ...options });
}

const focused = (page: Page) => page.evaluate(() => document.activeElement?.textContent ?? '');

/** From the question on, with Tab, arrows, letters and Enter only. */
async function predictRight(page: Page, step: Step) {
  await eventually(() => page.evaluate(() => document.activeElement?.id)).toBe('question');
  await page.keyboard.press('Tab');
  const answer = answerOf(step);
  if (step.kind === 'choose') {
    await page.keyboard.press('Space');
    for (let i = 0; i < step.options.indexOf(String(answer)); i++) await page.keyboard.press('ArrowRight');
  } else if (step.kind === 'length') {
    await page.keyboard.type(formatLength(Number(answer), { unit, form: 'bench' }));
  } else {
    const presses = Math.round(Number(answer) / 0.0127);
    const key = presses > 0 ? 'ArrowRight' : 'ArrowLeft';
    for (let i = 0; i < Math.abs(presses); i++) await page.keyboard.press(key);
  }
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  const end = page.getByRole('button', { name: 'Show the end' });
  if ((await end.count()) > 0) await page.keyboard.press('Enter');
  await eventually(() => focused(page)).toMatch(/That is what happens\./u);
}

/** What is read out, what stands under the picture and what is written in it: the same amounts. */
async function expectSameNumbers(page: Page, lesson: LessonId) {
  const under = await page.locator('.scene-said').innerText();
  expect(under.length, lesson).toBeGreaterThan(10);
  const heard = await page.locator('.question > [role=status]').innerText();
  const amounts = under.match(/\d*\.\d+(?= in)/gu) ?? [];
  for (const amount of amounts) expect(heard, lesson).toContain(amount);
  const picture = page.locator('.scene-close-up svg');
  if ((await picture.count()) === 0) return;
  await picture.locator('text').first().waitFor();
  const written = (await picture.locator('text').allTextContents()).join(' ');
  const level = /level/u.test(under) && /level|\.0000/u.test(written);
  expect(
    level || amounts.some((amount) => written.includes(amount)),
    `${lesson}: ${under} / ${written}`,
  ).toBe(true);
}

test.each([
  ['without', false],
  ['with', true],
] as const)(
  '%s WebGL every lesson is solved from the keyboard, and the job stays as it was',
  async (_, webgl) => {
    const { page } = await openLesson(LESSON_IDS[0], { webgl });
    await page.locator('#question').focus();
    for (const lesson of LESSON_IDS) {
      const { steps } = roundOf(lesson, SEED, unit);
      for (const [i, step] of steps.entries()) {
        await page.locator('.scene svg.drawing').first().waitFor();
        await predictRight(page, step);
        expect(await page.locator('.scene').count(), lesson).toBe(1);
        await expectSameNumbers(page, lesson);
        // the next thing to do is the next stop of Tab
        await page.keyboard.press('Tab');
        if (i < steps.length - 1) {
          expect(await focused(page)).toBe('Next question');
          await page.keyboard.press('Enter');
        }
      }
      if (lesson === LESSON_IDS.at(-1)) break;
      await page.keyboard.press('Tab');
      expect(await focused(page)).toMatch(/^Next lesson: /u);
      await page.keyboard.press('Enter');
    }
    expect(await page.locator('.lesson-seen').count()).toBe(LESSON_IDS.length);
    expect(await page.locator('.saved').innerText()).toBe('not changed yet');
    await page.reload();
    await eventually(() => page.locator('.lesson-seen').count()).toBe(LESSON_IDS.length);
    await page.getByRole('button', { name: 'Forget which were seen' }).press('Enter');
    expect(await page.locator('.lesson-seen').count()).toBe(0);
  },
);

describe('a wrong answer', () => {
  test('is built and tried beside the true one; a new round has other numbers', async () => {
    const { page } = await openLesson('key-floor');
    await page.getByRole('button', { name: 'Lock it in and try' }).click();
    expect(await page.locator('.question-lacks').innerText()).toMatch(/^Write a length first/u);
    const given = /.* (\.\d+) in across.* there is (\.\d+) in .* leaves (\.\d+) in/u;
    const [, plug, , root] = given.exec(await page.locator('#question').innerText()) ?? [];
    // the metal under the key forgotten
    await page.getByRole('textbox', { name: 'Your length' }).fill((Number(plug) - Number(root)).toFixed(4));
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Show the end' }).click();
    expect(await page.locator('.scene').count()).toBe(2);
    const [own, truth] = await page.locator('.scene').allInnerTexts();
    expect(own).toMatch(/Your answer, built[\s\S]*high[\s\S]*The plug does not turn/u);
    expect(truth).toMatch(/As it is[\s\S]*level with the line[\s\S]*The plug turns/u);
    const before = await page.locator('#question').innerText();
    await page.getByRole('button', { name: 'The same with new numbers' }).click();
    expect(await page.locator('#question').innerText()).not.toBe(before);
    expect(page.url()).toMatch(/#learn\/key-floor\/4712\/in$/u);
  });

  test('moves in a few still pictures where motion is reduced, then says what came of it', async () => {
    const { page } = await openLesson('which-part');
    await page.getByRole('radio', { name: 'That one, and the longer one too' }).check();
    await page.getByRole('button', { name: 'Lock it in and try' }).click();
    await eventually(() => page.locator('.question > [role=status]').innerText()).toBe('The turn is tried.');
    await eventually(() => page.locator('.question-result').innerText()).toMatch(
      /^What happens: Only the one/u,
    );
  });
});

test('a link brings up the same round, in its unit', async () => {
  const path = '#learn/deep-cut/77/mm';
  const texts: string[] = [];
  for (let i = 0; i < 2; i++) {
    const { page } = await openApp({ viewport: desk, webgl: false, path });
    await page.locator('.scene svg.drawing').first().waitFor();
    texts.push(
      (await page.locator('.question').innerText()) + (await page.locator('.scene svg').innerHTML()),
    );
    expect(await page.getByRole('radio', { name: 'millimetres' }).isChecked()).toBe(true);
    expect(page.url()).toContain(path);
  }
  expect(texts[0]).toContain(' mm');
  expect(texts[1]).toBe(texts[0]);
});

test('a finding in Check leads to the lesson that explains it', async () => {
  const { page } = await openApp({ viewport: desk, webgl: false, path: '#check' });
  const link = page.getByRole('link', { name: /^Explain this: / }).first();
  await link.press('Enter');
  await page.locator('.learn #question').waitFor();
  expect(page.url()).toMatch(/#learn\/[a-z-]+\/1\/in$/u);
});

test.each([
  ['light', { width: 375, height: 812 }, 'ball-on-sides'],
  ['dark', { width: 320, height: 700 }, 'deep-cut'],
] as const)(
  '%s, narrow: nothing sticks out, nothing axe finds wrong',
  async (colorScheme, viewport, lesson) => {
    const { page } = await openLesson(lesson, { viewport, colorScheme, context: { bypassCSP: true } });
    await page.locator('.scene svg.drawing').first().waitFor();
    const check = async () => {
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(
        viewport.width,
      );
      expect(await axeViolations(page)).toEqual([]);
    };
    await check();
    const wrong = roundOf(lesson, SEED, unit).steps[0];
    if (wrong?.kind === 'choose') {
      const other = wrong.options.findIndex((option) => option !== answerOf(wrong));
      await page.locator('.question .choice-input').nth(other).check();
    } else {
      const slider = page.getByRole('slider', { name: 'Where the split will stand' });
      for (let i = 0; i < 12; i++) await slider.press('ArrowLeft');
      expect(await page.locator('.learn-place-said').innerText()).toBe('.0060 in below the line');
    }
    await page.getByRole('button', { name: 'Lock it in and try' }).click();
    await page.getByRole('button', { name: 'Show the end' }).click();
    expect(await page.locator('.scene').count()).toBe(2);
    await check();
  },
);

test('with text twice as large each kind of question is answered from the keyboard, and nothing sticks out', async () => {
  for (const lesson of ['high-or-low', 'key-floor', 'ball-on-sides'] as const) {
    const { page } = await openLesson(lesson, { viewport: { width: 1280, height: 800 } });
    await page.evaluate(() => document.documentElement.style.setProperty('font-size', '200%'));
    await page.locator('#question').focus();
    const [step] = roundOf(lesson, SEED, unit).steps;
    if (step !== undefined) await predictRight(page, step);
    const beyond = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(beyond, lesson).toBeLessThanOrEqual(0);
    const cut = await page
      .locator('.lesson :is(p, h2, h3, button, label)')
      .evaluateAll(
        (all) => all.filter((each) => each.scrollWidth > each.clientWidth + 1 && each.clientWidth > 1).length,
      );
    expect(cut, lesson).toBe(0);
  }
});
