// Watches a line: a new outlook with every change and every few seconds, its walks, its warnings.

import { computed, effect, type ReadonlySignal, signal, untracked } from '@preact/signals';
import { needKey } from '../../../shared/floor/state.ts';
import type { WarningState } from '../../../shared/forecast/warnings.ts';
import { type Outlook, openWarnings, type SlotOutlook } from '../../../shared/outlook/line.ts';
import type { OpenWarning } from '../../../shared/outlook/loudest-open.ts';
import type { Supply } from '../../../shared/outlook/supply.ts';
import type { WalkPlan } from '../../../shared/outlook/walks.ts';
import type { App } from '../app.ts';
import { hasScreen, later } from '../device/later.ts';
import { createLooker, look } from './look.ts';
import type { SupplyAsked } from './supply.ts';
import { callForOpen, raiseNew, type Warner } from './warn.ts';

/** A new look at the clock after this long. */
const LOOK_EVERY_MS = 5000;

/** The watch over a line. */
export interface Watch {
  /** Null where nothing is being built. */
  readonly outlook: ReadonlySignal<Outlook | null>;
  /** Warnings that nobody has taken note of at their present level. */
  readonly warnings: ReadonlySignal<readonly SlotOutlook[]>;
  /** The walks that serve the coming splices; null where nothing is being built. */
  readonly walks: ReadonlySignal<WalkPlan | null>;
  /** Has the line's supply computed for an outlook; the answer comes by `take`, unless a newer question took its place. */
  readonly askSupply: (of: Outlook, take: (supply: Supply) => void) => void;
  /** A person took note of these warnings, in one append. Resolves when that is durable. */
  readonly acknowledge: (open: readonly OpenWarning[]) => Promise<void>;
}

/** What all watches of a tablet share, so that a line that is taken in hand neither warns anew nor forgets that it did. */
export interface WatchMemory {
  readonly warner: Warner;
  readonly remembered: Map<string, WarningState>;
}

/** Starts the watch over a line; it follows the signals that `line` reads. */
export function startWatch(
  app: App,
  { warner, remembered }: WatchMemory,
  line: () => string | null = () => app.line.value,
): Watch {
  const outlook = signal<Outlook | null>(null);
  const walks = signal<WalkPlan | null>(null);
  // One store screen asks for it: it comes with the first question.
  let supplier: Promise<SupplyAsked> | null = null;
  // Nobody goes before the first screen stands.
  let planning: Promise<() => void> | null = null;
  const planWalks = () => {
    if (!hasScreen()) {
      later(planWalks);
      return;
    }
    planning ??= import('./walks.ts').then(({ createWalker, planSoon }) => {
      const walker = createWalker({ app, outlook, walks });
      return () => planSoon(walker);
    });
    planning.then(
      (plan) => plan(),
      () => {
        planning = null; // out of reach: the next outlook asks again
      },
    );
  };
  const take = (next: Outlook | null, nowMs: number) => {
    if (next?.line !== outlook.peek()?.line) walks.value = null;
    outlook.value = next;
    planWalks();
    if (!next) return;
    for (const slot of next.slots) {
      remembered.set(needKey(next.line, slot.slot, slot.need), slot.warning);
      raiseNew(warner, next, slot);
    }
    callForOpen(warner, next, nowMs);
  };
  const looker = createLooker({ app, line: () => untracked(line), remembered, take });
  // The page takes scans before it looks for the first time.
  setTimeout(() =>
    effect(() => {
      app.tick.value;
      line();
      untracked(() => look(looker));
    }),
  );
  setInterval(() => look(looker), LOOK_EVERY_MS);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') look(looker);
  });
  // Until another line was looked at, nothing is known of it.
  const seen = computed(() => (outlook.value?.line === line() ? outlook.value : null));
  return {
    outlook: seen,
    warnings: computed(() => (seen.value ? openWarnings(seen.value) : [])),
    walks,
    askSupply: (of, answered) => {
      supplier ??= import('./supply.ts').then(({ startSupply }) => startSupply(app));
      supplier.then(
        (ask) => ask(of, answered),
        () => {
          supplier = null; // out of reach: the next outlook asks again
        },
      );
    },
    acknowledge: async (open) => {
      await app.write(
        open.map(({ outlook: { line }, slot: { slot, need, warning } }) => ({
          kind: 'warning.acknowledged',
          payload: { line, slot, need, level: warning.level },
        })),
      );
    },
  };
}
