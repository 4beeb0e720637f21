// Goes through verdicts that nobody asked for: code that has run before answers several times sooner, and the first scan of a shift is to be
// as quick as the tenth. A made-up label is read, judged, checked and sealed as a scan's would be, and thrown away: nothing is shown or written.

import { judgeReel } from '../../shared/desk/judgement.ts';
import { type DeskView, emptyDesk } from '../../shared/desk/model.ts';
import { takeScan } from '../../shared/desk/take-scan.ts';
import type { DraftEntry, SetupSlot } from '../../shared/floor/kinds.ts';
import type { Scan } from '../../shared/labels/scan.ts';
import type { App } from './app.ts';
import type { DeskRun } from './desk/desk.ts';
import { later } from './device/later.ts';
import { checkDraftEntry } from './store/drafts.ts';
import { readHead, sealAfter } from './store/writer.ts';

/** After so many the code of a verdict has settled; each takes as long as a verdict. */
const TIMES = 4;

/** What the warming up uses of the app. */
export type Warmed = Pick<App, 'store' | 'clock'>;

/** Warms the first verdict up, again and again while nothing else is to be done. */
export function warmUp(app: Warmed, desk: Pick<DeskRun, 'view' | 'busy'>, times = TIMES): void {
  if (times === 0) return;
  const seen = desk.view();
  const warmed = seen && !desk.busy.peek() ? warmVerdict(app, seen) : Promise.resolve();
  warmed.then(() => later(() => warmUp(app, desk, times - 1))).catch(() => undefined); // what is wrong is told by the first scan
}

/** Does all that a verdict does but to show and to write it. */
export async function warmVerdict({ store, clock }: Warmed, seen: DeskView): Promise<void> {
  const drafts = madeUpVerdict(seen, clock.nowMs()).map(checkDraftEntry);
  const head = await readHead(store.log);
  await sealAfter(head, drafts, { identity: store.identity, clock, seen: null, who: null });
}

/** What the log would be told of a reel that fits the first slot of the setup; empty where there is nothing to judge. */
export function madeUpVerdict(seen: DeskView, nowMs: number): readonly DraftEntry[] {
  const { floor, line } = seen;
  const wanted = floor.setups.get(floor.chosen.get(line) ?? '')?.slots[0];
  if (!wanted) return [];
  const scan = (text: string): Scan => ({
    codes: [{ text, format: null, symbologyId: null }],
    via: 'wedge',
    atMs: nowMs,
  });
  const atSlot = takeScan(emptyDesk, scan(wanted.slot), seen);
  const { reel } = takeScan({ ...atSlot, atSlot: true }, scan(labelFor(wanted)), seen);
  return reel ? judgeReel(seen, { ...atSlot, slot: wanted.slot, reel }, nowMs).drafts : [];
}

/** A label as a reel of a slot's part would carry it. */
function labelFor({ part }: SetupSlot): string {
  return `[)>\x1e06\x1dP${part}\x1dQ1000\x1d1TREHEARSAL\x1d3SREHEARSAL\x1e\x04`;
}
