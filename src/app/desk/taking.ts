// What the desk does with a scan, whoever it turns out to be for; scans wait while an entry is being written or labels cannot be read yet.

import { type Desk, type DeskView, emptyDesk } from '../../../shared/desk/model.ts';
import type { Scan } from '../../../shared/labels/scan.ts';
import { bringToLine } from './lines.ts';
import { mayVerify } from './may-verify.ts';
import { type DeskState, goOn, type Judgement, type ShownVerdict, viewOf } from './state.ts';
import { type JudgedReel, judgedNow, keepVerdict, withWarning } from './verdict.ts';

/** Fetches what reads labels and judges reels; scans wait for it. */
export function getReady(state: DeskState): Promise<void> {
  state.loading ??= import('../../../shared/desk/judgement.ts').then(
    (loaded) => {
      state.judgement = loaded;
      takeWaiting(state);
    },
    (error) => {
      state.loading = null; // the next scan asks again
      throw error;
    },
  );
  return state.loading;
}

function takeWaiting(state: DeskState): void {
  while (!state.busy.value && state.judgement !== null) {
    const late = state.waiting.shift();
    if (!late) return;
    takeAtDesk(state, late);
  }
}

/** Puts on the desk what is in hand now; where that is all that a verdict wants, the verdict is written down and shown. */
export function setDesk(state: DeskState, next: Desk): void {
  const { app, desk } = state;
  const seen = viewOf(state);
  const judged =
    seen && !state.busy.value && state.shown.value === null ? judgedNow(state, next, seen) : null;
  if (!seen || judged === null) desk.value = seen ? withWarning(state, next, seen) : next;
  // All that decides is there, but the log must say who: the badge is the last thing wanted.
  else if (!mayVerify(app)) desk.value = { ...next, told: { tell: 'sign-in' } };
  else if (judged.question !== null) desk.value = { ...next, told: null, question: judged.question };
  else keep(state, next, { seen, judged }).catch(() => undefined); // shown by the fault screen
}

async function keep(
  state: DeskState,
  ready: Desk,
  of: { readonly seen: DeskView; readonly judged: JudgedReel },
): Promise<void> {
  await keepVerdict(state, ready, of);
  takeWaiting(state);
}

/** Takes a scan; false where it is not for the desk. */
export function takeAtDesk(state: DeskState, scan: Scan): boolean {
  const { desk, shown, judgement, waiting } = state;
  const here = viewOf(state);
  if (judgement === null || (here && state.busy.value)) {
    waiting.push(scan);
    if (judgement === null) getReady(state).catch(() => undefined); // offline and not kept: the next scan asks again
    return true;
  }
  if (!here) return takeBadge(state, judgement, scan);
  // The step on the screen comes before the line: its answer may be a reel that the log has elsewhere.
  if (giveToStep(state, { seen: here, scan, offer: judgement.offerToStep })) return true;
  const isMeantForStep = state.step.peek()?.isMeant === true;
  const line = isMeantForStep ? here.line : judgement.lineOfScan(desk.peek(), scan, here);
  if (line !== here.line) {
    if (shown.value) goOn(state);
    bringToLine(state, line, judgement.takeScan(emptyDesk, scan, { floor: here.floor, line }).slot);
  }
  const seen = viewOf(state) ?? here;
  // A new scan answers a shown verdict: nobody should have to tap between two reels.
  if (shown.value?.act === 'splice') {
    const alone = judgement.takeScan(emptyDesk, scan, seen);
    if (isSameSplice(shown.value, alone)) return true;
  }
  // What trails of a label that was refused at its first code is no new reel.
  const last = shown.value;
  if (last?.verdict === 'refused' && judgement.isTrailing(seen, last.reel, scan)) return true;
  if (last) goOn(state);
  settle(state, judgement.takeScan(desk.value, scan, seen), scan);
  return true;
}

/** Before there is a line, badges are all that can be scanned: the first engineer signs in to bring a setup in. */
function takeBadge({ app, others }: DeskState, { personByBadge }: Judgement, scan: Scan): boolean {
  for (const code of scan.codes) {
    const person = personByBadge(app.store.floor().people, code.text.trim());
    if (!person) continue;
    others.onBadge(person.person);
    return true;
  }
  return false;
}

/** Offers a scan to the step that is next on the screen; what follows a verdict that is not accepted belongs to that. */
function giveToStep(
  state: DeskState,
  {
    seen,
    scan,
    offer,
  }: { readonly seen: DeskView; readonly scan: Scan; readonly offer: Judgement['offerToStep'] },
): boolean {
  const next = state.step.peek();
  const last = state.shown.peek();
  if (next === null || (last !== null && (last.verdict !== 'accepted' || last.act === 'splice')))
    return false;
  const judged = offer(seen, state.desk.peek(), next, scan);
  if (judged === null) return false;
  if (last) goOn(state);
  next.onScan(judged);
  return true;
}

/** Hands on what is no part of a verdict; the rest stays on the desk. */
export function settle(state: DeskState, next: Desk, scan: Scan): void {
  const { told } = next;
  const { desk, others } = state;
  if (told?.tell === 'badge') others.onBadge(told.person);
  if (told?.tell === 'panel') others.onPanel(told.run, told.serial, scan);
  if (told?.tell === 'take-out' && state.line !== null) {
    desk.value = { ...emptyDesk, mode: next.mode };
    others.onTakeOut({ line: state.line, slot: told.slot }, scan);
    return;
  }
  setDesk(state, told?.tell === 'badge' || told?.tell === 'panel' ? { ...next, told: null } : next);
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
