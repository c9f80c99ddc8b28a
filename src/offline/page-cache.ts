/**
 * The whole app kept on the device: every file of one build is fetched once, and answered from there until the next build is
 * complete and a person (or the next start) takes it. What is asked of another origin is never touched here; this page asks
 * nothing of any. Knows the browser only through what it is given, so that it can be tried without one.
 */

export type Build = {
  /** Differs whenever any file does. */
  readonly version: string;
  /** Addresses of its files relative to the page; the page itself is the empty one. */
  readonly files: readonly string[];
};

export type CacheSurroundings = {
  readonly caches: Pick<CacheStorage, 'open' | 'keys' | 'delete'>;
  readonly fetch: (request: Request) => Promise<Response>;
  /** The folder of the page, ending in a slash. */
  readonly scope: string;
};

export type PageCache = {
  /** Fetches every file; fails, and keeps nothing, when one cannot be had. */
  readonly install: () => Promise<void>;
  /** Throws away what older builds left. */
  readonly clean: () => Promise<void>;
  /** Whether a request is for this app. */
  readonly concerns: (request: Request) => boolean;
  readonly answer: (request: Request) => Promise<Response>;
};

const PREFIX = 'shearsight-';

/** Makes the cache of one build. */
export function pageCache(build: Build, { caches, fetch, scope }: CacheSurroundings): PageCache {
  const name = `${PREFIX}${build.version}`;
  const page = new URL('./', scope).href;
  return {
    install: async () => {
      const cache = await caches.open(name);
      try {
        await Promise.all(
          build.files.map(async (file) => {
            const url = new URL(file, scope).href;
            // Past the browser's own cache: a file of the build before must not get in.
            const response = await fetch(new Request(url, { cache: 'reload' }));
            if (!response.ok) throw new Error(`${url}: ${response.status}`);
            await cache.put(url, response);
          }),
        );
      } catch (error) {
        await caches.delete(name);
        throw error;
      }
    },
    clean: async () => {
      const old = (await caches.keys()).filter((each) => each.startsWith(PREFIX) && each !== name);
      await Promise.all(old.map((each) => caches.delete(each)));
    },
    concerns: ({ method, url }) => method === 'GET' && url.startsWith(page),
    answer: async (request) => {
      const cache = await caches.open(name);
      const url = request.mode === 'navigate' ? page : request.url.split(/[?#]/, 1)[0];
      return (await cache.match(url ?? page)) ?? fetch(request);
    },
  };
}
