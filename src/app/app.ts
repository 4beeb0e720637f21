// What every screen may use, handed down from the composition root: the store, the stream of scans, the clock, who is signed
// in, which line. Screens read signals and never build these things themselves.

import type { ReadonlySignal, Signal } from '@preact/signals';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Draft } from '../../shared/floor/draft.ts';
import type { PayloadOf } from '../../shared/floor/kinds.ts';
import type { FloorState, Person } from '../../shared/floor/state.ts';
import type { Entry } from '../../shared/log/entry.ts';
import type { Clock, ClockSlip } from './device/clock.ts';
import type { RawScans } from './scan/raw.ts';
import type { ScanStream } from './scan/scan.ts';
import type { SkippedNext } from './skipped.ts';
import type { Preferences } from './store/preferences.ts';
import type { Store } from './store/store.ts';
import type { Connection } from './sync/connection.ts';
import type { SyncStatus } from './sync/ports.ts';

/** What the composition root hands down. */
export interface App {
  readonly store: Store;
  readonly scans: ScanStream;
  readonly rawScans: RawScans;
  readonly clock: Clock;
  /** What is wrong with the tablet's clock; null while nothing is. */
  readonly clockSlip: ReadonlySignal<ClockSlip | null>;
  /** A person says that the clock, which went ahead, is right. */
  readonly trustClock: () => void;
  /** The server told its time just now, ms since 1970. */
  readonly sawServerTime: (serverMs: number) => void;
  readonly version: string;
  /** Grows with every change of the floor; reading it makes a component follow. */
  readonly tick: ReadonlySignal<number>;
  /** The time that screens show; moves once a second while visible. */
  readonly nowMs: ReadonlySignal<number>;
  readonly preferences: Signal<Preferences>;
  /** The line in hand: the preferred one, else the plant's first; null where the plant has none. */
  readonly line: ReadonlySignal<string | null>;
  /** Lines that this tablet serves besides the one in hand: their warnings sound here, and their scans are taken. */
  readonly beside: ReadonlySignal<readonly string[]>;
  /** Who is signed in on this tablet. */
  readonly person: ReadonlySignal<Person | null>;
  /** Writes entries as the person signed in; resolves when durable. */
  readonly write: (drafts: readonly Draft[]) => Promise<readonly Entry[]>;
  /** Writes entries that nobody waits for; what follows comes once they are durable. A failed write is shown by the fault screen alone. */
  readonly record: (
    drafts: readonly Draft[],
    after?: { readonly notice?: Notice; readonly next?: () => void },
  ) => void;
  /** How many tasks are open that an update or a reload would disturb. */
  readonly openTasks: Signal<number>;
  /** Grows each time somebody is signed out because the tablet was left alone: who was made sure of before then is not any more. */
  readonly lapses: Signal<number>;
  /** How sync stands; null before it was looked at. */
  readonly sync: Signal<SyncStatus | null>;
  /** The tie to the server; null until it is loaded, and on pages without a key. */
  readonly connection: Signal<Connection | null>;
  /** A short word at the foot of the screen; the newest replaces the older. */
  readonly notice: Signal<Notice | null>;
  /** True on a wall screen, which was let in to read: it shows all lines, signs nobody in and writes nothing. */
  readonly isScreen: boolean;
  /** Set while this window practises: then all above is of the floor practised on, and nothing of the plant's. */
  readonly practice: Practice | null;
  /** Codes of a label that nothing here reads, on the way to the page where it can be taught. */
  readonly unreadLabel: Signal<readonly string[] | null>;
  /** A package whose label is asked for; its dialog stands over the screen. */
  readonly labelWanted: Signal<LabelWanted | null>;
  /** Boards of the coming panel that are skipped, where somebody said. */
  readonly skippedNext: Signal<SkippedNext | null>;
}

/** A package whose label is to be printed: one of the log, or what a label without an id said of a new one or of a jar of paste. */
export type LabelWanted =
  | { readonly reel: string }
  | { readonly fresh: Omit<PayloadOf<'reel.put'>, 'reel' | 'place' | 'via'> }
  | { readonly jar: Omit<PayloadOf<'jar.known'>, 'jar'> };

/** Practising beside a real floor that goes on. */
export interface Practice {
  /** The plant's floor; for the watch over it and its sync, never for what is done in practice. */
  readonly real: App;
  /** Ends the practice, throws its floor away and goes back to the real one. */
  readonly end: () => Promise<void>;
}

/** A passing message; `act` may offer to take something back. */
export interface Notice {
  readonly tone: 'go' | 'care' | 'stop' | 'plain';
  readonly text: string;
  readonly act?: { readonly label: string; readonly run: () => void };
}

export const AppContext = createContext<App | null>(null);

/** The app's services. Throws outside the composition root's tree. */
export function useApp(): App {
  const app = useContext(AppContext);
  if (!app) throw new TypeError('Cannot use the app as it must be provided above: current value is null');
  return app;
}

/** The floor now; a component that calls this is drawn again with every change. */
export function useFloor(): FloorState {
  const app = useApp();
  app.tick.value;
  return app.store.floor();
}
