// What a link did not take of a station: told once each, and counted. The number goes into the log again when an hour has passed.

import { wellFormed } from '../../shared/log/seal.ts';
import type { Held } from './held.ts';
import type { Now, WriteEntry } from './station-desk.ts';

/** What can be noticed. */
export type NoticeWhat =
  | 'not-understood'
  | 'wrong-secret'
  | 'clock-off'
  | 'total-fell'
  | 'two-devices'
  | 'code-twice'
  | 'not-used'
  | 'other-handle'
  | 'not-connected'
  | 'not-answered'
  | 'not-offered'
  | 'loads-cut'
  | 'asked-off'
  | 'asked-often'
  | 'not-replied'
  | 'code-again'
  | 'not-heard'
  | 'no-boards'
  | 'other-machine'
  | 'wrong-channel'
  | 'by-hand'
  | 'failed-board'
  | 'board-twice'
  | 'machine-says';

/** What is told already is told again with its number after so long, ms. */
const TOLD_AGAIN_MS = 3_600_000;

interface Notice {
  times: number;
  said: string;
  toldMs: number;
  toldTimes: number;
}

/** The notices of one station. */
export interface Notices {
  /** Notices once more, or `times` more; resolves when what it writes is on the disk. */
  readonly add: (what: NoticeWhat, said: string, now: Now, times?: number) => Promise<unknown>;
  /** Tells the numbers that have grown for an hour. */
  readonly tick: (now: Now) => readonly Promise<unknown>[];
}

/** Opens them; what was told at an earlier start is known. */
export function openNotices(
  { station, line }: { readonly station: string; readonly line: string },
  held: Held,
  write: WriteEntry,
): Notices {
  const notices = new Map<NoticeWhat, Notice>();
  const tell = async (what: NoticeWhat, there: Notice, now: Now): Promise<void> => {
    there.toldMs = now.ms;
    there.toldTimes = there.times;
    const said = wellFormed(there.said.slice(0, 200));
    const told = write('station.noticed', { station, line, what, said, times: there.times });
    await Promise.all([told, held.told(station).has(what) ? null : held.tell(station, what)]);
  };
  return {
    add: async (what, said, now, times = 1) => {
      let there = notices.get(what);
      if (!there) {
        const toldMs = held.told(station).has(what) ? now.ms : Number.NEGATIVE_INFINITY;
        there = { times: 0, said, toldMs, toldTimes: 0 };
        notices.set(what, there);
      }
      there.times += times;
      there.said = said;
      if (now.ms - there.toldMs >= TOLD_AGAIN_MS) await tell(what, there, now);
    },
    tick: (now) =>
      [...notices].flatMap(([what, there]) =>
        there.times > there.toldTimes && now.ms - there.toldMs >= TOLD_AGAIN_MS
          ? [tell(what, there, now)]
          : [],
      ),
  };
}
