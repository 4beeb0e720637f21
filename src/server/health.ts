// Is the store intact, and can it be written? Told by what fails as it fails, and by a look along the whole log in the background:
// each text against its hash, each running hash against the one before, and the database's own check. Without it, damage shows only
// when somebody asks for that very page, and a changed text never.

import { DAY_MS } from '../../shared/kit/moment.ts';
import { MonthAway } from './stores/month-store.ts';
import { type LogFault, readThrough } from './stores/read-through.ts';
import type { Store } from './stores/store.ts';
import { type StoreTrouble, storeTroubles, troubleOf } from './stores/trouble.ts';

/** For the log: what it is, and what to do. */
export const storeWords: Readonly<Record<StoreTrouble, string>> = {
  'disk-full': 'the disk is full: make room; tablets keep their entries and send them then',
  'read-only': 'the store cannot be written: check who owns the data folder and how the disk is mounted',
  away: 'the database does not answer: check that it runs',
  damaged: 'the store is damaged: stop the server, keep a copy of the data folder, and restore a backup',
  'text-changed': 'an entry was changed in the store: compare with a backup; its tablet holds the original',
  'log-broken': 'the log was changed in the store: compare with a backup',
  'month-away':
    'texts of a month that left the store cannot be read: put its file back, or name the folder it lies in with --months',
  restored:
    'a backup was put into the database under this server, or its schema is being brought forward: it must be started again',
  outgrown:
    'a newer program brought the database to a schema that this one does not know: start the newer program here too',
  lost: 'the database went back to an earlier log, as after a copy that lagged behind took over: start the server again; tablets offer what is missing',
};

/** What a start found: the log lacks what this server saw of it, or nobody knows. */
export type PutBack = 'lost' | 'unknown';

const listWords = 'see in the list of tablets that nobody is let in who was shut out since';

/** For the log, at such a start. */
export const putBackWords: Readonly<Record<PutBack, string>> = {
  lost: `the database does not hold the log any more as this server saw it last, as after it was put back to an earlier moment: tablets offer again what they hold; ${listWords}`,
  unknown: `the database may have been put back to an earlier moment, or another copy took over while no server ran that knows the log: tablets offer again what they hold; ${listWords}`,
};

/** What is known of whether the store is intact. */
export interface StoreHealth {
  /** What is wrong now, worst first; empty where nothing is. */
  readonly troubles: () => readonly StoreTrouble[];
  /** An error was met; its trouble, if it says one. */
  readonly met: (error: unknown) => StoreTrouble | null;
  /** Something was written: what kept it from that is over. */
  readonly wrote: () => void;
  /** The database answered: it is not away any more, though nothing need have been written. */
  readonly answered: () => void;
  /** Looks along the whole log now; resolves when the look is over. */
  readonly look: () => Promise<void>;
  /** Looks now whether months whose texts could not be read are there again; each file of them is read whole, and of no other month. */
  readonly lookForMonths: () => Promise<void>;
  readonly stop: () => Promise<void>;
}

export interface HealthParts {
  readonly store: Pick<Store, 'dialect' | 'sealedPage' | 'quickCheck' | 'leads' | 'monthFaults'>;
  /** Told of each trouble once, when it is found: where it is, in words. Of each month that is away, once. */
  readonly onTrouble: (trouble: StoreTrouble, where: string) => void;
}

/** The first look along the log waits until the tablets are answered again, then one a day, by the process that leads: whoever takes over from it begins anew. */
const FIRST_MS = 60_000;
const EVERY_MS = DAY_MS;
/** These end with the next entry that is written; the others stay until the program is started on an intact store. */
const passing: readonly StoreTrouble[] = ['disk-full', 'read-only', 'away'];

