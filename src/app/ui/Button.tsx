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
  /** Why it cannot be pressed now; shown under its label, or once for all where its group tells the same. */
  readonly disabledReason?: string | null;
  /** The id of what says so already, for several buttons at once; then it is not shown under the label. */
  readonly reasonAt?: string | null;
  readonly label?: string;
  readonly testId?: string;
  /** Whether what it switches is on; left out where it switches nothing. */
  readonly pressed?: boolean;
}

/** A target of at least 56 px; after a tap it lets the focus go, so that a scanner's Enter cannot press it again. */
export function Button(props: ButtonProps) {
  const { tone = 'plain', large = false, disabledReason = null, reasonAt = null } = props;
  const isToldHere = disabledReason !== null && reasonAt === null;
  const around = useContext(AroundButton);
  const isToldOnce = disabledReason !== null && around?.reason === disabledReason;
  return (
    <button
      type="button"
      class={`button ${tone}${large ? ' large' : ''}`}
      aria-disabled={disabledReason !== null}
      {...(props.pressed === undefined ? {} : { 'aria-pressed': props.pressed })}
      {...(props.label === undefined || isToldHere ? {} : { 'aria-label': props.label })}
      {...(disabledReason === null || reasonAt === null ? {} : { 'aria-describedby': reasonAt })}
      {...(props.testId === undefined ? {} : { 'data-testid': props.testId })}
      onClick={(event) => {
        const button = event.currentTarget;
        if (event.detail > 0) button.blur(); // by pointer; a keyboard user keeps the place
        if (isToldOnce) around?.point();
        if (disabledReason !== null) return;
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
        {isToldHere && <span class={isToldOnce ? 'hidden' : 'why'}> {disabledReason}</span>}
      </span>
    </button>
  );
}
