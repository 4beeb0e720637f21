// A link whose server is away: a station counts for weeks, and all of it lies in the link's folder. Its own clock is played, its desk and
// its disk are the product's.

import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { openHeld } from '../../../src/link/held.ts';
import { openIdentity } from '../../../src/link/identity.ts';
import { openSpool } from '../../../src/link/spool.ts';
import { openStationDesk } from '../../../src/link/station-desk.ts';

/** A device tells its total so often, s. */
const BEAT_SECONDS = 30;

/** What is played. */
export interface Away {
  readonly folder: string;
  readonly days: number;
  readonly panelSeconds: number;
  /** When it begins, ms since 1970. */
  readonly startMs: number;
}

/** Plays a station's weeks into a folder that no server knows; how many panels passed, and entries that wait. */
export async function playAway({
  folder,
  days,
  panelSeconds,
  startMs,
}: Away): Promise<{ readonly panels: number; readonly entries: number; readonly tablet: string }> {
  const identity = openIdentity(folder);
  let second = 0;
  const spool = openSpool(folder, identity, () => startMs + second * 1000, false);
  await spool.write('tablet.opened', { name: 'Link exit', app: '1', key: identity.jwk, previous: null });
  const held = openHeld(folder, false);
  const now = () => ({ ms: second * 1000, wallMs: startMs + second * 1000 });
  const desk = openStationDesk({ station: 'exit', line: 'L1' }, { held, write: spool.write, start: now() });
  const stepSeconds = Math.min(BEAT_SECONDS, panelSeconds);
  let panels = 0;
  for (; second < days * 86_400; second += stepSeconds) {
    panels = Math.floor(second / panelSeconds);
    await desk.take(
      { boot: 'b7f3a91c2', total: panels, atMs: null, serial: null, skipped: null, state: 1100 },
      now(),
    );
    await desk.tick(now());
  }
  await desk.settle();
  const entries = spool.length();
  await spool.close();
  await held.close();
  return { panels, entries, tablet: identity.tablet };
}

/** Bytes of all files of a folder. */
export function bytesIn(folder: string): number {
  return readdirSync(folder).reduce((sum, name) => sum + statSync(join(folder, name)).size, 0);
}
