// A demo that plays by itself: its entries arrive as they happen, and the plant's clock runs as fast as the play.

import * as z from 'zod/mini';
import { entrySchema } from '../../../shared/log/entry-schema.ts';
import type { App } from '../app.ts';
import type { Clock } from '../device/clock.ts';

const stateSchema = z.object({ live: z.boolean(), speed: z.number(), openedMs: z.number() });

/** What the demo says of itself. */
export type DemoState = Readonly<z.output<typeof stateSchema>>;

/** A demo that does not answer within this time is taken for offline: the app must not wait for a network. */
const WAIT_MS = 1500;
/** A page that came over the network just now has a server, which may be busy: without its answer the plant would be empty. */
const SERVED_WAIT_MS = 30_000;

/** Asks the demo how it plays; null where it does not answer (offline). */
export async function readDemoState(): Promise<DemoState | null> {
  const isKept = navigator.serviceWorker?.controller != null; // else this page came from the server itself
  const signal = AbortSignal.timeout(isKept ? WAIT_MS : SERVED_WAIT_MS);
  try {
    return z.parse(stateSchema, await (await fetch('/demo/state.json', { signal })).json());
  } catch {
    return null; // offline: the log kept here goes on at the clock's own pace
  }
}

/** The plant's clock: the tablet's, or as fast as the play since the demo was opened. */
export function demoClock(state: DemoState | null, tablet: Clock): Clock {
  if (!state?.live) return tablet;
  return { nowMs: () => state.openedMs + (tablet.nowMs() - state.openedMs) * state.speed };
}

/** Takes in what the play writes, from the entry after `after` on; goes on by itself after a break. */
export function followPlay(app: App, after: number): void {
  const source = new EventSource(`/demo/live?after=${after}`);
  source.onmessage = (message: MessageEvent<string>) => {
    const entries = z.safeParse(z.array(entrySchema), JSON.parse(message.data));
    if (entries.success) app.store.takeIn(entries.data).catch(() => undefined); // shown by the fault screen
  };
}
