// The verdict at the desk: asked for when everything is there, written down, and only then shown.

import { batch } from '@preact/signals';
import type { Judged } from '../../../shared/desk/judgement.ts';
import {
  type Desk,
  type DeskView,
  emptyDesk,
  isDeskReady,
  type ReelInHand,
} from '../../../shared/desk/model.ts';
import { isAllLoaded, nextMissing } from '../../../shared/floor/progress.ts';
import { wantedOn } from '../../../shared/floor/wanted.ts';
import { entryId } from '../../../shared/log/entry.ts';
import { somebodyWaits } from '../device/awaited.ts';
import { changeDesk, type DeskState, type ShownVerdict } from './state.ts';

/** A write that takes longer shows the filled wells meanwhile; before that, drawing them would only delay the verdict. */
const SLOW_WRITE_MS = 150;

/** A verdict and the reel that it is about. */
export interface JudgedReel extends Judged {
  readonly reel: ReelInHand;
}

/** The verdict, where everything is there; before that a refusal that nothing still wanted can take away. */
export function judgedNow({ app, judgement }: DeskState, next: Desk, seen: DeskView): JudgedReel | null {
  const { slot, reel } = next;
  if (judgement === null || !seen.floor.chosen.has(seen.line)) return null;
  if (!isDeskReady(next, seen)) return judgement.judgeEarly(seen, next, app.clock.nowMs());
  if (slot === null || reel === null) return null;
  return { ...judgement.judgeReel(seen, { ...next, slot, reel }, app.clock.nowMs()), reel };
}

/** Says at once that a lead must decide, where that is known before all is there. */
export function withWarning({ app, judgement, shown }: DeskState, next: Desk, seen: DeskView): Desk {
  if (next.told !== null || shown.peek() !== null || judgement === null) return next;
  const reason = judgement.leadWanted(seen, next, app.clock.nowMs());
  return reason === null ? next : { ...next, told: { tell: 'lead-wanted', reason } };
}

/** Writes a verdict down and shows it. Rejects where it could not be written: nothing scanned is lost then. */
export async function keepVerdict(
  state: DeskState,
  ready: Desk,
  { seen, judged }: { readonly seen: DeskView; readonly judged: JudgedReel },
): Promise<void> {
  const { app, shown, busy } = state;
  const setup = seen.floor.chosen.get(seen.line) ?? '';
  // Whoever goes to the other line meanwhile has something else in hand there.
  const putDown = (desk: Desk) => changeDesk(state, seen.line, () => desk);
  busy.value = true;
  const slow = setTimeout(() => putDown(ready), SLOW_WRITE_MS);
  const wanted = ready.slot === null ? null : (wantedOn(seen.floor, setup, ready.slot)?.part ?? null);
  const answered = somebodyWaits();
  try {
    const [entry] = await app.write(judged.drafts);
    const floor = app.store.floor();
    const next = nextMissing(floor, seen.line);
    const isAll = judged.act === 'load' && next === null && isAllLoaded(floor, seen.line);
    batch(() => {
      const entered = entry ? entryId(entry) : '';
      const told = {
        entry: entered,
        line: seen.line,
        wanted,
        next,
        isAllLoaded: isAll,
        atMs: app.clock.nowMs(),
      };
      shown.value = shownOf(ready, judged, told);
      putDown(leftOnDesk(ready, judged.answer.verdict === 'accepted'));
      busy.value = false;
    });
  } catch (error) {
    putDown(ready); // nothing scanned is lost
    busy.value = false;
    throw error;
  } finally {
    clearTimeout(slow);
    answered();
  }
}

/** What stays in hand after a verdict. One slot's check is over with it: what is wrong there comes off, and work goes on at the slot. */
function leftOnDesk(ready: Desk, isAccepted: boolean): Desk {
  if (ready.mode === 'check') return { ...emptyDesk, slot: isAccepted ? null : ready.slot, via: ready.via };
  return isAccepted ? { ...emptyDesk, mode: ready.mode } : ready;
}

function shownOf(
  { slot, feeder }: Desk,
  { act, answer, reel }: JudgedReel,
  told: Pick<ShownVerdict, 'entry' | 'line' | 'wanted' | 'next' | 'isAllLoaded' | 'atMs'>,
): ShownVerdict {
  const { verdict, reasons } = answer;
  const isFeeder = verdict === 'refused' && reasons[0]?.code.startsWith('feeder-') === true;
  return { ...told, act, slot, feeder, reel, verdict, reasons, bad: isFeeder ? 'feeder' : 'reel' };
}
