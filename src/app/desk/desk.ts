// Runs the desk: takes scans, asks for the verdict when everything is there, writes it down, and only then shows it.

import { batch, effect, type Signal, signal } from '@preact/signals';
import type { Judged } from '../../../shared/desk/judgement.ts';
import {
  type Desk,
  type DeskView,
  emptyDesk,
  isDeskReady,
  type ReelInHand,
  takeKnown,
} from '../../../shared/desk/model.ts';
import type { OpenStep } from '../../../shared/desk/step-offer.ts';
import { mayDo } from '../../../shared/floor/may.ts';
import { personByBadge } from '../../../shared/floor/people.ts';
import { nextMissing } from '../../../shared/floor/progress.ts';
import type { Recognised } from '../../../shared/floor/recognise.ts';
import type { StepScan } from '../../../shared/floor/step-scan.ts';
import type { Verdict, VerifyAct } from '../../../shared/floor/vocabulary.ts';
import { wantedOn } from '../../../shared/floor/wanted.ts';
import type { Scan } from '../../../shared/labels/scan.ts';
import { entryId } from '../../../shared/log/entry.ts';
import type { Reason } from '../../../shared/verdict/reasons.ts';
import type { App } from '../app.ts';

/** A verdict as it is shown: its entry is durable. */
export interface ShownVerdict {
  readonly entry: string;
  readonly act: VerifyAct;
  /** Null where a reel was refused before any slot was scanned. */
  readonly slot: string | null;
  readonly feeder: string | null;
  readonly reel: ReelInHand;
  /** What must be another one before the task goes on. */
  readonly bad: 'reel' | 'feeder';
  readonly atMs: number;
  readonly verdict: Verdict;
  readonly reasons: readonly Reason[];
  readonly wanted: string | null;
  /** The next slot in walking order after an accepted load. */
  readonly next: string | null;
}

/** A write that takes longer shows the filled wells meanwhile; before that, drawing them would only delay the verdict. */
const SLOW_WRITE_MS = 150;

/** A scan step of a checklist that is next on the screen, and what becomes of a scan that is for it. */
export interface StepOnScreen extends OpenStep {
  readonly onScan: (judged: StepScan) => void;
}

/** The running desk. */
export interface DeskRun {
  readonly desk: Signal<Desk>;
  readonly shown: Signal<ShownVerdict | null>;
  /** Set while an entry is being written: the wells wait. */
  readonly busy: Signal<boolean>;
  /** The scan step that is next on the screen; whoever shows a checklist sets it. */
  readonly step: Signal<StepOnScreen | null>;
  readonly view: () => DeskView | null;
  readonly take: (scan: Scan) => boolean;
  /** Fetches what reads labels and judges reels; scans wait for it. */
  readonly getReady: () => Promise<void>;
  readonly chooseSlot: (slot: string | null) => void;
  readonly chooseKnown: (known: Recognised) => void;
  /** What a label is that reads like the running reel's: that reel, or a second one. */
  readonly chooseRunsHere: (isSecond: boolean) => void;
  readonly chooseCameBefore: (isSame: boolean) => void;
  /** The refused reel stays in hand and goes to another slot, whose code is wanted then. */
  readonly carryOn: () => void;
  /** Goes on with what came back after a reload. */
  readonly goOnWith: () => void;
  /** Asks for the verdict again, on what is in hand: what stood in its way was put right. */
  readonly again: () => void;
  readonly chooseMeaning: (field: string, value: string) => void;
  /** Leaves a question without an answer: what it was about is dropped, the rest of the task stays. */
  readonly leaveQuestion: () => void;
  readonly setQuantity: (quantity: number) => void;
  /** The label that comes code by code has no more: it is judged as it is. */
  readonly takeEnough: () => void;
  readonly skipOldReel: () => void;
  readonly clear: () => void;
  /** Ends the shown verdict: an accepted one goes on, a refused one keeps slot and feeder for the next reel. */
  readonly goOn: () => void;
  readonly undo: () => Promise<void>;
}

/**
 * True where a scan says no more than a shown splice has: its slot, or a reel that is on it now. Old reel, new reel and slot may
 * come in any order, so the last of the three comes after the verdict.
 */
function isSameSplice(shown: ShownVerdict, scanned: Desk): boolean {
  return (
    scanned.slot === shown.slot &&
    scanned.question === null &&
    scanned.told === null &&
    scanned.feeder === null &&
    scanned.reel === null
  );
}

type Judgement = typeof import('../../../shared/desk/judgement.ts');

