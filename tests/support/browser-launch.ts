/**
 * Starts the headless Chromium of browser-executable.ts with our own arguments: software WebGL named outright (so that the
 * result does not hang on a wrapper's defaults), or none at all; no host but this machine can be reached.
 */
import { chromium } from 'playwright-core';
import type { Browser, BrowserContext, BrowserContextOptions } from 'playwright-core';
import { browserExecutable } from './browser-executable.ts';

export type LaunchOptions = {
  /** False: no WebGL at all, as on a machine whose graphics are blocked. */
  readonly webgl?: boolean;
};

/** A browser of the user's own must at least know what the app is built for. */
const oldestMajor = 120;

function browserArguments({ webgl = true }: LaunchOptions): string[] {
  return [
    '--disable-dev-shm-usage',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--no-first-run',
    '--no-default-browser-check',
    '--no-pings',
    '--font-render-hinting=none',
    '--force-color-profile=srgb',
    '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE localhost, EXCLUDE 127.0.0.1',
    ...(webgl
      ? [
          '--use-gl=angle',
          '--use-angle=swiftshader',
          '--enable-unsafe-swiftshader',
          // WebGL only: the page itself drawn by software graphics costs seconds of computing for every page that is opened.
          '--disable-gpu-rasterization',
        ]
      : ['--disable-webgl', '--disable-3d-apis']),
  ];
}

async function settings(options: LaunchOptions) {
  const executable = await browserExecutable();
  return {
    executable,
    launch: {
      executablePath: executable.path,
      env: executable.env,
      args: browserArguments(options),
      // The sandbox needs rights that root has not and many systems deny to users; the pages are our own.
      chromiumSandbox: false,
      headless: true,
    },
  };
}

function checkVersion(version: string, wanted: string | null): void {
  const fits = wanted === null ? Number.parseInt(version, 10) >= oldestMajor : version.startsWith(wanted);
  if (!fits) {
    throw new Error(`The browser is ${version}; needed is ${wanted ?? `${String(oldestMajor)} or later`}.`);
  }
}

export async function launchBrowser(options: LaunchOptions = {}): Promise<Browser> {
  const { executable, launch } = await settings(options);
  const browser = await chromium.launch(launch);
  checkVersion(browser.version(), executable.version);
  return browser;
}

/** With a profile folder that outlives the process: for what must survive a closed or killed browser. */
export async function launchWithProfile(
  profileFolder: string,
  options: LaunchOptions & { readonly context?: BrowserContextOptions } = {},
): Promise<BrowserContext> {
  const { executable, launch } = await settings(options);
  const context = await chromium.launchPersistentContext(profileFolder, { ...launch, ...options.context });
  checkVersion(context.browser()?.version() ?? '', executable.version);
  return context;
}
