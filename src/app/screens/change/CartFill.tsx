// The cart in hand: what is wanted of it next, and what came of the last scan.

import { useLayoutEffect, useMemo } from 'preact/hooks';
import { deskWells } from '../../../../shared/desk/model.ts';
import type { Changeover } from '../../../../shared/floor/state.ts';
import { useApp } from '../../app.ts';
import { labelSoFar, labelTold } from '../../frame/label-so-far.ts';
import { QuestionDialog } from '../../frame/QuestionDialog.tsx';
import { reasonFacts } from '../../frame/reason-facts.ts';
import { Button } from '../../ui/Button.tsx';
import { Field } from '../../ui/Field.tsx';
import { dockWords } from '../../words/dock.ts';
import { kitWords } from '../../words/kit.ts';
import { verdictWords } from '../../words/verdict.ts';
import { say } from '../../words/words.ts';
import { type CartTold, createCartDesk } from './cart-desk.ts';

const toneOf: Readonly<Record<CartTold['tell'], 'go' | 'care' | 'stop'>> = {
  'known-cart': 'go',
  accepted: 'go',
  'sign-in': 'care',
  'unknown-code': 'care',
  'half-label': 'care',
  'no-part': 'care',
  'wrong-keyboard': 'care',
  'symbols-missing': 'care',
  held: 'care',
  refused: 'stop',
};

function toldText(told: CartTold): string {
  const words = say(kitWords);
  if (told.tell === 'known-cart') return words.knownCart(told.cart);
  if (told.tell === 'sign-in') return words.signIn;
  if (told.tell === 'unknown-code') return words.unknown(told.text);
  if (told.tell === 'accepted') return words.accepted(told.slot);
  if (!('reason' in told)) return labelTold(told);
  const { reason } = told;
  const of = reason && say(verdictWords).reasons[reason.code];
  if (told.tell === 'held') return words.held(of?.title ?? '');
  return words.refused(reason && of ? `${of.title}. ${of.say(reasonFacts(reason))} ${of.act}` : '');
}

export function CartFill({ changeover }: { readonly changeover: Changeover }) {
  const app = useApp();
  const words = say(kitWords);
  const run = useMemo(() => createCartDesk(app, changeover), []);
  const [cart, desk, told] = [run.cart.value, run.desk.value, run.told.value];
  useLayoutEffect(() => app.scans.take(run.take), []);

  if (cart === null) {
    const name = run.typed.value.trim();
    return (
      <div class="row">
        <Field
          label={words.cart}
          testId="cart-code"
          maxLength={64}
          value={run.typed.value}
          onInput={(text) => {
            run.typed.value = text;
          }}
          help={words.cartHelp}
        />
        <Button
          large
          testId="cart-use"
          disabledReason={name === '' ? words.cartFirst : null}
          onPress={() => run.use(name)}
        >
          {words.use}
        </Button>
      </div>
    );
  }
  const next = deskWells(desk, run.view()).find((well) => !well.filled);
  return (
    <div class="card stack" data-testid="cart-filling">
      <div class="row">
        <h3 class="grow">{words.filling(cart)}</h3>
        <Button onPress={run.leave}>{words.leave}</Button>
      </div>
      <p>
        {[desk.slot, desk.feeder, desk.reel?.part ?? desk.reel?.supplierPart]
          .filter((text) => typeof text === 'string')
          .map((text) => (
            <span key={text} class="chip code" translate={false}>
              ✓ {text}
            </span>
          ))}
      </p>
      {/* A line of its own: a code that breaks after its hyphen reads wrong where lines run from right to left. */}
      <p>
        <b data-testid="cart-wants">{labelSoFar(desk) ?? (next ? words.wanted[next.well] : '')}</b>
      </p>
      {desk.partial !== null && (
        <div>
          <Button large testId="cart-enough" onPress={run.enough}>
            {say(dockWords).enough}
          </Button>
        </div>
      )}
      {told !== null && (
        <p class={`chip ${toneOf[told.tell]}`} role="status" data-testid="cart-told">
          {toldText(told)}
        </p>
      )}
      {desk.question !== null && <QuestionDialog desk={run.answers} question={desk.question} />}
    </div>
  );
}
