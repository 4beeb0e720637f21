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
  /** Told of each change. */
  readonly onInput?: (text: string) => void;
  /** Told once the field is left, where half an answer would do harm. */
  readonly onLeave?: (text: string) => void;
  readonly onFocus?: () => void;
  readonly onBlur?: () => void;
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
  /** The language of what is typed, where it is not the page's, and the way it runs. */
  readonly lang?: string;
  readonly dir?: 'ltr' | 'rtl';
  readonly placeholder?: string;
  readonly type?: 'search' | 'password' | 'date' | 'time' | 'datetime-local';
  readonly disabled?: boolean;
  /** Id of the suggestions, which are its children. */
  readonly list?: string;
  readonly children?: ComponentChildren;
}

export function Field(props: FieldProps) {
  const { label, help = null, wrong = null, testId, isWhole, more, children, ...box } = props;
  const { onInput, onLeave, isWrong, unit, isCode = false, ...input } = box;
  const id = useId();
  const typed = {
    id,
    ...(input as { readonly value: string }), // the types tie `list` to some kinds of input; only a plain one is given one here
    ...(testId === undefined ? {} : { 'data-testid': testId }),
    ...(isCode ? { class: 'code' } : {}),
    ...(isWrong === undefined ? {} : { 'aria-invalid': isWrong }),
    onInput: (event: { readonly currentTarget: HTMLInputElement }) => onInput?.(event.currentTarget.value),
    onChange: (event: { readonly currentTarget: HTMLInputElement }) => onLeave?.(event.currentTarget.value),
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

interface AreaProps extends Asked {
  readonly rows: number;
  readonly onInput: (text: string) => void;
  /** A paste, before it is in the field; `preventDefault` keeps it out. */
  readonly onPaste?: (event: ClipboardEvent) => void;
  readonly isCode?: boolean;
  readonly autocapitalize?: 'off';
  readonly placeholder?: string;
  readonly maxLength?: number;
}

/** A question whose answer is several lines; no word of them is completed or mended. */
export function AreaField(props: AreaProps) {
  const { label, value, help = null, testId, isWhole, more, onInput, isCode = false, ...area } = props;
  return (
    <label class={classOf(isWhole, more)}>
      <span>{label}</span>
      <textarea
        data-typing
        {...area}
        {...(testId === undefined ? {} : { 'data-testid': testId })}
        {...(isCode ? { class: 'code' } : {})}
        autocomplete="off"
        spellcheck={false}
        value={value}
        onInput={(event) => onInput(event.currentTarget.value)}
      />
      {help !== null && <small>{help}</small>}
    </label>
  );
}

/** Something that is asked or shown under a name of its own. */
export function GroupField(props: {
  readonly label: string;
  readonly help?: ComponentChildren;
  readonly isWhole?: boolean;
  readonly children: ComponentChildren;
}) {
  const { label, help = null, isWhole, children } = props;
  return (
    <div class={classOf(isWhole)}>
      <span>{label}</span>
      {children}
      {help !== null && <small>{help}</small>}
    </div>
  );
}

/** One of the answers of a `ChoiceField`. */
interface Choice<T> {
  readonly value: T;
  readonly text: ComponentChildren;
  readonly testId?: string;
  /** The language of its text, where that is not the page's. */
  readonly lang?: string;
  /** It stands there and cannot be chosen now. */
  readonly isOut?: boolean;
}

interface ChoiceFieldProps<T> {
  readonly label: string;
  /** The answer chosen; null where none is, or where null itself is one. */
  readonly value: T | null;
  readonly choices: readonly Choice<T>[];
  readonly onChoose: (value: T) => void;
  readonly help?: ComponentChildren;
  readonly isWhole?: boolean;
  /** The chosen one has a tick before it. */
  readonly isTicked?: boolean;
  /** What stands behind the answers. */
  readonly children?: ComponentChildren;
}

/** A question with few answers, each a button. */
export function ChoiceField<T extends string | number | boolean | null>(props: ChoiceFieldProps<T>) {
  const { label, value, choices, onChoose, help = null, isWhole = false, isTicked = false, children } = props;
  return (
    <GroupField label={label} help={help} isWhole={isWhole}>
      <div class="choice">
        {choices.map((each) => (
          <button
            type="button"
            key={String(each.value)}
            aria-pressed={value === each.value}
            {...(each.lang === undefined ? {} : { lang: each.lang })}
            {...(each.testId === undefined ? {} : { 'data-testid': each.testId })}
            {...(each.isOut === undefined ? {} : { 'aria-disabled': each.isOut })}
            onClick={() => {
              if (!each.isOut) onChoose(each.value);
            }}
          >
            {isTicked && value === each.value ? '✓ ' : ''}
            {each.text}
          </button>
        ))}
        {children}
      </div>
    </GroupField>
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
