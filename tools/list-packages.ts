/**
 * Lists every package that the running app is made of, with licence and size, as docs/packages.md: npx tsx tools/list-packages.ts
 * after a change of dependencies. Read from package-lock.json, so that it says what `npm ci` installs.
 */
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

type Locked = {
  readonly version?: string;
  readonly dev?: boolean;
  readonly optional?: boolean;
  /** Needed to develop; the app itself wants it on other machines only. */
  readonly devOptional?: boolean;
};
type Manifest = { readonly license?: string; readonly dependencies?: Readonly<Record<string, string>> };

const root = fileURLToPath(new URL('..', import.meta.url));
const read = (path: string): unknown => JSON.parse(readFileSync(join(root, path), 'utf8'));

export type PackageRow = {
  readonly name: string;
  /** Where it is installed: one package can be there in several versions. */
  readonly path: string;
  readonly version: string;
  readonly licence: string;
  readonly isDirect: boolean;
};

/** The packages of the running app, by name. */
export function runtimePackages(): PackageRow[] {
  const lock = read('package-lock.json') as { packages: Readonly<Record<string, Locked>> };
  const direct = new Set(Object.keys((read('package.json') as Manifest).dependencies ?? {}));
  return Object.entries(lock.packages)
    .filter(([path, { dev, devOptional }]) => path !== '' && dev !== true && devOptional !== true)
    .flatMap(([path, { version = '', optional }]): PackageRow[] => {
      const name = path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length);
      const manifest = manifestOf(path);
      // Optional packages are for other machines; they are never part of the app.
      if (manifest === null)
        return optional === true ? [] : [{ name, path, version, licence: 'not installed', isDirect: false }];
      return [
        {
          name,
          path,
          version,
          licence: manifest.license ?? 'not said',
          isDirect: direct.has(name) && path === `node_modules/${name}`,
        },
      ];
    })
    .sort((one, other) => one.name.localeCompare(other.name, 'en'));
}

function manifestOf(path: string): Manifest | null {
  try {
    return read(join(path, 'package.json')) as Manifest;
  } catch {
    return null;
  }
}

function kilobytes(path: string): string {
  const size = (folder: string): number =>
    readdirSync(folder, { withFileTypes: true }).reduce((sum, each) => {
      const path = join(folder, each.name);
      return sum + (each.isDirectory() ? size(path) : statSync(path).size);
    }, 0);
  return (size(join(root, path)) / 1024).toFixed(0);
}

function document(rows: readonly PackageRow[]): string {
  const lines = rows.map(
    ({ name, path, version, licence, isDirect }) =>
      `| ${isDirect ? `**${name}**` : name} | ${version} | ${licence} | ${kilobytes(path)} |`,
  );
  return `# Packages

What the running app is made of, made by \`npx tsx tools/list-packages.ts\`. Direct dependencies in bold; sizes are those on disk, of which
the build takes what it needs (\`npm run size\`). Versions are pinned exactly. \`npm run -s sbom\` prints a bill of materials (CycloneDX),
\`npm audit --omit=dev\` what is known against them.

| package | version | licence | kB on disk |
|---|---|---|---|
${lines.join('\n')}
`;
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  writeFileSync(join(root, 'docs', 'packages.md'), document(runtimePackages()));
