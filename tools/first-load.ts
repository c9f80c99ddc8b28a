/**
 * What a browser needs from dist/ before the first editable field: index.html, its style sheets, its scripts, what the page's own
 * scripts load as soon as the first picture is painted, and everything they import statically. Read out of the built files
 * themselves, not out of the bundler's opinion. What is imported on demand (`import()`) further in, fonts and icons are not part
 * of it.
 */
import { readFileSync, readdirSync } from 'node:fs';
import { join, posix } from 'node:path';
import { parseSync } from 'vite';

export type FirstLoad = {
  /** Paths inside dist/, in the order they are found. */
  readonly needed: readonly string[];
  /** Fonts that the needed style sheets name: the browser fetches those it uses, the text shows before. */
  readonly fonts: readonly string[];
  /** Every other script, style sheet and WebAssembly module: loaded when asked for. */
  readonly later: readonly string[];
};

export function firstLoad(dist: string): FirstLoad {
  const read = (path: string) => readFileSync(join(dist, path), 'utf8');
  const needed = new Set<string>(['index.html']);
  const html = read('index.html');
  const linked = linkedFrom(html).map((address) => posix.normalize(address));
  const loaded = linked.filter((path) => path.endsWith('.js')).flatMap((path) => loadedBy(path, read(path)));
  for (const path of [...linked, ...loaded]) addWithImports(path, needed, read);
  if (![...needed].some((path) => path.endsWith('.js')))
    throw new Error('dist/index.html loads no script: is it built?');

  const sheets = [...needed].filter((path) => path.endsWith('.css'));
  const fonts = new Set(sheets.flatMap((sheet) => fontsOf(sheet, read(sheet))));
  const later = filesIn(dist).filter((path) => /\.(js|css|wasm)$/.test(path) && !needed.has(path));
  return { needed: [...needed], fonts: [...fonts], later };
}

/** Scripts, preloaded modules and style sheets of the page. */
function linkedFrom(html: string): string[] {
  const tags = html.match(/<(?:script|link)\b[^>]*>/g) ?? [];
  return tags.flatMap((tag) => {
    const isNeeded = tag.startsWith('<script') || /rel="(?:stylesheet|modulepreload|preload)"/.test(tag);
    const address = /\s(?:src|href)="([^"]+)"/.exec(tag)?.[1];
    return isNeeded && address !== undefined && !/\.woff2?$/.test(address) ? [address] : [];
  });
}

/** What the page's own script loads: the bundler lists it in the script, style sheets as well. */
function loadedBy(path: string, code: string): string[] {
  const { module } = parseSync(path, code, { sourceType: 'module' });
  const imported = module.dynamicImports.map(({ moduleRequest }) =>
    code.slice(moduleRequest.start + 1, moduleRequest.end - 1),
  );
  const sheets = [...code.matchAll(/["'`](\.\/[^"'`]+\.css)["'`]/g)].map((match) => match[1] ?? '');
  return [...imported, ...sheets].map((address) => posix.join(posix.dirname(path), address));
}

function addWithImports(path: string, found: Set<string>, read: (path: string) => string): void {
  if (found.has(path)) return;
  found.add(path);
  if (!path.endsWith('.js')) return;
  for (const address of staticImportsOf(path, read(path))) {
    addWithImports(posix.join(posix.dirname(path), address), found, read);
  }
}

export function staticImportsOf(path: string, code: string): string[] {
  const { module, errors } = parseSync(path, code, { sourceType: 'module' });
  if (errors.length > 0) throw new Error(`${path} cannot be read: ${errors[0]?.message ?? ''}`);
  const imported = module.staticImports.map((statement) => statement.moduleRequest.value);
  const passedOn = module.staticExports.flatMap((statement) =>
    statement.entries.flatMap((entry) => (entry.moduleRequest === null ? [] : [entry.moduleRequest.value])),
  );
  return [...new Set([...imported, ...passedOn])];
}

function fontsOf(sheet: string, css: string): string[] {
  const addresses = [...css.matchAll(/url\(\s*["']?([^"')]+\.woff2)["']?\s*\)/g)].map(
    (match) => match[1] ?? '',
  );
  return addresses.map((address) => posix.join(posix.dirname(sheet), address));
}

function filesIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => posix.relative(folder, posix.join(entry.parentPath, entry.name)))
    .sort();
}
