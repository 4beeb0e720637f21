// A second feeder is made ready away from the line: its code, then the label of the reel in it, judged for the slot that it will go to.

import { type Signal, signal } from '@preact/signals';
import { judgeForFeeder } from '../../../shared/desk/judgement.ts';
import { emptyDesk } from '../../../shared/desk/model.ts';
import { takeEnough, takeScan } from '../../../shared/desk/take-scan.ts';
import { holdsBadge, recognise } from '../../../shared/floor/recognise.ts';
import type { Scan } from '../../../shared/labels/scan.ts';
import type { Reason } from '../../../shared/verdict/reasons.ts';
import { floorWhenDocked } from '../../../shared/verdict/verify-cart.ts';
import type { App } from '../app.ts';

/** What came of the last scan. */
export type ReadyTold =
  | { readonly tell: 'unread' }
  | { readonly tell: 'held' | 'refused'; readonly reason: Reason | null };

/** The feeder in hand, and what came of its last scan. */
export interface ReadyDesk {
  readonly feeder: Signal<string | null>;
  readonly told: Signal<ReadyTold | null>;
  readonly take: (scan: Scan) => boolean;
  readonly use: (feeder: string) => void;
}

interface ReadyAt {
  readonly line: string;
  readonly setup: string;
  readonly slot: string;
  readonly onReady: (feeder: string) => void;
}

/** Takes scans for a second feeder of a slot; `onReady` once its reel was accepted and written down. */
export function createReadyDesk(app: App, at: ReadyAt): ReadyDesk {
  const feeder = signal<string | null>(null);
  const told = signal<ReadyTold | null>(null);
  let busy = false;
  const use = (name: string) => {
    feeder.value = name;
    told.value = null;
  };
  return {
    feeder,
    told,
    use,
    take: (scan) => {
      const texts = scan.codes.map(({ text }) => text.trim());
      // Badges go to the desk, which signs people in.
      if (holdsBadge(app.store.floor(), at.line, texts)) return false;
      if (feeder.peek() === null) takeFeeder(app, at.line, texts, { use, told });
      else if (!busy) {
        busy = true;
        takeReel(app, at, { scan, feeder: feeder.peek() ?? '', told }).finally(() => {
          busy = false;
        });
      }
      return true;
    },
  };
}

/** A feeder's code is one text that names nothing else, whether or not the plant lists its feeders. */
function takeFeeder(
  app: App,
  line: string,
  texts: readonly string[],
  on: { readonly use: (feeder: string) => void; readonly told: Signal<ReadyTold | null> },
): void {
  const [text = '', ...others] = texts;
  const known = recognise(app.store.floor(), line, text);
  const isFeeder = known.some(({ is }) => is === 'feeder');
  if (others.length === 0 && (isFeeder || (known.length === 0 && /^[\w./-]{2,24}$/.test(text)))) on.use(text);
  else on.told.value = { tell: 'unread' };
}

async function takeReel(
  app: App,
  { line, setup, slot, onReady }: ReadyAt,
  of: { readonly scan: Scan; readonly feeder: string; readonly told: Signal<ReadyTold | null> },
): Promise<void> {
  const { scan, feeder, told } = of;
  const floor = app.store.floor();
  const seen = { line, floor: floorWhenDocked(floor, line, setup) };
  const scanned = takeScan({ ...emptyDesk, slot, atSlot: true, feeder }, scan, seen);
  const taken = takeEnough(scanned, seen);
  // Nothing is asked here: a reel that may have been opened before is held.
  const reel = taken.question?.ask === 'came-before' ? taken.question.reel : taken.reel;
  if (reel === null) {
    told.value = { tell: 'unread' };
    return;
  }
  const judged = judgeForFeeder(floor, { line, setup }, { slot, feeder, reel }, app.clock.nowMs());
  await app.write(judged.drafts);
  const { verdict, reasons } = judged.answer;
  if (verdict === 'accepted') onReady(feeder);
  else told.value = { tell: verdict, reason: reasons[0] ?? null };
}
