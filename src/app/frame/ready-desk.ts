// Makes a second feeder ready for a slot, away from the line: its code, then the label of the reel in it, by the same verdict as at the
// line, asked for an empty slot. While it is open, scans go to it.

import { type Signal, signal } from '@preact/signals';
import { judgeForFeeder } from '../../../shared/desk/judgement.ts';
import { type Desk, emptyDesk, isDeskReady } from '../../../shared/desk/model.ts';
import { takeEnough, takeScan } from '../../../shared/desk/take-scan.ts';
import { keepMeasured } from '../../../shared/desk/value-question.ts';
import { holdsBadge, recognise } from '../../../shared/floor/recognise.ts';
import type { Scan } from '../../../shared/labels/scan.ts';
import type { App } from '../app.ts';
import {
  type Answers,
  type AwayTold,
  awayAnswers,
  awayTold,
  awayView,
  isSameTodo,
  type Todo,
  withoutEarlier,
  withoutUnmeasured,
} from '../desk/away.ts';
import { mayVerify } from '../desk/may-verify.ts';
import { type OneAtATime, oneAtATime } from '../desk/one-at-a-time.ts';

/** What came of the last scan. */
export type ReadyTold = AwayTold | { readonly tell: 'unread' };

/** The feeder in hand, what was scanned of its reel, and what came of the last scan. */
export interface ReadyDesk {
  readonly feeder: Signal<string | null>;
  readonly desk: Signal<Desk>;
  readonly told: Signal<ReadyTold | null>;
  readonly take: (scan: Scan) => boolean;
  readonly use: (feeder: string) => void;
  /** The label that comes code by code has no more. */
  readonly enough: () => void;
  /** What a person answers to a question about a code. */
  readonly answers: Answers;
}

interface ReadyAt {
  readonly line: string;
  readonly setup: string;
  readonly slot: string;
  readonly onReady: (feeder: string) => void;
}

/** What the desk of a second feeder works on. */
interface ReadyState extends Pick<ReadyDesk, 'feeder' | 'desk' | 'told'> {
  readonly app: App;
  readonly at: ReadyAt;
  readonly inbox: Pick<OneAtATime<Todo>, 'clear'>;
}

/** Takes scans for a second feeder of a slot; `onReady` once its reel was accepted and written down. */
export function createReadyDesk(app: App, at: ReadyAt): ReadyDesk {
  const feeder = signal<string | null>(null);
  const desk = signal<Desk>(emptyDesk);
  const told = signal<ReadyTold | null>(null);
  const inbox = oneAtATime<Todo>(
    (todo) => ('scan' in todo ? work(state, todo.scan) : settle(state, todo.answer(desk.peek()))),
    isSameTodo,
  );
  const state: ReadyState = { app, at, inbox, feeder, desk, told };
  const go = (answer: (desk: Desk) => Desk) => inbox.give({ answer });
  const view = () => awayView(app, at.line, at.setup);
  return {
    feeder,
    desk,
    told,
    use: (name) => use(state, name),
    take: (scan) => {
      // Badges go to the desk, which signs people in.
      const texts = scan.codes.map(({ text }) => text);
      if (holdsBadge(app.store.floor(), at.line, texts)) return false;
      inbox.give({ scan });
      return true;
    },
    enough: () => go((now) => takeEnough(now, view())),
    answers: awayAnswers((answer) => go((now) => answer(now, view()))),
  };
}

function use({ at, feeder, desk, told }: ReadyState, name: string): void {
  feeder.value = name;
  desk.value = { ...emptyDesk, slot: at.slot, atSlot: true, feeder: name };
  told.value = null;
}

/** One scan, from its desk to what is written for it; the next waits meanwhile. */
async function work(state: ReadyState, scan: Scan): Promise<void> {
  const { app, at, feeder, desk, told } = state;
  if (feeder.peek() === null) {
    takeFeeder(state, scan);
    return;
  }
  if (!mayVerify(app)) {
    told.value = { tell: 'sign-in' };
    return;
  }
  const before = desk.peek();
  await settle(state, keepMeasured(takeScan(before, scan, awayView(app, at.line, at.setup)), before));
}

/** A feeder's code is one text that names nothing else, whether or not the plant lists its feeders. */
function takeFeeder(state: ReadyState, { codes }: Scan): void {
  const { app, at, told } = state;
  const [text = '', ...others] = codes.map((code) => code.text.trim());
  const known = recognise(app.store.floor(), at.line, text);
  const isFeeder = known.some(({ is }) => is === 'feeder');
  if (others.length === 0 && (isFeeder || (known.length === 0 && /^[\w./-]{2,24}$/.test(text))))
    use(state, text);
  else told.value = { tell: 'unread' };
}

/** What is on the desk then; where that is all that a verdict wants, the verdict is written down. */
async function settle(state: ReadyState, taken: Desk): Promise<void> {
  const { app, at, feeder, desk, told } = state;
  // Nothing is asked here of a reel that may have been opened before: it is held.
  const next = withoutEarlier(taken);
  const isOther = next.slot !== at.slot || next.feeder !== feeder.peek();
  // Another slot or feeder is not what is wanted, and a feeder that stands ready brings a reel whose label nobody scanned.
  if (isOther || next.reel?.codes.length === 0) {
    told.value = { tell: 'unread' };
    desk.value = { ...desk.peek(), question: null };
    return;
  }
  const isIdle = next.reel === null && next.partial === null && next.question === null;
  told.value = awayTold(next.told) ?? (isIdle ? { tell: 'unread' } : null);
  desk.value = next;
  if (!isDeskReady(next, awayView(app, at.line, at.setup))) return;
  if (mayVerify(app)) await judge(state, next);
  else {
    // Signed out since: who signs in has the reel judged, by its own scan.
    desk.value = withoutUnmeasured(next);
    told.value = { tell: 'sign-in' };
  }
}

async function judge({ app, at, inbox, desk, told }: ReadyState, { feeder, reel }: Desk): Promise<void> {
  if (feeder === null || reel === null) return;
  const { line, setup, slot, onReady } = at;
  const on = { slot, feeder, reel };
  const judged = judgeForFeeder(app.store.floor(), { line, setup }, on, app.clock.nowMs());
  if (judged.question !== null) {
    desk.value = { ...desk.peek(), question: judged.question };
    return;
  }
  await app.write(judged.drafts);
  const { verdict, reasons } = judged.answer;
  if (verdict === 'accepted') {
    inbox.clear();
    onReady(feeder);
    return;
  }
  desk.value = { ...desk.peek(), reel: null };
  told.value = { tell: verdict, reason: reasons[0] ?? null };
}
