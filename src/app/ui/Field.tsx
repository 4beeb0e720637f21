// A question with room to type or choose the answer, and what helps to answer it.

import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';

/** What every question has. */
interface Asked {
  readonly label: string;
  readonly value: string;
  /** A sentence under it; null where there is none. */
  readonly help?: string | null;
  readonly testId?: string;
  /** As wide as its form. */
  readonly isWhole?: boolean;
  /** More classes of the whole. */
  readonly more?: string;
}

interface FieldProps extends Asked {
  readonly onInput: (text: string) => void;
  /** What is wrong with what was typed; null where nothing is. */
  readonly wrong?: string | null;
  /** Marks what was typed as wrong, where the sentence stands elsewhere too. */
  readonly isWrong?: boolean;
  /** The unit behind it; empty: none, but as narrow as one that has. */
  readonly unit?: string;
  /** A code rather than prose. */
  readonly isCode?: boolean;
  readonly inputMode?: 'text' | 'decimal' | 'numeric';
  readonly maxLength?: number;
  readonly autocomplete?: 'off' | 'new-password';
  readonly autocapitalize?: 'characters' | 'off';
  readonly spellcheck?: boolean;
  readonly placeholder?: string;
  readonly type?: 'search' | 'password' | 'date' | 'time' | 'datetime-local';
  readonly disabled?: boolean;
  /** Id of the suggestions, which are its children. */
  readonly list?: string;
  readonly children?: ComponentChildren;
}

export function Field(props: FieldProps) {
  const { label, help = null, wrong = null, testId, isWhole, more, children, ...box } = props;
  const { onInput, isWrong, unit, isCode = false, ...input } = box;
  const id = useId();
  const typed = {
    id,
    ...(input as { readonly value: string }), // the types tie `list` to some kinds of input; only a plain one is given one here
    ...(testId === undefined ? {} : { 'data-testid': testId }),
    ...(isCode ? { class: 'code' } : {}),
    ...(isWrong === undefined ? {} : { 'aria-invalid': isWrong }),
    onInput: (event: { readonly currentTarget: HTMLInputElement }) => onInput(event.currentTarget.value),
  };
  return (
    <label for={id} class={classOf(isWhole, more)}>
      <span>{label}</span>
      {unit === undefined ? (
        <input data-typing {...typed} />
      ) : (
        <span class="unit">
          <input data-typing {...typed} />
          {unit}
        </span>
      )}
      {children}
      {help !== null && <small>{help}</small>}
      {wrong !== null && <span class="wrong">{wrong}</span>}
    </label>
  );
}

/** A question whose answer is one of a list; the options are its children. */
export function SelectField(
  props: Asked & { readonly onChoose: (value: string) => void; readonly children: ComponentChildren },
) {
  const { label, value, help = null, testId, isWhole, more, onChoose, children } = props;
  return (
    <label class={classOf(isWhole, more)}>
      <span>{label}</span>
      <select
        data-typing
        {...(testId === undefined ? {} : { 'data-testid': testId })}
        value={value}
        onChange={(event) => onChoose(event.currentTarget.value)}
      >
        {children}
      </select>
      {help !== null && <small>{help}</small>}
    </label>
  );
}

const classOf = (isWhole = false, more = '') =>
  `field${isWhole ? ' whole' : ''}${more === '' ? '' : ` ${more}`}`;
