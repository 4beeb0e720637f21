// Whether pictures of labels are kept as evidence, for how many days and in how much room.

import { Field, GroupField } from '../../ui/Field.tsx';
import { picturesWords } from '../../words/pictures.ts';
import { say } from '../../words/words.ts';
import type { PicturesForm } from './rules-drafts.ts';

interface PictureRuleProps {
  readonly form: PicturesForm;
  readonly onChange: (form: PicturesForm) => void;
}

export function PictureRule({ form, onChange }: PictureRuleProps) {
  const words = say(picturesWords);
  return (
    <>
      <GroupField label={words.rule} help={words.ruleHelp} isWhole>
        <div class="choice">
          <button
            type="button"
            aria-pressed={form.evidence}
            data-testid="pictures-keep"
            onClick={() => onChange({ ...form, evidence: !form.evidence })}
          >
            {form.evidence ? '✓ ' : ''}
            {words.keep}
          </button>
        </div>
      </GroupField>
      {form.evidence && (
        <>
          <Field
            label={words.days}
            testId="pictures-days"
            inputMode="numeric"
            value={form.days}
            onInput={(days) => onChange({ ...form, days })}
          />
          <Field
            label={words.megabytes}
            testId="pictures-room"
            inputMode="numeric"
            value={form.megabytes}
            onInput={(megabytes) => onChange({ ...form, megabytes })}
          />
        </>
      )}
    </>
  );
}
