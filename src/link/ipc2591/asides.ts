// What a machine says beside its count and its tapes, and what of it goes into the log: faults of picking, the recipe that it runs, and where
// moisture-sensitive reels were.

import { chunksOf } from '../../../shared/kit/chunks.ts';
import type { Now, WriteEntry } from '../station-desk.ts';
import { slotOf } from './asked-desks.ts';
import { openFaults } from './faults.ts';
import type { MachineConfig } from './machine.ts';
import type { Said } from './messages.ts';

/** What is taken here. */
export type Aside = Extract<Said, { readonly is: 'pick-fault' | 'cleared' | 'recipe' | 'aired' }>;

/** Reels of one entry. */
const REELS = 200;

/** The asides of one machine. */
export interface Asides {
  /** Takes what happened at `atMs` of `Now`; resolves when what must be is in the log. */
  readonly take: (said: Aside, at: { readonly now: Now; readonly atMs: number }) => Promise<unknown>;
  /** Writes what is due; all of it where it `isEnd`. */
  readonly tick: (now: Now, isEnd: boolean) => Promise<unknown>;
}

/** Opens them. */
export function openAsides(config: MachineConfig, write: WriteEntry): Asides {
  const { station, line } = config;
  const faults = openFaults();
  let known = '';
  const isOther = ({ lane }: { readonly lane: number | null }) =>
    config.lane !== null && lane !== null && lane !== config.lane;
  return {
    take: async (said, { now, atMs }) => {
      switch (said.is) {
        case 'pick-fault':
          if (isOther(said)) return null;
          faults.add(said.place, slotOf(config, said.place), { fault: said.fault, atMs, nowMs: now.ms });
          return null;
        case 'cleared':
          faults.clear(said.fault);
          return null;
        case 'recipe': {
          const { recipe, revision } = said;
          const now = JSON.stringify([recipe, revision]);
          if (isOther(said) || now === known) return null;
          known = now;
          return write('station.recipe', { station, line, recipe, revision });
        }
        case 'aired': {
          const late = Math.max(0, Math.round((now.ms - atMs) / 1000));
          const pages = chunksOf(said.reels, REELS);
          return Promise.all(
            pages.map((reels) => write('parts.aired', { station, line, says: said.says, late, reels })),
          );
        }
        default:
          return said satisfies never;
      }
    },
    tick: (now, isEnd) =>
      Promise.all(faults.due(now.ms, isEnd).map((told) => write('parts.missed', { station, line, ...told }))),
  };
}
