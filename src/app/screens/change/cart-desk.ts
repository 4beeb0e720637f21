// Fills a cart off the line: slot, feeder and reel in any order, through the same desk and the same verdict as at the line, asked for the
// next setup on an empty line. While a cart is in hand, scans go to it.

import { type Signal, signal } from '@preact/signals';
import { judgeForCart } from '../../../../shared/desk/judgement.ts';
import { type Desk, type DeskView, emptyDesk, isDeskReady } from '../../../../shared/desk/model.ts';
import { takeEnough, takeScan } from '../../../../shared/desk/take-scan.ts';
import { keepMeasured } from '../../../../shared/desk/value-question.ts';
import { holdsBadge } from '../../../../shared/floor/recognise.ts';
import type { Scan } from '../../../../shared/labels/scan.ts';
import type { Reason } from '../../../../shared/verdict/reasons.ts';
import type { App } from '../../app.ts';
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
} from '../../desk/away.ts';
import { mayVerify } from '../../desk/may-verify.ts';
import { oneAtATime } from '../../desk/one-at-a-time.ts';
import { cartIn } from './cart-model.ts';

/** What came of the last scan. */
export type CartTold =
  | AwayTold
  | { readonly tell: 'known-cart'; readonly cart: string }
  | { readonly tell: 'accepted'; readonly slot: string };

/** The desk of a cart. */
export interface CartDesk {
  /** The cart in hand, null where none is. */
  readonly cart: Signal<string | null>;
  readonly desk: Signal<Desk>;
  readonly told: Signal<CartTold | null>;
  /** A code that may be a new cart's name, as typed or scanned. */
  readonly typed: Signal<string>;
  readonly view: () => DeskView;
  readonly take: (scan: Scan) => boolean;
  readonly use: (cart: string) => void;
  readonly leave: () => void;
  /** The label that comes code by code has no more. */
  readonly enough: () => void;
  /** What a person answers to a question about a code. */
  readonly answers: Answers;
}

/** What stays on the desk after a refusal: a slot or a feeder that cannot be is let go as well; otherwise only the reel is asked for again. */
function afterRefusal(desk: Desk, reason: Reason | undefined): Desk {
  if (reason?.code === 'slot-on-cart') return emptyDesk;
  const isFeeder = reason?.code.startsWith('feeder-') ?? false;
  return { ...desk, reel: null, feeder: isFeeder ? null : desk.feeder };
}

/** What the desk of a cart works on. */
interface CartState extends Pick<CartDesk, 'cart' | 'desk' | 'told' | 'typed'> {
  readonly app: App;
  readonly line: string;
  readonly setup: string;
}

/** Makes the desk of a cart for the setup that comes next on a line. */
export function createCartDesk(
  app: App,
  { line, setup }: { readonly line: string; readonly setup: string },
): CartDesk {
  const cart = signal<string | null>(null);
  const desk = signal<Desk>(emptyDesk);
  const told = signal<CartTold | null>(null);
  const typed = signal('');
  const state: CartState = { app, line, setup, cart, desk, told, typed };
  const inbox = oneAtATime<Todo>(
    (todo) => ('scan' in todo ? work(state, todo.scan) : answered(state, todo.answer)),
    isSameTodo,
  );
  return {
    cart,
    desk,
    told,
    typed,
    view: () => viewOf(state),
    take: (scan) => take(state, scan, (one) => inbox.give({ scan: one })),
    use: (name) => use(state, name),
    leave: () => {
      inbox.clear();
      use(state, null);
    },
    enough: () => inbox.give({ answer: (now) => takeEnough(now, viewOf(state)) }),
    answers: awayAnswers((answer) => inbox.give({ answer: (now) => answer(now, viewOf(state)) })),
  };
}

/** Answers at a cart: the same as at the line, and what is there then is judged for the cart. */
async function answered(state: CartState, answer: (desk: Desk) => Desk): Promise<void> {
  const name = state.cart.peek();
  if (name === null) return;
  const seen = viewOf(state);
  const next = withoutEarlier(answer(state.desk.peek()));
  state.told.value = awayTold(next.told);
  await settle(state, next, { seen, name });
}

function viewOf({ app, line, setup }: CartState): DeskView {
  return awayView(app, line, setup);
}

/** Where a desk is settled: what it looks at, and the cart's name. */
interface At {
  readonly seen: DeskView;
  readonly name: string;
}

async function settle(state: CartState, next: Desk, { seen, name }: At): Promise<void> {
  state.desk.value = next;
  if (!isDeskReady(next, seen)) return;
  if (mayVerify(state.app))
    await judge(state, next, name); // a failure is shown by the fault screen
  else {
    // Signed out since: who signs in has the reel judged, by its own scan.
    state.desk.value = withoutUnmeasured(next);
    state.told.value = { tell: 'sign-in' };
  }
}

async function judge(state: CartState, { slot, feeder, reel }: Desk, name: string): Promise<void> {
  if (slot === null || reel === null) return;
  const { app, line, setup, desk, told } = state;
  const at = { line, setup, cart: name };
  const ready = { slot, feeder, reel };
  const { answer, question, drafts } = judgeForCart(app.store.floor(), at, ready, app.clock.nowMs());
  if (question !== null) {
    desk.value = { ...desk.peek(), question };
    return;
  }
  await app.write(drafts);
  const [reason] = answer.reasons;
  const isAccepted = answer.verdict === 'accepted';
  told.value = isAccepted
    ? { tell: 'accepted', slot }
    : { tell: answer.verdict === 'held' ? 'held' : 'refused', reason: reason ?? null };
  desk.value = answer.verdict === 'refused' ? afterRefusal(desk.peek(), reason) : emptyDesk;
}

/** One scan, from its desk to what is written for it; the next waits meanwhile. */
async function work(state: CartState, scan: Scan): Promise<void> {
  const { app, line, desk, told } = state;
  const name = state.cart.peek();
  if (name === null) return;
  const known = cartIn(app.store.floor(), line, scan);
  if (known !== null) {
    use(state, known);
    told.value = { tell: 'known-cart', cart: known };
    return;
  }
  const seen = viewOf(state);
  const before = desk.peek();
  const next = keepMeasured(withoutEarlier(takeScan(before, scan, seen)), before);
  told.value = null;
  if (!mayVerify(app)) {
    told.value = { tell: 'sign-in' };
    return;
  }
  told.value = awayTold(next.told);
  await settle(state, next, { seen, name });
}

function use({ cart, told, desk }: CartState, name: string | null): void {
  cart.value = name;
  told.value = null;
  desk.value = emptyDesk;
}

/** Takes a scan where it is for the cart in hand; one that is, waits for its turn. */
function take(state: CartState, scan: Scan, give: (scan: Scan) => void): boolean {
  const { app, line, cart, desk, typed } = state;
  if (cart.peek() !== null) {
    // Badges go to the desk of the line, which signs people in.
    const texts = scan.codes.map(({ text }) => text);
    if (holdsBadge(app.store.floor(), line, texts)) return false;
    give(scan);
    return true;
  }
  const { told: tells } = takeScan(desk.peek(), scan, viewOf(state));
  // No cart in hand: a code that nobody knows may be a new cart's, which a person says; all else is not for here.
  if (tells?.tell !== 'unknown-code') return false;
  typed.value = tells.text.slice(0, 64);
  return true;
}
