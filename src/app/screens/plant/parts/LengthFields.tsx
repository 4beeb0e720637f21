// The four lengths of tape to fill in.

import { tapeLengthNames } from '../../../../../shared/floor/feeder-types.ts';
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
        <label class="field" key={name}>
          <span>{words.lengths[name]}</span>
          <span class="unit">
            <input
              data-typing
              data-testid={`${id}-${name}`}
              inputMode="decimal"
              autocomplete="off"
              maxLength={12}
              value={texts[name]}
              onInput={(event) => onChange({ ...texts, [name]: event.currentTarget.value })}
            />
            mm
          </span>
          <small>{words.measured}</small>
        </label>
      ))}
    </>
  );
}
