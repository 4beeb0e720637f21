// What a machine says beside its count and its tapes, and what of it goes into the log: faults of picking.

import type { Now, WriteEntry } from '../station-desk.ts';
import { slotOf } from './asked-desks.ts';
import { openFaults } from './faults.ts';
import type { MachineConfig } from './machine.ts';
import type { Said } from './messages.ts';

/** What is taken here. */
export type Aside = Extract<Said, { readonly is: 'pick-fault' | 'cleared' }>;

/** The asides of one machine. */
export interface Asides {
  /** Takes what happened at `atMs` of `Now`; resolves when what must be is in the log. */
  readonly take: (said: Aside, at: { readonly now: Now; readonly atMs: number }) => Promise<unknown> | null;
  /** Writes what is due; all of it where it `isEnd`. */
  readonly tick: (now: Now, isEnd: boolean) => Promise<unknown>;
}

/** Opens them. */
export function openAsides(config: MachineConfig, write: WriteEntry): Asides {
  const { station, line } = config;
  const faults = openFaults();
  return {
    take: (said, { now, atMs }) => {
      switch (said.is) {
        case 'pick-fault':
          if (config.lane !== null && said.lane !== null && said.lane !== config.lane) return null;
          faults.add(said.place, slotOf(config, said.place), { fault: said.fault, atMs, nowMs: now.ms });
          return null;
        case 'cleared':
          faults.clear(said.fault);
          return null;
        default:
          return said satisfies never;
      }
    },
    tick: (now, isEnd) =>
      Promise.all(faults.due(now.ms, isEnd).map((told) => write('parts.missed', { station, line, ...told }))),
  };
}
