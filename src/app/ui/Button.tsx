import type { ComponentChildren } from 'preact';
import { useContext } from 'preact/hooks';
import { AroundButton } from './ActGroup.tsx';
import './controls.css';
import { isTremble } from './press.ts';

/** A button. A disabled one stays readable and says why; it answers taps with nothing. */
export interface ButtonProps {
  readonly children: ComponentChildren;
  readonly onPress: () => void;
  readonly tone?: 'plain' | 'act' | 'stop' | 'quiet';
  readonly large?: boolean;
  /** Why it cannot be pressed now; shown under its label, or pointed at where what stands around it says the same once for all. */
  readonly disabledReason?: string | null;
  readonly label?: string;
  readonly testId?: string;
  /** Whether what it switches is on; left out where it switches nothing. */
  readonly pressed?: boolean;
}

/** A target of at least 56 px; after a tap it lets the focus go, so that a scanner's Enter cannot press it again. */
export function Button(props: ButtonProps) {
  const { tone = 'plain', large = false, disabledReason = null } = props;
  const around = useContext(AroundButton);
  const told = around !== null && around.reason === disabledReason ? around : null;
  const isToldHere = disabledReason !== null && told === null;
  return (
    <button
      type="button"
      class={`button ${tone}${large ? ' large' : ''}`}
      aria-disabled={disabledReason !== null}
      {...(props.pressed === undefined ? {} : { 'aria-pressed': props.pressed })}
      {...(props.label === undefined || isToldHere ? {} : { 'aria-label': props.label })}
      {...(disabledReason === null || told === null ? {} : { 'aria-describedby': told.at })}
      {...(props.testId === undefined ? {} : { 'data-testid': props.testId })}
      onClick={(event) => {
        const button = event.currentTarget;
        if (event.detail > 0) button.blur(); // by pointer; a keyboard user keeps the place
        if (disabledReason !== null) {
          told?.point();
          return;
        }
        if (isTremble(button, event.timeStamp)) return;
        props.onPress();
      }}
    >
      <span>
        {/* Where it says why it cannot be pressed, its name is read with the reason. */}
        {props.label !== undefined && isToldHere ? (
          <>
            <span aria-hidden="true">{props.children}</span>
            <span class="hidden">{props.label}</span>
          </>
        ) : (
          props.children
        )}
        {isToldHere && <span class="why"> {disabledReason}</span>}
      </span>
    </button>
  );
}
