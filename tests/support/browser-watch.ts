/**
 * Watches a browser context for what must never happen: errors on the console, uncaught errors, violations of the content
 * security policy, requests that leave the origin, answers that say the file is missing.
 */
import type { BrowserContext, Page } from 'playwright-core';

export type Problem = {
  readonly kind: 'console' | 'uncaught' | 'policy' | 'off origin' | 'failed request';
  readonly text: string;
};

export type Watch = {
  readonly problems: readonly Problem[];
  /** Every address asked for, in order. */
  readonly requests: readonly string[];
};

/** Name of the function the page reports violations with. */
const reporter = '__reportPolicyViolation';

export async function watchContext(context: BrowserContext, origin: string): Promise<Watch> {
  const problems: Problem[] = [];
  const requests: string[] = [];
  const add = (kind: Problem['kind'], text: string) => {
    problems.push({ kind, text });
  };

  await context.exposeFunction(reporter, (text: string) => {
    add('policy', text);
  });
  await context.addInitScript((name) => {
    document.addEventListener('securitypolicyviolation', (event) => {
      const where = event.sourceFile === '' ? '' : ` at ${event.sourceFile}:${String(event.lineNumber)}`;
      const report = (window as unknown as Record<string, (text: string) => void>)[name];
      report?.(`${event.effectiveDirective} blocked ${event.blockedURI} ${event.sample}${where}`);
    });
  }, reporter);

  context.on('request', (request) => {
    const address = request.url();
    requests.push(address);
    if (/^(data|blob|about):/.test(address)) return;
    if (new URL(address).origin !== origin) add('off origin', address);
  });
  context.on('requestfailed', (request) => {
    // A page that goes away takes its requests with it.
    const reason = request.failure()?.errorText ?? '';
    if (!reason.includes('ERR_ABORTED')) add('failed request', `${request.url()} ${reason}`);
  });
  context.on('response', (response) => {
    if (response.status() >= 400) add('failed request', `${response.url()} ${String(response.status())}`);
  });
  // Console messages of dedicated workers arrive here too.
  context.on('console', (message) => {
    if (message.type() === 'error') add('console', `${message.text()} (${message.location().url})`);
  });
  context.on('weberror', (event) => {
    add('uncaught', event.error().stack ?? event.error().message);
  });
  return { problems, requests };
}

/** Gives reports that are still on their way the time to arrive; a page without scripts, or one that hangs, is not waited for. */
export async function settle(page: Page): Promise<void> {
  if (page.isClosed()) return;
  const turned = page.evaluate(() => new Promise((done) => setTimeout(done, 0))).catch(() => undefined);
  await Promise.race([turned, new Promise((done) => setTimeout(done, 1000))]);
}

export function describeProblems(problems: readonly Problem[]): string {
  return problems.map(({ kind, text }) => `[${kind}] ${text}`).join('\n');
}
