// Which parts are measured before they feed, class by class, and with what meter. No row, no check.

import { Button } from '../../ui/Button.tsx';
import { Field } from '../../ui/Field.tsx';
import { plantWords } from '../../words/plant.ts';
import { valueWords } from '../../words/values.ts';
import { say } from '../../words/words.ts';
import type { ValuesForm } from './rules-drafts.ts';

interface ValueRulesProps {
  readonly form: ValuesForm;
  readonly onChange: (form: ValuesForm) => void;
}

export function ValueRules({ form, onChange }: ValueRulesProps) {
  const words = say(valueWords).rule;
  const rules = say(plantWords).rules;
  const { begins } = form;
  const turn = (rows: readonly string[]) => onChange({ ...form, begins: rows });
  return (
    <>
      <div class="field whole" data-testid="value-rules">
        <span>{words.title}</span>
        <small>{words.help}</small>
        {begins.map((row, at) => (
          <div class="week-times" key={`${at}/${begins.length}`}>
            <label>
              {words.begins}
              <input
                data-typing
                data-testid={`value-${at}-begins`}
                autocomplete="off"
                maxLength={60}
                value={row}
                onInput={(event) =>
                  turn(begins.map((each, index) => (index === at ? event.currentTarget.value : each)))
                }
              />
            </label>
            <Button onPress={() => turn(begins.filter((_, index) => index !== at))}>{rules.removeRow}</Button>
          </div>
        ))}
        <div>
          <Button testId="value-add" onPress={() => turn([...begins, ''])}>
            {words.add}
          </Button>
        </div>
      </div>
      {begins.length > 0 &&
        (['percent', 'digits', 'guard'] as const).map((key) => (
          <Field
            key={key}
            label={words[key]}
            testId={`value-${key}`}
            inputMode="decimal"
            value={form[key]}
            onInput={(typed) => onChange({ ...form, [key]: typed })}
          />
        ))}
    </>
  );
}
