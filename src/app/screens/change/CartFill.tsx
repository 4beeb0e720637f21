// Fills a cart off the line: slot, feeder and reel in any order, through the same verdict as at the line, asked for the next setup on
// an empty line. While a cart is in hand, scans go to it.

import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { floorLifeOf, openedWishes } from '../../../../shared/desk/floor-life.ts';
import {
  type Desk,
  type DeskView,
  deskWells,
  emptyDesk,
  isDeskReady,
} from '../../../../shared/desk/model.ts';
import { takeEnough, takeScan } from '../../../../shared/desk/take-scan.ts';
import { mayDo } from '../../../../shared/floor/may.ts';
import { holdsBadge } from '../../../../shared/floor/recognise.ts';
import type { Changeover } from '../../../../shared/floor/state.ts';
import type { Scan } from '../../../../shared/labels/scan.ts';
import { entryId } from '../../../../shared/log/entry.ts';
import { floorWhenDocked, verifyForCart } from '../../../../shared/verdict/verify-cart.ts';
import { useApp } from '../../app.ts';
import { labelSoFar } from '../../frame/label-so-far.ts';
import { reasonFacts } from '../../frame/reason-facts.ts';
import { Button } from '../../ui/Button.tsx';
import { kitWords } from '../../words/kit.ts';
import { shellWords } from '../../words/shell.ts';
import { verdictWords } from '../../words/verdict.ts';
import { say } from '../../words/words.ts';
import { cartIn } from './cart-model.ts';
import { oneAtATime } from './one-at-a-time.ts';

interface Told {
  readonly tone: 'go' | 'care' | 'stop';
  readonly text: string;
}

/** The same label read twice, not two scans that mean something. */
function isSameScan(one: Scan, other: Scan): boolean {
  const textOf = (scan: Scan) => scan.codes.map(({ text }) => text).join('\n');
  return textOf(one) === textOf(other);
}

