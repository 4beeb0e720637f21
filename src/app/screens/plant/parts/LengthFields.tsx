// The four lengths of tape to fill in.

import { tapeLengthNames } from '../../../../../shared/floor/feeder-types.ts';
import { Field } from '../../../ui/Field.tsx';
import { feederTypeWords } from '../../../words/feeder-types.ts';
import { say } from '../../../words/words.ts';
import type { LengthTexts } from './lengths.ts';

interface LengthFieldsProps {
  readonly id: string;
  readonly texts: LengthTexts;
  readonly onChange: (texts: LengthTexts) => void;
}

export function LengthFields({ id, texts, onChange }: LengthFieldsProps) {
  const words = say(feederTypeWords);
  return (
    <>
      {tapeLengthNames.map((name) => (
        <Field
          key={name}
          label={words.lengths[name]}
          unit={'mm'}
          testId={`${id}-${name}`}
          inputMode="decimal"
          autocomplete="off"
          maxLength={12}
          value={texts[name]}
          onInput={(text) => onChange({ ...texts, [name]: text })}
          help={words.measured}
        />
      ))}
    </>
  );
}
