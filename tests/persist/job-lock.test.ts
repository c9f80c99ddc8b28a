import { describe, expect, it } from 'vitest';
import { type JobLockOptions, lockJob, TAKEN_OVER } from '../../src/persist/job-lock.ts';
import { FakeChannels, FakeLocks } from '../support/fake-locks.ts';

/** A browser with tabs; each notes what happens to it. */
class Browser {
  readonly locks = new FakeLocks();
  readonly channels = new FakeChannels();
  readonly log: string[] = [];

  options(tab: string, onAsked: JobLockOptions['onAsked'] = () => Promise.resolve()): JobLockOptions {
    return {
      locks: this.locks,
      openChannel: this.channels.open,
      patienceMs: 20,
      onAsked: () => {
        this.log.push(`${tab} was asked`);
        return onAsked();
      },
      onLost: (message) => this.log.push(`${tab}: ${message}`),
    };
  }
}

const settle = () => new Promise((resolve) => setTimeout(resolve, 5));

describe('the lock of a job', () => {
  it('belongs to the first tab that asks, job by job', async () => {
    const browser = new Browser();
    expect((await lockJob('a', browser.options('one'))).kind).toBe('mine');
    expect((await lockJob('a', browser.options('two'))).kind).toBe('elsewhere');
    expect((await lockJob('b', browser.options('two'))).kind).toBe('mine');
    expect(browser.log).toEqual([]);
  });

  it('is free again when it is released', async () => {
    const browser = new Browser();
    await (await lockJob('a', browser.options('one'))).release();
    await settle();
    expect((await lockJob('a', browser.options('two'))).kind).toBe('mine');
    expect(browser.log).toEqual([]);
  });

  it('is taken over after the other tab has finished writing, which is then told', async () => {
    const browser = new Browser();
    const finish = async () => {
      await settle();
      browser.log.push('one has written');
    };
    await lockJob('a', browser.options('one', finish));
    const other = await lockJob('a', browser.options('two'));
    const taken = await other.takeOver();
    browser.log.push(`two: ${taken.kind}`);
    expect(browser.log).toEqual(['one was asked', 'one has written', `one: ${TAKEN_OVER}`, 'two: mine']);
  });

  it('is let go of even when the last write fails', async () => {
    const browser = new Browser();
    await lockJob(
      'a',
      browser.options('one', () => Promise.reject(new Error('disk'))),
    );
    const taken = await (await lockJob('a', browser.options('two'))).takeOver();
    expect([taken.kind, browser.log]).toEqual(['mine', ['one was asked', `one: ${TAKEN_OVER}`]]);
  });

  it('is taken from a tab that does not answer, which is told once', async () => {
    const browser = new Browser();
    await lockJob(
      'a',
      browser.options('one', () => new Promise(() => undefined)),
    );
    const taken = await (await lockJob('a', browser.options('two'))).takeOver();
    await settle();
    expect([taken.kind, browser.log]).toEqual(['mine', ['one was asked', `one: ${TAKEN_OVER}`]]);
  });

  it('can be taken back', async () => {
    const browser = new Browser();
    await lockJob('a', browser.options('one'));
    await (await lockJob('a', browser.options('two'))).takeOver();
    const again = await lockJob('a', browser.options('one'));
    expect((await again.takeOver()).kind).toBe('mine');
    expect(browser.log).toEqual([
      'one was asked',
      `one: ${TAKEN_OVER}`,
      'two was asked',
      `two: ${TAKEN_OVER}`,
    ]);
  });

  it('asks nobody about another job', async () => {
    const browser = new Browser();
    await lockJob('a', browser.options('one'));
    await lockJob('b', browser.options('two'));
    await (await lockJob('b', browser.options('three'))).takeOver();
    expect(browser.log).toEqual(['two was asked', `two: ${TAKEN_OVER}`]);
  });

  it('leaves no channel open behind it', async () => {
    const browser = new Browser();
    const lock = await lockJob('a', browser.options('one'));
    expect(browser.channels.openCount).toBe(1);
    await lock.release();
    await settle();
    expect(browser.channels.openCount).toBe(0);
  });

  it('guards nothing where the browser has no locks, and says so', async () => {
    const lock = await lockJob('a', { ...new Browser().options('one'), locks: null });
    expect([lock.kind, (await lock.takeOver()).kind]).toEqual(['unguarded', 'unguarded']);
  });

  it('works without a channel: the other tab is cut off after a while', async () => {
    const browser = new Browser();
    const silent = { openChannel: () => null };
    await lockJob('a', { ...browser.options('one'), ...silent });
    const taken = await (await lockJob('a', { ...browser.options('two'), ...silent })).takeOver();
    await settle();
    expect([taken.kind, browser.log]).toEqual(['mine', [`one: ${TAKEN_OVER}`]]);
  });
});
