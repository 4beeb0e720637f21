// The setup that a machine asks for: asked of it where the link's file says so, or taken where it tells it by itself; into the log when it is
// another than was offered last.

import { createHash } from 'node:crypto';
import { chunksOf } from '../../../shared/kit/chunks.ts';
import type { Now, WriteEntry } from '../station-desk.ts';
import type { Answered } from './ask.ts';
import type { WantedSetup } from './messages.ts';

/** It is asked so often, ms; and so soon after it said that it wants another. */
const ASK_EVERY_MS = 600_000;
const CHANGED_QUIET_MS = 2_000;
const PAGE = 100;

/** What a machine asks for. */
export interface OfferedDesk {
  readonly take: (wanted: WantedSetup) => Promise<unknown>;
  /** It wants another setup. */
  readonly changed: (now: Now) => void;
  /** The machine is there to be asked. */
  readonly heard: (now: Now) => void;
  readonly tick: (now: Now) => void;
}

/** What it works with, as for what is loaded. `slotOf`: the line's slot for the machine's name of a place. */
export interface OfferedWorld {
  readonly station: string;
  readonly line: string;
  readonly write: WriteEntry;
  readonly slotOf: (place: string) => string;
  readonly ask: (() => Promise<Answered>) | null;
  readonly read: (answer: Answered) => WantedSetup | string;
  readonly notice: (what: 'not-offered', said: string, now: Now) => Promise<unknown>;
  readonly now: () => Now;
  readonly onFault: (error: unknown) => void;
}

/** Opens it. */
export function openOffered(world: OfferedWorld): OfferedDesk {
  const { station, line, write } = world;
  let told: string | null = null;
  let askMs: number | null = null;
  let isAsking = false;

  const take = async ({ recipe, revision, rows: wanted }: WantedSetup): Promise<void> => {
    const rows = wanted.map(({ place, part, alternates, suppliers }) => ({
      slot: world.slotOf(place),
      part,
      alternates: [...alternates],
      suppliers: [...suppliers],
    }));
    const text = JSON.stringify([recipe, revision, rows]);
    const report = createHash('sha256').update(text).digest('base64url').slice(0, 16);
    if (told === report) return;
    told = report;
    const pages = chunksOf(rows, PAGE);
    const of = { station, line, report, pages: pages.length, recipe, revision };
    await Promise.all(pages.map((wants, page) => write('setup.offered', { ...of, page, wants })));
  };
  const askNow = async (ask: () => Promise<Answered>): Promise<void> => {
    isAsking = true;
    const wanted = world.read(await ask());
    isAsking = false;
    const now = world.now();
    askMs = now.ms + ASK_EVERY_MS;
    await (typeof wanted === 'string' ? world.notice('not-offered', wanted, now) : take(wanted));
  };
  return {
    take,
    changed: ({ ms }) => {
      askMs = ms + CHANGED_QUIET_MS;
    },
    heard: ({ ms }) => {
      askMs ??= ms;
    },
    tick: ({ ms }) => {
      if (world.ask === null || askMs === null || ms < askMs || isAsking) return;
      askMs = ms + ASK_EVERY_MS;
      askNow(world.ask).catch(world.onFault);
    },
  };
}