/** Makes the desk of an app. `onBadge` and `onPanel` get what is no part of a verdict. */
export function createDesk(
  app: App,
  others: {
    readonly onBadge: (person: string) => void;
    readonly onPanel: (run: string, serial: string, scan: Scan) => void;
    /** A reel that the next product does not want was scanned on its slot: it comes out. */
    readonly onTakeOut: (slot: string, scan: Scan) => void;
  },
): DeskRun {
  const desk = signal<Desk>(emptyDesk);
  const shown = signal<ShownVerdict | null>(null);
  const busy = signal(false);
  const step = signal<StepOnScreen | null>(null);
  /** Scans that came while an entry was being written, or before labels can be read. */
  const waiting: Scan[] = [];
  /** Reads labels and judges reels: code that no screen needs to be drawn, so it comes in after the first one. */
  let judgement: Judgement | null = null;
  let loading: Promise<void> | null = null;

  function getReady(): Promise<void> {
    loading ??= import('../../../shared/desk/judgement.ts').then(
      (loaded) => {
        judgement = loaded;
        takeWaiting();
      },
      (error) => {
        loading = null; // the next scan asks again
        throw error;
      },
    );
    return loading;
  }

  function takeWaiting(): void {
    while (!busy.value && judgement !== null) {
      const late = waiting.shift();
      if (!late) return;
      take(late);
    }
  }

  const view = (): DeskView | null => {
    const line = app.line.value;
    return line === null ? null : { floor: app.store.floor(), line };
  };

  function set(next: Desk): void {
    const seen = view();
    const judged = seen && !busy.value && shown.value === null ? judgedNow(next, seen) : null;
    if (!seen || judged === null) desk.value = seen ? withWarning(next, seen) : next;
    // All that decides is there, but the log must say who: the badge is the last thing wanted.
    else if (mayDo('verify-reel', app.person.peek(), seen.floor.people.size > 0).may)
      keep(next, seen, judged).catch(() => undefined); // shown by the fault screen
    else desk.value = { ...next, told: { tell: 'sign-in' } };
  }

  /** Says at once that a lead must decide, where that is known before all is there. */
  function withWarning(next: Desk, seen: DeskView): Desk {
    if (next.told !== null || shown.peek() !== null || judgement === null) return next;
    const reason = judgement.leadWanted(seen, next, app.clock.nowMs());
    return reason === null ? next : { ...next, told: { tell: 'lead-wanted', reason } };
  }

  /** The verdict, where everything is there; before that a refusal that nothing still wanted can take away. */
  function judgedNow(next: Desk, seen: DeskView): (Judged & { readonly reel: ReelInHand }) | null {
    const { slot, reel } = next;
    if (judgement === null || !seen.floor.chosen.has(seen.line)) return null;
    if (!isDeskReady(next, seen)) return judgement.judgeEarly(seen, next, app.clock.nowMs());
    if (slot === null || reel === null) return null;
    return { ...judgement.judgeReel(seen, { ...next, slot, reel }, app.clock.nowMs()), reel };
  }

  async function keep(
    ready: Desk,
    seen: DeskView,
    judged: Judged & { readonly reel: ReelInHand },
  ): Promise<void> {
    const { slot } = ready;
    const setup = seen.floor.chosen.get(seen.line) ?? '';
    busy.value = true;
    const slow = setTimeout(() => {
      desk.value = ready;
    }, SLOW_WRITE_MS);
    const { act, answer, wishes, reel } = judged;
    const wanted = slot === null ? null : (wantedOn(seen.floor, setup, slot)?.part ?? null);
    const isFeeder = answer.verdict === 'refused' && answer.reasons[0]?.code.startsWith('feeder-') === true;
    try {
      const [entry] = await app.write(wishes);
      const next = nextMissing(app.store.floor(), seen.line);
      batch(() => {
        shown.value = {
          entry: entry ? entryId(entry) : '',
          act,
          slot,
          feeder: ready.feeder,
          reel,
          verdict: answer.verdict,
          reasons: answer.reasons,
          wanted,
          next,
          bad: isFeeder ? 'feeder' : 'reel',
          atMs: app.clock.nowMs(),
        };
        desk.value = answer.verdict === 'accepted' ? { ...emptyDesk, mode: ready.mode } : ready;
        busy.value = false;
      });
    } catch (error) {
      desk.value = ready; // nothing scanned is lost
      busy.value = false;
      throw error;
    } finally {
      clearTimeout(slow);
    }
    takeWaiting();
  }

  /** Before there is a line, badges are all that can be scanned: the first engineer signs in to bring a setup in. */
  function takeBadge(scan: Scan): boolean {
    for (const code of scan.codes) {
      const person = personByBadge(app.store.floor().people, code.text.trim());
      if (!person) continue;
      others.onBadge(person.person);
      return true;
    }
    return false;
  }

  /** Offers a scan to the step that is next on the screen; what follows a verdict that is not accepted belongs to that. */
  function giveToStep(seen: DeskView, scan: Scan, offer: Judgement['offerToStep']): boolean {
    const next = step.peek();
    const last = shown.peek();
    if (next === null || (last !== null && (last.verdict !== 'accepted' || last.act === 'splice')))
      return false;
    const judged = offer(seen, desk.peek(), next, scan);
    if (judged === null) return false;
    if (last) goOn();
    next.onScan(judged);
    return true;
  }

  function take(scan: Scan): boolean {
    const seen = view();
    if (!seen) return takeBadge(scan);
    if (busy.value || judgement === null) {
      waiting.push(scan);
      if (judgement === null) getReady().catch(() => undefined); // offline and not kept: the next scan asks again
      return true;
    }
    if (giveToStep(seen, scan, judgement.offerToStep)) return true;
    // A new scan answers a shown verdict: nobody should have to tap between two reels.
    if (shown.value?.act === 'splice') {
      const alone = judgement.takeScan(emptyDesk, scan, seen);
      if (isSameSplice(shown.value, alone)) return true;
    }
    // What trails of a label that was refused at its first code is no new reel.
    const last = shown.value;
    if (last?.verdict === 'refused' && judgement.isTrailing(seen, last.reel, scan)) return true;
    if (last) goOn();
    settle(judgement.takeScan(desk.value, scan, seen), scan);
    return true;
  }

  /** Hands on what is no part of a verdict; the rest stays on the desk. */
  function settle(next: Desk, scan: Scan): void {
    if (next.told?.tell === 'badge') others.onBadge(next.told.person);
    if (next.told?.tell === 'panel') others.onPanel(next.told.run, next.told.serial, scan);
    if (next.told?.tell === 'take-out') {
      desk.value = { ...emptyDesk, mode: next.mode };
      others.onTakeOut(next.told.slot, scan);
      return;
    }
    set(next.told?.tell === 'badge' || next.told?.tell === 'panel' ? { ...next, told: null } : next);
  }

  effect(() => {
    if (app.person.value && desk.peek().told?.tell === 'sign-in') set({ ...desk.peek(), told: null });
  });

  function goOn(): void {
    const last = shown.value;
    shown.value = null;
    if (!last || last.verdict === 'accepted') return;
    const rest = last.bad === 'feeder' ? { feeder: null } : { reel: null, partial: null };
    desk.value = { ...desk.value, ...rest };
  }

  return {
    desk,
    shown,
    busy,
    step,
    view,
    take,
    goOn,
    getReady,
    chooseSlot: (slot) => set({ ...desk.value, slot, atSlot: false, old: null, told: null, question: null }),
    chooseKnown: (known) => {
      const { question } = desk.value;
      const seen = view();
      if (question?.ask === 'which' && seen && judgement)
        settle(judgement.answerWhich(desk.value, known, seen), question.rest);
      else set(takeKnown({ ...desk.value, question: null }, known));
    },
    chooseRunsHere: (isSecond) => {
      if (judgement) set(judgement.answerRunsHere(desk.value, isSecond));
    },
    chooseCameBefore: (isSame) => {
      if (judgement) set(judgement.answerCameBefore(desk.value, isSame));
    },
    carryOn: () => {
      const last = shown.value;
      if (!last) return;
      shown.value = null;
      const { mode, via } = desk.value;
      desk.value = { ...emptyDesk, mode, via, reel: last.reel };
    },
    goOnWith: () => set({ ...desk.value, told: null }),
    again: () => {
      shown.value = null;
      set({ ...desk.value });
    },
    chooseMeaning: (field, value) => {
      const seen = view();
      const via = desk.value.reel?.via;
      if (!seen || !judgement || via === undefined || via === 'machine') return;
      const next = judgement.answerMeaning(desk.value, field, value, seen);
      settle(next, { codes: [], via, atMs: app.clock.nowMs() });
    },
    leaveQuestion: () => {
      const { question, reel } = desk.value;
      set({ ...desk.value, question: null, reel: question?.ask === 'meaning' ? null : reel });
    },
    setQuantity: (quantity) => {
      const last = shown.value;
      const reel = last?.reel ?? desk.value.reel;
      if (!reel) return;
      const slot = last?.slot ?? desk.value.slot;
      shown.value = null;
      set({
        ...desk.value,
        slot,
        atSlot: true,
        feeder: last?.feeder ?? desk.value.feeder,
        reel: { ...reel, quantity, basis: 'typed' },
      });
    },
    takeEnough: () => {
      const seen = view();
      if (seen && judgement) set(judgement.takeEnough(desk.value, seen));
    },
    skipOldReel: () => set({ ...desk.value, atSlot: true, told: null }),
    clear: () => {
      shown.value = null;
      desk.value = { ...emptyDesk, mode: desk.value.mode };
    },
    undo: async () => {
      const last = shown.value;
      const seen = view();
      if (!last || !seen) return;
      await app.write([
        {
          kind: 'entry.corrected',
          payload: {
            of: last.entry,
            line: seen.line,
            slot: last.slot,
            reason: 'taken back on the verdict screen',
          },
        },
      ]);
      shown.value = null;
    },
  };
}