export function CartFill({ changeover }: { readonly changeover: Changeover }) {
  const app = useApp();
  const words = say(kitWords);
  const [cart, setCart] = useState<string | null>(null);
  const [typed, setTyped] = useState('');
  const [desk, setDesk] = useState<Desk>(emptyDesk);
  const [told, setTold] = useState<Told | null>(null);
  const deskNow = useRef<Desk>(emptyDesk);
  const cartNow = useRef<string | null>(null);
  const { line, setup } = changeover;

  /** Nothing on the line, so that each reel is asked for its empty slot. */
  const view = (): DeskView => ({ line, floor: floorWhenDocked(app.store.floor(), line, setup) });
  const show = (next: Desk) => {
    deskNow.current = next;
    setDesk(next);
  };

  async function judge(ready: Desk, name: string): Promise<void> {
    const { slot, reel, feeder } = ready;
    if (slot === null || reel === null) return;
    const floor = app.store.floor();
    const asked = { act: 'load' as const, line, setup, slot, feeder, reel };
    const nowMs = app.clock.nowMs();
    const today = new Date(nowMs).toISOString().slice(0, 10);
    const floorLife = floorLifeOf(floor, asked, nowMs);
    const answer = verifyForCart(floor, { ...asked, today, floorLife }, name);
    const facts = {
      ...{ line, setup, feeder, reel: reel.reel, supplierPart: reel.supplierPart, lot: reel.lot },
      ...{ dateCode: reel.dateCode, quantity: reel.quantity },
    };
    const [entry] = await app.write([
      {
        kind: 'reel.verified',
        payload: {
          // The slot is named where the reel is refused or held; an accepted reel stands on the cart, not on the line.
          ...{ ...facts, act: 'load', run: null, slot: answer.verdict === 'accepted' ? null : slot },
          ...{ part: answer.part ?? reel.part, codes: [...reel.codes], verdict: answer.verdict },
          ...{ reasons: answer.reasons.map((reason) => ({ ...reason })), panels: 0 },
          ...{ via: reel.via, basis: reel.basis },
          ...(answer.verdict === 'held' ? { cart: name } : {}),
        },
      },
      ...openedWishes(floor, { act: 'load', verdict: answer.verdict, reel, part: answer.part }, nowMs),
    ]);
    const why = answer.reasons[0];
    const reason = why ? say(verdictWords).reasons[why.code] : null;
    if (answer.verdict === 'held') {
      setTold({ tone: 'care', text: words.held(reason?.title ?? '') });
      return show(emptyDesk);
    }
    if (answer.verdict === 'refused') {
      const more = why && reason ? `${reason.title}. ${reason.say(reasonFacts(why))} ${reason.act}` : '';
      setTold({ tone: 'stop', text: words.refused(more) });
      // A slot or a feeder that cannot be is let go as well; otherwise only the reel is asked for again.
      if (why?.code === 'slot-on-cart') return show(emptyDesk);
      const isFeeder = why?.code.startsWith('feeder-') ?? false;
      return show({ ...deskNow.current, reel: null, ...(isFeeder ? { feeder: null } : {}) });
    }
    const of = entry ? entryId(entry) : '';
    const part = answer.part ?? reel.part ?? '';
    await app.write([{ kind: 'cart.filled', payload: { ...facts, cart: name, slot, part, of } }]);
    setTold({ tone: 'go', text: words.accepted(slot) });
    show(emptyDesk);
  }

  /** One scan, from its desk to what is written for it; the next waits meanwhile. */
  async function work(scan: Scan): Promise<void> {
    const name = cartNow.current;
    if (name === null) return;
    const known = cartIn(app.store.floor(), line, scan);
    if (known !== null) {
      use(known);
      return setTold({ tone: 'go', text: words.knownCart(known) });
    }
    const seen = view();
    const next = takeScan(deskNow.current, scan, seen);
    setTold(null);
    if (!mayDo('verify-reel', app.person.peek(), seen.floor.people.size > 0).may) {
      return setTold({ tone: 'care', text: words.signIn });
    }
    if (next.told?.tell === 'unknown-code') setTold({ tone: 'care', text: words.unknown(next.told.text) });
    if (next.told?.tell === 'half-label') setTold({ tone: 'care', text: say(shellWords).halfLabel });
    await settle(next, seen, name);
  }

  async function settle(next: Desk, seen: DeskView, name: string): Promise<void> {
    show(next);
    if (isDeskReady(next, seen)) await judge(next, name); // a failure is shown by the fault screen
  }

  function use(name: string | null): void {
    cartNow.current = name;
    setCart(name);
    setTold(null);
    show(emptyDesk);
  }

  function take(scan: Scan): boolean {
    if (cartNow.current !== null) {
      // Badges go to the desk of the line, which signs people in.
      const texts = scan.codes.map(({ text }) => text);
      if (holdsBadge(app.store.floor(), line, texts)) return false;
      inbox.give(scan);
      return true;
    }
    const { told: tells } = takeScan(deskNow.current, scan, view());
    // No cart in hand: a code that nobody knows may be a new cart's, which a person says; all else is not for here.
    if (tells?.tell !== 'unknown-code') return false;
    setTyped(tells.text.slice(0, 64));
    return true;
  }

  const workNow = useRef(work);
  const takeNow = useRef(take);
  const inbox = useMemo(() => oneAtATime<Scan>((scan) => workNow.current(scan), isSameScan), []);
  workNow.current = work;
  takeNow.current = take;
  useLayoutEffect(() => app.scans.take((scan) => takeNow.current(scan)), []);

  if (cart === null) {
    const name = typed.trim();
    return (
      <div class="row">
        <label class="field">
          <span>{words.cart}</span>
          <input
            data-typing
            data-testid="cart-code"
            maxLength={64}
            value={typed}
            onInput={(event) => setTyped(event.currentTarget.value)}
          />
          <small>{words.cartHelp}</small>
        </label>
        <Button
          large
          testId="cart-use"
          disabledReason={name === '' ? words.cartFirst : null}
          onPress={() => use(name)}
        >
          {words.use}
        </Button>
      </div>
    );
  }
  const next = deskWells(desk, view()).find((well) => !well.filled);
  return (
    <div class="card stack" data-testid="cart-filling">
      <div class="row">
        <h3 class="grow">{words.filling(cart)}</h3>
        <Button
          onPress={() => {
            inbox.clear();
            use(null);
          }}
        >
          {words.leave}
        </Button>
      </div>
      <p>
        {[desk.slot, desk.feeder, desk.reel?.part ?? desk.reel?.supplierPart]
          .filter((text) => typeof text === 'string')
          .map((text) => (
            <span key={text} class="chip code" translate={false}>
              ✓ {text}
            </span>
          ))}{' '}
        <b data-testid="cart-wants">{labelSoFar(desk) ?? (next ? words.wanted[next.well] : '')}</b>
      </p>
      {desk.partial !== null && (
        <div>
          <Button
            large
            testId="cart-enough"
            onPress={() => {
              const seen = view();
              settle(takeEnough(deskNow.current, seen), seen, cart).catch(() => undefined); // shown by the fault screen
            }}
          >
            {say(shellWords).enough}
          </Button>
        </div>
      )}
      {told !== null && (
        <p class={`chip ${told.tone}`} role="status" data-testid="cart-told">
          {told.text}
        </p>
      )}
    </div>
  );
}
