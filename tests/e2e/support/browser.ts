// Chromium for the browser tests: headless, alone on this machine, no call to anywhere else.

import { existsSync } from 'node:fs';
import path from 'node:path';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { giveClock } from './clock.ts';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/** Where Chromium is; throws with what to do where there is none. */
export function chromiumPath(): string {
  const named = process.env['REELWARD_CHROMIUM'];
  if (named) return named;
  for (const folder of (process.env['PATH'] ?? '').split(path.delimiter)) {
    for (const name of names) if (existsSync(path.join(folder, name))) return path.join(folder, name);
  }
  throw new Error(
    'Cannot test in a browser as Chromium must be installed: current value is none found on PATH',
  );
}

/**
 * Parts of a desktop browser that no test needs. The address bar's own pages start two more processes with every window: half a second of
 * a processor each time, a fifth of all browser tests. The rest is what playwright turns off: the last list given to a browser counts.
 */
const unneeded = [
  'WebUIOmniboxPopup',
  'WebUIOmniboxAimPopup',
  'AimEnabled',
  'AvoidUnnecessaryBeforeUnloadCheckSync',
  'DestroyProfileOnBrowserClose',
  'HttpsFirstBalancedModeAutoEnable',
  'HttpsUpgrades',
  'LensOverlay',
  'MediaRouter',
  'NetworkTimeServiceQuerying',
  'OptimizationHints',
  'PaintHolding',
  'PreconnectToSearch',
  'ThirdPartyStoragePartitioning',
];

/** Switches without which a browser on a closed machine looks for its maker at every start. */
export const quietSwitches = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  `--disable-features=${unneeded.join(',')}`,
];

/** Starts a browser. */
export async function startBrowser(switches: readonly string[] = []): Promise<Browser> {
  return chromium.launch({ executablePath: chromiumPath(), args: [...quietSwitches, ...switches] });
}

/** Opens the app in a fresh context (or a given one) and waits until it can be used. */
export async function openApp(
  browser: Browser | BrowserContext,
  url: string,
  options: { readonly width?: number; readonly height?: number; readonly dark?: boolean } = {},
): Promise<Page> {
  const context =
    'newContext' in browser
      ? await browser.newContext({
          viewport: { width: options.width ?? 1280, height: options.height ?? 800 },
          colorScheme: options.dark ? 'dark' : 'light',
        })
      : browser;
  await giveClock(context);
  const page = await context.newPage();
  await page.goto(url);
  await waitReady(page);
  return page;
}

/** Waits until the app has opened its log and drawn its first screen. */
export async function waitReady(page: Page): Promise<void> {
  await page.waitForSelector('html[data-ready]', { timeout: 60_000 });
}
