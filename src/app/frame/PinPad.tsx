import { useState } from 'preact/hooks';
import { Button } from '../ui/Button.tsx';
import { peopleWords } from '../words/people.ts';
import { say } from '../words/words.ts';
import './pin.css';

/** Digits for gloved hands. `onEnter` gets the digits; `wrong` is shown above them. */
export function PinPad(props: {
  readonly onEnter: (digits: string) => void;
  readonly wrong?: string | null;
  readonly secret?: boolean;
}) {
  const [digits, setDigits] = useState('');
  const words = say(peopleWords);
  const secret = props.secret ?? true;
  return (
    <div class="pinpad">
      <output class="digits" aria-live="polite">
        {digits === '' ? ' ' : secret ? '●'.repeat(digits.length) : digits}
      </output>
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
        <Button
          tone="act"
          testId="pin-enter"
          onPress={() => {
            setDigits('');
            props.onEnter(digits);
          }}
        >
          {words.enter}
        </Button>
      </div>
    </div>
  );
}
