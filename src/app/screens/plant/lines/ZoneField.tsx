// A time zone by its name, with those that this browser knows to choose from.

import { useId } from 'preact/hooks';
import { Field } from '../../../ui/Field.tsx';
import { lineListWords } from '../../../words/lines.ts';
import { say } from '../../../words/words.ts';

export function ZoneField(props: {
  readonly testId: string;
  readonly help: string;
  readonly value: string;
  readonly onInput: (zone: string) => void;
}) {
  const zones = useId();
  return (
    <Field
      label={say(lineListWords).zone}
      testId={props.testId}
      autocomplete="off"
      maxLength={60}
      list={zones}
      value={props.value}
      onInput={props.onInput}
      help={props.help}
    >
      <datalist id={zones}>
        {Intl.supportedValuesOf('timeZone').map((zone) => (
          <option key={zone} value={zone} />
        ))}
      </datalist>
    </Field>
  );
}
