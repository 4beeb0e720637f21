import { useState } from 'preact/hooks';
import { Button } from '../ui/Button.tsx';
import { peopleWords } from '../words/people.ts';
import { say } from '../words/words.ts';
import './pin.css';

/** Digits for gloved hands, and for whoever types them. `onEnter` gets the digits; `wrong` is shown above the keys. */
export function PinPad(props: {
  /** What the digits are, for readers of the screen. */
  readonly label: string;
  readonly onEnter: (digits: string) => void;
  readonly wrong?: string | null;
  readonly secret?: boolean;
}) {
  const [digits, setDigits] = useState('');
  const words = say(peopleWords);
  const secret = props.secret ?? true;
  const enter = () => {
    setDigits('');
    props.onEnter(digits);
  };
  return (
    <div class="pinpad">
      {/* The tablet's own keyboard would cover the keys below. */}
      <input
        class="digits"
        data-typing
        {...(secret
          ? { type: 'password', autocomplete: 'new-password' as const }
          : { type: 'text', autocomplete: 'off' as const })}
        inputMode="none"
        aria-label={props.label}
        data-testid="digits"
        value={digits}
        onInput={({ currentTarget }) => {
          currentTarget.value = currentTarget.value.replace(/\D/g, ''); // also where the digits stay the same
          setDigits(currentTarget.value);
        }}
        onKeyDown={(event) => {
          if (event.key !== 'Enter') return;
          event.preventDefault(); // else it presses what has the focus once the question is closed
          enter();
        }}
      />
      {/* Who presses the keys below hears a number grow; of a PIN nothing is said. */}
      {!secret && <output class="hidden">{digits}</output>}
      {props.wrong && (
        <p class="wrong" role="alert">
          {props.wrong}
        </p>
      )}
      <div class="keys">
        {['1', '2', '3', '4', '5', '6', '7', '8', '9'].map((key) => (
          <button type="button" class="button large" key={key} onClick={() => setDigits(digits + key)}>
            {key}
          </button>
        ))}
        <button type="button" class="button" onClick={() => setDigits(digits.slice(0, -1))}>
          {words.erase}
        </button>
        <button type="button" class="button large" onClick={() => setDigits(`${digits}0`)}>
          0
        </button>
        <Button tone="act" testId="pin-enter" onPress={enter}>
          {words.enter}
        </Button>
      </div>
    </div>
  );
}
