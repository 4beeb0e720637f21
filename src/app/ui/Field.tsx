// A question with room to type the answer, and what helps to answer it.

interface FieldProps {
  readonly label: string;
  readonly value: string;
  readonly onInput: (text: string) => void;
  /** A sentence under it; null where there is none. */
  readonly help?: string | null;
  readonly testId?: string;
  readonly inputMode?: 'text' | 'decimal' | 'numeric';
  readonly maxLength?: number;
  readonly autocomplete?: 'off';
  readonly placeholder?: string;
  /** A code rather than prose. */
  readonly isCode?: boolean;
  /** As wide as its form. */
  readonly isWhole?: boolean;
}

export function Field(props: FieldProps) {
  const { label, onInput, help = null, testId, isCode = false, isWhole = false, ...input } = props;
  return (
    <label class={isWhole ? 'field whole' : 'field'}>
      <span>{label}</span>
      <input
        data-typing
        {...(testId === undefined ? {} : { 'data-testid': testId })}
        {...(isCode ? { class: 'code' } : {})}
        {...input}
        onInput={(event) => onInput(event.currentTarget.value)}
      />
      {help !== null && <small>{help}</small>}
    </label>
  );
}
