// What is not of every week: holidays by day, overtime and planned stops by the plant's clock.

import { Button } from '../../../ui/Button.tsx';
import { weekWords } from '../../../words/week.ts';
import { say } from '../../../words/words.ts';
import type { Weeks } from './model.ts';

type ListName = 'holidays' | 'overtime' | 'stops';

interface SpellsProps {
  readonly list: ListName;
  readonly weeks: Weeks;
  readonly today: string;
  readonly onChange: (weeks: Weeks) => void;
}

export function Spells({ list, weeks, today, onChange }: SpellsProps) {
  const words = say(weekWords);
  const rows = weeks[list];
  const isByDay = list === 'holidays';
  const set = (next: typeof rows) => onChange({ ...weeks, [list]: [...next] });
  const first = isByDay ? { from: today, to: today } : { from: `${today}T06:00`, to: `${today}T14:00` };
  const field = (at: number, end: 'from' | 'to', value: string) => (
    <label>
      {words[end]}
      <input
        type={isByDay ? 'date' : 'datetime-local'}
        data-testid={`${list}-${at}-${end}`}
        value={value}
        onInput={(event) => {
          const text = event.currentTarget.value.slice(0, 16);
          set(rows.map((each, index) => (index === at ? { ...each, [end]: text } : each)));
        }}
      />
    </label>
  );
  return (
    <div class="stack" data-testid={`week-${list}`}>
      <h3>{words.lists[list]}</h3>
      <small class="soft">{words.listHelp[list]}</small>
      {rows.map((row, at) => (
        <div class="week-times" key={`${at}/${rows.length}`}>
          {field(at, 'from', row.from)}
          {field(at, 'to', row.to)}
          <label class="grow">
            {words.note}
            <input
              data-typing
              maxLength={100}
              value={row.note}
              onInput={(event) => {
                const note = event.currentTarget.value;
                set(rows.map((each, index) => (index === at ? { ...each, note } : each)));
              }}
            />
          </label>
          <Button onPress={() => set(rows.filter((_, index) => index !== at))}>{words.remove}</Button>
        </div>
      ))}
      <div>
        <Button testId={`${list}-add`} onPress={() => set([...rows, { ...first, note: '' }])}>
          {words.add[list]}
        </Button>
      </div>
    </div>
  );
}
