/** The app's files on the device: whole or not at all, never two builds mixed. Caches and network are made up. */
import { beforeEach, describe, expect, test } from 'vitest';
import { pageCache } from '../../src/offline/page-cache.ts';

const SCOPE = 'http://localhost:4000/tool/';

class FakeCaches {
  readonly stores = new Map<string, Map<string, Response>>();
  open(name: string): Promise<Cache> {
    const store = this.stores.get(name) ?? new Map<string, Response>();
    this.stores.set(name, store);
    const cache = {
      put: (url: string, response: Response) => Promise.resolve(void store.set(url, response)),
      match: (url: string) => Promise.resolve(store.get(url)?.clone()),
    };
    return Promise.resolve(cache as unknown as Cache);
  }
  keys(): Promise<string[]> {
    return Promise.resolve([...this.stores.keys()]);
  }
  delete(name: string): Promise<boolean> {
    return Promise.resolve(this.stores.delete(name));
  }
}

let caches: FakeCaches;
let asked: Request[];
let missing: string | null;
const fetch = (request: Request): Promise<Response> => {
  asked.push(request);
  return Promise.resolve(
    request.url.endsWith(missing ?? '\0')
      ? new Response('', { status: 404 })
      : new Response(`content of ${request.url}`),
  );
};
const make = (version: string, files = ['./', 'assets/a.js', 'examples/x.json']) =>
  pageCache({ version, files }, { caches, fetch, scope: SCOPE });
const navigation = (url: string) => Object.defineProperty(new Request(url), 'mode', { value: 'navigate' });

beforeEach(() => {
  caches = new FakeCaches();
  asked = [];
  missing = null;
});

describe('the kept app', () => {
  test('fetches every file once, past the browser cache', async () => {
    await make('one').install();
    expect(asked.map(({ url }) => url)).toEqual([SCOPE, `${SCOPE}assets/a.js`, `${SCOPE}examples/x.json`]);
    expect(asked.every(({ cache }) => cache === 'reload')).toBe(true);
  });

  test('answers from the device without asking again', async () => {
    const cache = make('one');
    await cache.install();
    asked = [];
    const page = await cache.answer(navigation(`${SCOPE}?from=elsewhere#check`));
    expect(await page.text()).toBe(`content of ${SCOPE}`);
    const file = await cache.answer(new Request(`${SCOPE}assets/a.js?v=2`));
    expect(await file.text()).toBe(`content of ${SCOPE}assets/a.js`);
    expect(asked).toEqual([]);
  });

  test('asks the network for what is not part of the build', async () => {
    const cache = make('one');
    await cache.install();
    asked = [];
    await cache.answer(new Request(`${SCOPE}other.txt`));
    expect(asked.map(({ url }) => url)).toEqual([`${SCOPE}other.txt`]);
  });

  test('keeps nothing of a build that is not complete, and leaves the one before alone', async () => {
    await make('one').install();
    missing = 'a.js';
    await expect(make('two').install()).rejects.toThrow('404');
    expect([...caches.stores.keys()]).toEqual(['shearsight-one']);
  });

  test('throws away older builds, and only those', async () => {
    await make('one').install();
    await make('two').install();
    await caches.open('of another program');
    await make('two').clean();
    expect([...caches.stores.keys()]).toEqual(['shearsight-two', 'of another program']);
  });

  test.each([
    ['of another origin', new Request('https://example.org/tool/'), false],
    ['of another folder', new Request('http://localhost:4000/else/a.js'), false],
    ['a post', new Request(SCOPE, { method: 'POST' }), false],
    ['its own', new Request(`${SCOPE}assets/a.js`), true],
  ])('a request %s', (_, request, is) => expect(make('one').concerns(request)).toBe(is));
});
