// Steps from a machine's messages to its station's desk and the log, in the order of arrival, each when what it rests on is on the disk.
// Method: what a broker has kept is gathered until no more of it comes, and told as one rise, so that counts by hand of that while are
// replaced at once; all else passes on at once.

import type { CountMessage, Now, StationDesk } from '../station-desk.ts';

/** What a broker has kept is taken in together: until so long has passed without more of it, and no longer than that, ms. */
const KEPT_QUIET_MS = 1_500;
const KEPT_MOST_MS = 30_000;

/** A total, and the name of its panel's message where something is said of that panel. */
export type Count = Omit<CountMessage, 'atMs'> & { readonly key?: string };

/** A step: a total, or something else that must keep its place in the order. */
export type Step = { readonly count: Count } | { readonly act: () => Promise<unknown> };

/** The steps of one machine. */
export interface Steps {
  /** Puts a step behind those before it, once `saved` is there. */
  readonly put: (saved: Promise<unknown> | null, next: Step) => void;
  /** What comes from now on was kept; `isLong`: over more than a silence. */
  readonly gather: (now: Now, isLong: boolean) => void;
  /** More that was kept has come. */
  readonly keptMore: (now: Now) => void;
  readonly isGathering: () => boolean;
  readonly tick: (now: Now) => void;
  /** Resolves when all steps so far have been passed on. */
  readonly settle: () => Promise<void>;
}

/** Opens them. `told`: a panel's message of which something was said is in the log. */
export function openSteps(world: {
  readonly desk: StationDesk;
  readonly now: () => Now;
  readonly told: (key: string) => void;
  readonly onFault: (error: unknown) => void;
}): Steps {
  const { desk, onFault } = world;
  let line: Promise<unknown> = Promise.resolve();
  let waiting: Step[] = [];
  let gathering: { untilMs: number; readonly mostMs: number; readonly isLong: boolean } | null = null;

  const takeAll = (counts: readonly Count[]) => {
    const now = world.now();
    for (const { key, ...count } of counts)
      desk.take({ ...count, atMs: null }, now).then(() => {
        if (key !== undefined) world.told(key);
      }, onFault);
  };
  const pass = (isOneRise: boolean) => {
    const steps = waiting;
    waiting = [];
    let counts: Count[] = [];
    for (const next of steps) {
      if ('count' in next) {
        counts.push(next.count);
        continue;
      }
      takeAll(isOneRise ? inOneRise(counts) : counts);
      counts = [];
      next.act().catch(onFault);
    }
    takeAll(isOneRise ? inOneRise(counts) : counts);
  };
  const endGather = () => {
    const isLong = gathering?.isLong ?? false;
    gathering = null;
    pass(isLong);
  };
  return {
    put: (saved, next) => {
      line = Promise.all([line, saved]).then(() => {
        waiting.push(next);
        if (gathering === null) pass(false);
      }, onFault);
    },
    gather: ({ ms }, isLong) => {
      gathering = { untilMs: ms + KEPT_QUIET_MS, mostMs: ms + KEPT_MOST_MS, isLong };
    },
    keptMore: ({ ms }) => {
      if (gathering) gathering.untilMs = Math.min(gathering.mostMs, ms + KEPT_QUIET_MS);
    },
    isGathering: () => gathering !== null,
    tick: ({ ms }) => {
      if (gathering && ms >= gathering.untilMs) endGather();
    },
    settle: async () => {
      await line;
      endGather();
    },
  };
}

/** Totals as one rise: the highest of each name first, then what is said of single panels. */
function inOneRise(counts: readonly Count[]): readonly Count[] {
  if (counts.length < 2) return counts;
  const told = counts.filter(
    ({ serial, skipped, state }) => serial !== null || skipped !== null || state !== null,
  );
  const boots = [...new Set(counts.map(({ boot }) => boot))];
  const tops = boots.map((boot) => {
    const total = Math.max(...counts.flatMap((each) => (each.boot === boot ? [each.total] : [])));
    return { boot, total, serial: null, skipped: null, state: null };
  });
  return [...tops, ...told];
}

/** The code of a panel that is counted already: a broker that was cut off may bring a work's beginning after its end. */
export function tellLate(
  steps: Steps,
  of: { readonly boot: string; readonly total: number } | null,
  code: string | null,
): void {
  if (of && code !== null) steps.put(null, { count: { ...of, serial: code, skipped: null, state: null } });
}
