/**
 * What browser tests (tests/e2e/*.spec.ts) start from: one browser per spec file and kind, one fresh context per page, the
 * built app from the server that browser-setup.ts started. A test fails at its end when its pages had an error on the
 * console, a violation of the content security policy, a request off the origin or a failed one, unless it said that it expects it.
 *
 *     test('the key slides in', async () => {
 *       const { page } = await openApp({ viewport: phone });
 *       await page.getByRole('button', { name: 'Slide the key in' }).click();
 *       ...
 *     });
 */
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, inject, onTestFinished } from 'vitest';
import { launchBrowser } from './browser-launch.ts';
import { describeProblems, settle, watchContext } from './browser-watch.ts';
import type { Problem, Watch } from './browser-watch.ts';

export type OpenOptions = {
  readonly webgl?: boolean;
  /** Relative to the server's address. */
  readonly path?: string;
  readonly viewport?: { readonly width: number; readonly height: number };
  readonly colorScheme?: 'light' | 'dark';
  readonly reducedMotion?: 'reduce' | 'no-preference';
  /** Another server than the one with the built app. */
  readonly baseUrl?: string;
  /** Problems that this test brings about on purpose. */
  readonly expected?: readonly RegExp[];
  readonly context?: BrowserContextOptions;
  /** Before the page is asked for: routes, scripts, a clock. */
  readonly prepare?: (context: BrowserContext) => Promise<unknown>;
};

export type OpenedPage = Watch & {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly baseUrl: string;
  /** Problems so far that were not expected; empty at the end, or the test fails. */
  readonly unexpected: () => Promise<readonly Problem[]>;
};

export const desk = { width: 1440, height: 900 } as const;
export const phone = { width: 375, height: 812 } as const;

const browsers = new Map<string, Promise<Browser>>();

function browserWith(webgl: boolean): Promise<Browser> {
  const key = webgl ? 'webgl' : 'no webgl';
  const running = browsers.get(key) ?? launchBrowser({ webgl });
  browsers.set(key, running);
  return running;
}

afterAll(async () => {
  const running = await Promise.allSettled(browsers.values());
  browsers.clear();
  for (const one of running) {
    if (one.status === 'fulfilled') await one.value.close();
  }
});

/** The address of the built app, ending in a slash. */
export function appUrl(): string {
  return inject('appUrl');
}

/** Opens a page in a context of its own and goes to `path`. The context closes, and its problems are judged, when the test ends. */
export async function openApp(options: OpenOptions = {}): Promise<OpenedPage> {
  const baseUrl = options.baseUrl ?? appUrl();
  const browser = await browserWith(options.webgl ?? true);
  const context = await browser.newContext({
    viewport: options.viewport ?? desk,
    deviceScaleFactor: 1,
    colorScheme: options.colorScheme ?? 'light',
    reducedMotion: options.reducedMotion ?? 'reduce',
    locale: 'en-GB',
    timezoneId: 'UTC',
    // Answers from the device would hide what the page really asks for; tests of being offline allow them.
    serviceWorkers: 'block',
    ...options.context,
  });
  context.setDefaultTimeout(20_000);
  const watch = await watchContext(context, new URL(baseUrl).origin);
  const expected = options.expected ?? [];
  const unexpected = async () => {
    await Promise.all(context.pages().map(settle));
    return watch.problems.filter(({ text }) => !expected.some((pattern) => pattern.test(text)));
  };
  onTestFinished(async () => {
    const problems = await unexpected();
    await context.close();
    if (problems.length > 0) throw new Error(`The page had problems:\n${describeProblems(problems)}`);
  });
  await options.prepare?.(context);
  const page = await context.newPage();
  await page.goto(new URL(options.path ?? '', baseUrl).href);
  // The picture that the build put into the page shows what the app shows: tests are about the app, where it can come.
  if (options.context?.javaScriptEnabled !== false)
    await page.locator('.first').waitFor({ state: 'detached' });
  return { page, context, baseUrl, unexpected, ...watch };
}
