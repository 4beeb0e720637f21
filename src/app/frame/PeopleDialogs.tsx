// Dialogs in which a person is named: signing in, clearing a held reel, typing a quantity.

import { useState } from 'preact/hooks';
import { hasAdder } from '../../../shared/floor/may.ts';
import type { FloorState, Hold } from '../../../shared/floor/state.ts';
import { useApp, useFloor } from '../app.ts';
import { chooseLanguage, signIn, signOut } from '../person/sign-in.ts';
import { address } from '../router.ts';
import { wishedLanguage } from '../spoken.ts';
import { Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { Field } from '../ui/Field.tsx';
import { LanguageField } from '../ui/LanguageField.tsx';
import { moistureWords } from '../words/moisture.ts';
import { peopleWords } from '../words/people.ts';
import { shellWords } from '../words/shell.ts';
import { sayReason } from '../words/verdict.ts';
import { say } from '../words/words.ts';
import { ConfirmPerson } from './ConfirmPerson.tsx';
import { useConfirmed } from './confirmed.ts';
import { bakeApproval, heldBake } from './let-bake.ts';
import { PasskeyTold } from './PasskeyTold.tsx';
import { PinPad } from './PinPad.tsx';
import { reasonFacts } from './reason-facts.ts';
import { signed } from './signed.ts';

/** Signs a person in: an operator by badge alone, everybody by name and PIN. */
export function SignInDialog({ onClose }: { readonly onClose: () => void }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(peopleWords);
  const shell = say(shellWords);
  const person = app.person.value;
  return (
    <Dialog title={words.whoTitle} onClose={onClose}>
      <div class="stack">
        <p class="soft">{shell.signInHelp}</p>
        {person && (
          <div class="row">
            <span class="chip go">{shell.signedInAs(person.name)}</span>
            <Button
              onPress={() => {
                signOut(app, person);
                onClose();
              }}
            >
              {shell.signOut}
            </Button>
          </div>
        )}
        <ConfirmPerson
          needs="operator"
          badgeSuffices
          onConfirmed={(someone, confirmed) => {
            signIn(app, someone, confirmed);
            onClose();
          }}
        />
        {/* Below the names: who takes over is quicker found. */}
        {person && (
          <LanguageField
            label={words.yourLanguage}
            value={wishedLanguage(app)}
            onChoose={(language) => chooseLanguage(app, person, language)}
          />
        )}
        {!hasAdder(floor.people.values()) && (
          <a
            class="button act large"
            href={address('plant', 'people')}
            data-testid="add-first"
            onClick={onClose}
          >
            {words.addFirst}
          </a>
        )}
      </div>
      <div class="acts">
        <Button onPress={onClose}>{shell.close}</Button>
      </div>
    </Dialog>
  );
}

/** A lead clears or declines a held reel: badge and PIN first, then the reason. */
export function ClearDialog({
  entry,
  onClose,
}: {
  readonly entry: string;
  readonly onClose: (cleared: boolean) => void;
}) {
  const app = useApp();
  const floor = useFloor();
  const words = say(peopleWords);
  const [lead, setLead] = useConfirmed();
  const [reason, setReason] = useState('');
  const [isBakeGood, setBakeGood] = useState(false);
  const hold = floor.holds.get(entry);
  if (!hold) return null;
  const bake = heldBake(floor, hold, app.clock.nowMs());
  const { line, slot } = hold.facts;
  const kept = keptOnCart(floor, hold);

  async function decide(accept: boolean): Promise<void> {
    if (!lead) return;
    const facts = { of: entry, line, slot, reason: reason.trim(), by: lead.person.person };
    const drafts = await signed(app, lead, [
      ...(accept && isBakeGood && bake
        ? [{ kind: 'bake.approved' as const, payload: bakeApproval(bake, lead, facts.reason) }]
        : []),
      accept
        ? { kind: 'hold.cleared', payload: { ...facts, checked: lead.checked } }
        : { kind: 'hold.declined', payload: facts },
    ]);
    if (drafts === null) return;
    await app.write(drafts);
    app.notice.value = accept
      ? { tone: kept === null ? 'go' : 'care', text: kept ?? words.cleared(slot ?? '') }
      : { tone: 'care', text: words.declined };
    onClose(accept);
  }

  return (
    <Dialog title={words.clearTitle} onClose={() => onClose(false)} tone="care">
      <div class="stack">
        <HeldFor hold={hold} />
        {kept !== null && (
          <p class="chip care" data-testid="hold-kept">
            ? {kept}
          </p>
        )}
        {!lead && (
          <>
            <p class="soft">{words.clearHelp}</p>
            <ConfirmPerson
              needs="lead"
              badgeSuffices={false}
              onConfirmed={(person, { checked }) => setLead({ person, checked, byPasskey: false })}
              onPasskey={(person) => setLead({ person, checked: 'tablet', byPasskey: true })}
            />
          </>
        )}
        {lead && (
          <>
            <WhyCleared reason={reason} onReason={setReason} />
            <PasskeyTold sure={lead} />
            {bake && <BakeGood isGood={isBakeGood} onGood={setBakeGood} />}
            <div class="row">
              <Button
                tone="act"
                large
                testId="clear-accept"
                disabledReason={reason.trim() === '' ? words.clearReason : null}
                onPress={() => void decide(true)}
              >
                {words.accept}
              </Button>
              <Button
                tone="stop"
                large
                disabledReason={reason.trim() === '' ? words.clearReason : null}
                onPress={() => void decide(false)}
              >
                {words.decline}
              </Button>
            </div>
          </>
        )}
        <Button onPress={() => onClose(false)}>{say(shellWords).cancel}</Button>
      </div>
    </Dialog>
  );
}

/** What the cart got for the slot while the reel was held stays there: a sentence of it, null where it got nothing. */
function keptOnCart(floor: FloorState, { facts }: Hold): string | null {
  const { slot, cart, reel, part } = facts;
  const between = cart === undefined ? undefined : floor.carts.get(cart)?.get(slot ?? '');
  if (!between) return null;
  return say(peopleWords).cartKept({
    cart: between.cart,
    slot: between.slot,
    carries: between.reel ?? between.part,
    held: reel ?? part ?? '',
  });
}

/** What a reel is held for, as far as this version knows. */
function HeldFor({ hold }: { readonly hold: Hold }) {
  return (
    <>
      {hold.reasons.map((each) => {
        const known = sayReason(each.code);
        return known ? (
          <p key={each.code}>
            <b>{known.title}.</b> {known.say(reasonFacts(each as Parameters<typeof reasonFacts>[0]))}
          </p>
        ) : null;
      })}
    </>
  );
}

/** Why it is cleared or declined: one of the usual reasons, or typed. */
function WhyCleared(props: { readonly reason: string; readonly onReason: (reason: string) => void }) {
  const words = say(peopleWords);
  return (
    <>
      <h3>{words.clearReason}</h3>
      <div class="choice">
        {words.reasons.map((each) => (
          <button
            type="button"
            key={each}
            aria-pressed={props.reason === each}
            onClick={() => props.onReason(each)}
          >
            {each}
          </button>
        ))}
      </div>
      <Field label={words.otherReason} value={props.reason} maxLength={200} onInput={props.onReason} />
    </>
  );
}

/** Whether the bake counts for this once, or for good. */
function BakeGood(props: { readonly isGood: boolean; readonly onGood: (isGood: boolean) => void }) {
  const words = say(moistureWords);
  return (
    <fieldset class="choice stood" data-testid="held-bake">
      <legend>{words.letBakeFor}</legend>
      <button type="button" aria-pressed={!props.isGood} onClick={() => props.onGood(false)}>
        {words.letBakeOnce}
      </button>
      <button
        type="button"
        aria-pressed={props.isGood}
        data-testid="held-bake-good"
        onClick={() => props.onGood(true)}
      >
        {words.letBakeAlways}
      </button>
    </fieldset>
  );
}

/** Asks for a whole number of parts. */
export function QuantityDialog(props: {
  readonly onQuantity: (quantity: number) => void;
  readonly onClose: () => void;
}) {
  const words = say(peopleWords);
  const shell = say(shellWords);
  const [wrong, setWrong] = useState<string | null>(null);
  return (
    <Dialog title={words.quantityTitle} onClose={props.onClose}>
      <p class="soft">{words.quantityHelp}</p>
      <PinPad
        label={words.quantityTitle}
        secret={false}
        wrong={wrong}
        onEnter={(digits) => {
          const quantity = Number(digits);
          if (digits === '' || quantity < 1) return setWrong(words.quantityWrong);
          props.onQuantity(quantity);
        }}
      />
      <div class="acts">
        <Button onPress={props.onClose}>{shell.cancel}</Button>
      </div>
    </Dialog>
  );
}
