// The browser killed without a word in the middle of loading and splicing, on a profile that stays: what was shown as done must
// be there afterwards. Shared by the test (a few kills) and the bench (many).

import { spawnSync } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { verifyChains } from '../../../shared/log/chain.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { chromiumPath, quietSwitches, waitReady } from './browser.ts';
import { giveClock } from './clock.ts';
import { readLog, reelLabel, scan, signIn } from './floor.ts';

/** What came of it. */
export interface KillReport {
  readonly kills: number;
  /** Verdicts that stood on the screen before a kill. */
  readonly acknowledged: number;
  /** Of those, entries that were not found afterwards. */
  readonly lost: number;
  /** Entries found that no screen had shown yet: written, killed before shown. */
  readonly unshown: number;
  readonly entries: number;
  readonly whole: boolean;
}

/** Slots that the demo leaves empty, and one to splice on. */
const places = [
  { slot: 'M2-F-023', feeder: 'F-0112', part: '22-0603-B' },
  { slot: 'M2-F-026', feeder: 'F-0113', part: '25-0023-113' },
  { slot: 'M2-R-005', feeder: 'F-0114', part: '10-0603-3R3' },
] as const;

/** Kills every process of a profile at once, as a battery pull would. */
function killAll(folder: string): void {
  const { stdout } = spawnSync('pgrep', ['-f', '--', `--user-data-dir=${folder}`], { encoding: 'utf8' });
  const pids = stdout.split('\n').filter((line) => /^\d+$/.test(line));
  for (const pid of pids) {
    try {
      process.kill(Number(pid), 'SIGKILL');
    } catch {
      // gone already
    }
  }
}

async function open(folder: string, url: string): Promise<{ context: BrowserContext; page: Page }> {
  const context = await chromium.launchPersistentContext(folder, {
    executablePath: chromiumPath(),
    args: [...quietSwitches],
    viewport: { width: 1280, height: 800 },
  });
  await giveClock(context);
  const page = context.pages()[0] ?? (await context.newPage());
  page.setDefaultTimeout(60_000);
  await page.goto(url);
  await waitReady(page);
  return { context, page };
}

/** Loads and splices, one act of a person after the other: the scans of a reel, then a look at its verdict. */
async function* work(page: Page, nextReel: () => string, seen: (reel: string) => void) {
  for (let round = 0; ; round++) {
    const place = places[round % places.length];
    if (!place) return;
    const reel = nextReel();
    const codes = [place.slot, place.feeder, reelLabel({ P: place.part, Q: '4000', '3S': reel })];
    // Where the slot carries a reel by now, the same scans are a splice: slot and new reel.
    for (const code of codes) yield () => scan(page, code);
    yield async () => {
      await page.locator('[data-testid=verdict] .facts', { hasText: reel }).waitFor();
      seen(reel);
    };
  }
}

/**
 * Kills the browser `kills` times, each in the middle of a chance act, the `mostActs`th at most: at its start, so that keys are under
 * way, or an entry is being written. `chance` in [0, 1).
 */
export async function killAgainAndAgain(
  url: string,
  options: { readonly kills: number; readonly mostActs: number; readonly chance: () => number },
): Promise<KillReport> {
  const folder = await mkdtemp(path.join(tmpdir(), 'reelward-kill-'));
  const shown = new Set<string>();
  let lastReel = 960_000;
  const nextReel = () => `R-${++lastReel}`;
  for (let kill = 0; kill < options.kills; kill++) {
    const { page } = await open(folder, url);
    if (kill === 0) await signIn(page, 'BADGE-2201');
    let left = 1 + Math.floor(options.chance() * options.mostActs);
    for await (const act of work(page, nextReel, (reel) => shown.add(reel))) {
      left -= 1;
      const done = act();
      if (left > 0) {
        await done;
        continue;
      }
      killAll(folder);
      await done.catch(() => undefined); // the kill ends it
      break;
    }
  }
  const { context, page } = await open(folder, url);
  const log: readonly Entry[] = await readLog(page);
  await context.close();
  await rm(folder, { recursive: true, force: true });
  const found = new Set(
    log.filter(({ kind }) => kind === 'reel.verified').map(({ payload }) => String(payload['reel'])),
  );
  const own = [...found].filter((reel) => reel.startsWith('R-96'));
  return {
    kills: options.kills,
    acknowledged: shown.size,
    lost: [...shown].filter((reel) => !found.has(reel)).length,
    unshown: own.filter((reel) => !shown.has(reel)).length,
    entries: log.length,
    whole: verifyChains(log).ok,
  };
}
