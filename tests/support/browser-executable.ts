/**
 * The Chromium that the browser tests and benchmarks drive: the one packed in the dev dependency @sparticuz/chromium, so
 * that nothing but Node is needed, or the one that CHROMIUM_PATH names. Of the package only the files are used: its
 * argument list switches off what the tests must see (web security, site isolation, separate processes).
 *
 * The package unpacks into the temp folder and takes whatever it finds there, of any version. So it is run in a process of its own with a
 * temp folder that belongs to this version, under node_modules/.cache; a finished one is moved into place in one step. The
 * shared libraries that Chromium needs and a bare system lacks (NSS, NSPR, expat) and a typeface come along: the package unpacks the
 * libraries only where it believes to run on Amazon Linux 2023, which is what the variable tells it.
 */
import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

export type BrowserExecutable = {
  readonly path: string;
  /** What `browser.version()` must begin with; null for a browser of the user's own. */
  readonly version: string | null;
  /** For the browser's process. */
  readonly env: Readonly<Record<string, string>>;
};

const root = fileURLToPath(new URL('../../', import.meta.url));

export async function browserExecutable(): Promise<BrowserExecutable> {
  const own = process.env['CHROMIUM_PATH'] ?? '';
  if (own !== '') {
    if (!existsSync(own)) throw new Error(`CHROMIUM_PATH names ${own}, which is not there.`);
    return { path: own, version: null, env: environment({}) };
  }
  if (process.platform !== 'linux' || process.arch !== 'x64') {
    throw new Error(
      `The browser that comes with the dev dependencies runs on Linux x64 only. ` +
        `Set CHROMIUM_PATH to a Chromium or Chrome on this machine (${process.platform} ${process.arch}).`,
    );
  }
  const version = await packedVersion();
  const folder = join(root, 'node_modules', '.cache', `chromium-${version}`);
  if (!existsSync(folder)) await unpackInto(folder);
  const libraries = [join(folder, 'al2023', 'lib'), process.env['LD_LIBRARY_PATH'] ?? ''];
  return {
    path: join(folder, 'chromium'),
    version: `${version.split('.', 1)[0] ?? ''}.`,
    env: environment({
      LD_LIBRARY_PATH: libraries.filter((part) => part !== '').join(':'),
      FONTCONFIG_FILE: join(folder, 'fonts.conf'),
    }),
  };
}

function environment(more: Record<string, string>): Record<string, string> {
  const own = Object.entries(process.env).flatMap(([name, value]) =>
    value === undefined ? [] : [[name, value]],
  );
  return { ...(Object.fromEntries(own) as Record<string, string>), ...more };
}

async function packedVersion(): Promise<string> {
  const text = await readFile(join(root, 'node_modules', '@sparticuz', 'chromium', 'package.json'), 'utf8');
  const { version } = JSON.parse(text) as { version: string };
  return version;
}

const unpack = `
  const { default: chromium } = await import('@sparticuz/chromium');
  await chromium.executablePath();
`;

async function unpackInto(folder: string): Promise<void> {
  await mkdir(dirname(folder), { recursive: true });
  const fresh = await mkdtemp(`${folder}-`);
  try {
    await promisify(execFile)(process.execPath, ['--input-type=module', '--eval', unpack], {
      cwd: root,
      env: { ...process.env, TMPDIR: fresh, AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs22.x' },
    });
    await writeFile(join(fresh, 'fonts.conf'), fontsConfiguration(folder));
    await rename(fresh, folder);
  } catch (error) {
    await rm(fresh, { recursive: true, force: true });
    // Another process was quicker: its copy is as good.
    if (!existsSync(folder)) throw error;
  }
}

/** Only the packed typeface: pictures must not depend on what this machine has installed. */
function fontsConfiguration(folder: string): string {
  return `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${join(folder, 'fonts')}</dir>
  <cachedir>${join(folder, 'fonts-cache')}</cachedir>
</fontconfig>
`;
}
