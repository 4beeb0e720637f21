// How old parts may be by their date code, class by class: what a part number begins with, and months. No row, no limit.

import { Button } from '../../ui/Button.tsx';
import { plantWords } from '../../words/plant.ts';
import { say } from '../../words/words.ts';
import type { AgeRow } from './rules-drafts.ts';

interface AgeLimitsProps {
  readonly rows: readonly AgeRow[];
  readonly onChange: (rows: readonly AgeRow[]) => void;
}

export function AgeLimits({ rows, onChange }: AgeLimitsProps) {
  const words = say(plantWords).rules;
  const set = (at: number, part: Partial<AgeRow>) =>
    onChange(rows.map((row, index) => (index === at ? { ...row, ...part } : row)));
  return (
    <div class="field whole" data-testid="age-limits">
      <span>{words.ages}</span>
      <small>{words.agesHelp}</small>
      {rows.map((row, at) => (
        <div class="week-times" key={`${at}/${rows.length}`}>
          <label>
            {words.ageBegins}
            <input
              data-typing
              data-testid={`age-${at}-begins`}
              autocomplete="off"
              maxLength={60}
              value={row.begins}
              onInput={(event) => set(at, { begins: event.currentTarget.value })}
            />
          </label>
          <label>
            {words.ageMonths}
            <input
              data-typing
              data-testid={`age-${at}-months`}
              inputMode="numeric"
              value={row.months}
              onInput={(event) => set(at, { months: event.currentTarget.value })}
            />
          </label>
          <Button onPress={() => onChange(rows.filter((_, index) => index !== at))}>{words.removeRow}</Button>
        </div>
      ))}
      <div>
        <Button testId="age-add" onPress={() => onChange([...rows, { begins: '', months: '24' }])}>
          {words.ageAdd}
        </Button>
      </div>
    </div>
  );
}