/** Puts into `found` what is found; tells each trouble once, and of each month that is away once. */
function createTelling(found: Set<StoreTrouble>, onTrouble: HealthParts['onTrouble']) {
  const monthsAway = new Set<string>();
  return {
    tell: (trouble: StoreTrouble, where: string, month?: string) => {
      if (month === undefined ? found.has(trouble) : monthsAway.has(month)) return;
      found.add(trouble);
      if (month !== undefined) monthsAway.add(month);
      onTrouble(trouble, where);
    },
    /** The months that are away, as far as anybody met them. */
    away: (): ReadonlySet<string> => new Set(monthsAway),
    /** Of the months that were looked at, these are still away: the others are there again. */
    onlyAway: (looked: ReadonlySet<string>, away: ReadonlySet<string>) => {
      for (const month of looked) if (!away.has(month)) monthsAway.delete(month);
      if (monthsAway.size === 0) found.delete('month-away');
    },
  };
}

/** Runs the work; whoever asks while it runs waits for the end of that run. */
function oneAtATime(work: () => Promise<void>) {
  let running: Promise<void> | null = null;
  return {
    run: () => {
      running ??= work().finally(() => {
        running = null;
      });
      return running;
    },
    ended: async () => {
      await running;
    },
  };
}

/** Starts watching. */
export function watchStore({ store, onTrouble }: HealthParts): StoreHealth {
  const found = new Set<StoreTrouble>();
  let isStopped = false;
  const { tell, away: monthsAway, onlyAway } = createTelling(found, onTrouble);
  const walk = async () => {
    const looked = monthsAway();
    const away = new Set<string>();
    const hear = (trouble: LogFault, where: string, month?: string) => {
      if (month !== undefined) away.add(month);
      tell(trouble, where, month);
    };
    await readThrough(store, hear, () => isStopped);
    if (isStopped) return;
    // Every file was read: what was away is back.
    onlyAway(looked, away);
    const faults = await store.quickCheck();
    if (faults.length > 0) tell('damaged', faults.join('; '));
  };
  const look = oneAtATime(() =>
    walk().catch((error: unknown) => {
      const trouble = troubleOf(error);
      if (trouble && !isStopped) tell(trouble, (error as Error).message);
    }),
  );
  const walkMonths = async () => {
    if (!found.has('month-away')) return;
    // A month that nobody met yet is found as it is read, or by the next look along the log.
    const looked = monthsAway();
    const faults = await store.monthFaults('whole', looked);
    if (isStopped) return;
    for (const fault of faults) meet(fault);
    onlyAway(looked, new Set(faults.flatMap((fault) => (fault instanceof MonthAway ? [fault.month] : []))));
  };
  const lookForMonths = oneAtATime(() =>
    walkMonths().catch((error: unknown) => {
      if (!isStopped) meet(error);
    }),
  );
  const meet = (error: unknown): StoreTrouble | null => {
    // What the framework says of a request is about its sender's connection, and a file is never away.
    if ((error as { statusCode?: unknown }).statusCode !== undefined) return null;
    const said = troubleOf(error);
    const trouble = said === 'away' && store.dialect === 'sqlite' ? null : said;
    if (trouble)
      tell(trouble, (error as Error).message, error instanceof MonthAway ? error.month : undefined);
    return trouble;
  };
  let lookedMs = Number.NEGATIVE_INFINITY;
  const due = setInterval(() => {
    // Each server for itself: those that do not lead never look along the log.
    void lookForMonths.run();
    if (!store.leads() || performance.now() - lookedMs < EVERY_MS) return;
    lookedMs = performance.now();
    void look.run();
  }, FIRST_MS).unref();
  return {
    troubles: () => storeTroubles.filter((trouble) => found.has(trouble)),
    met: meet,
    wrote: () => {
      for (const trouble of passing) found.delete(trouble);
    },
    answered: () => {
      found.delete('away');
    },
    look: look.run,
    lookForMonths: lookForMonths.run,
    stop: async () => {
      isStopped = true;
      clearInterval(due);
      await Promise.all([look.ended(), lookForMonths.ended()]);
    },
  };
}
