// What of the log is shown: time and verdict at a tap, the rest behind one button. Whatever narrows the list is told above it.

import { useId, useState } from 'preact/hooks';
import { lineEver, linesEver } from '../../../../shared/floor/lanes.ts';
import { verdicts } from '../../../../shared/floor/vocabulary.ts';
import { useFloor } from '../../app.ts';
import { Button } from '../../ui/Button.tsx';
import { Field, SelectField } from '../../ui/Field.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { logWords } from '../../words/log.ts';
import { say } from '../../words/words.ts';
import { firstFilters, type LogFilters, type Span, spans } from './model.ts';
import { personName } from './names.ts';

interface FiltersProps {
  readonly filters: LogFilters;
  readonly onChange: (part: Partial<LogFilters>) => void;
}

/** What the filters let through, in words. */
export function useFiltersTold(filters: LogFilters): string {
  const floor = useFloor();
  const words = say(logWords);
  const { span, verdict, slot, who, line } = filters;
  return [
    words.times[span],
    verdict === null ? '' : words.verdicts[verdict as keyof typeof words.verdicts], // one of those shown
    slot.trim().toUpperCase(),
    who === null ? '' : personName(floor, who),
    line === null ? '' : (lineEver(floor, line)?.name ?? line),
  ]
    .filter((text) => text !== '')
    .join(' · ');
}

export function Filters({ filters, onChange }: FiltersProps) {
  const words = say(logWords);
  const [isOpen, setOpen] = useState(false);
  const panel = useId();
  const told = useFiltersTold(filters);
  const more = [filters.slot.trim() !== '', filters.who !== null, filters.line !== null];
  const count = more.filter(Boolean).length;
  const isNarrow = count > 0 || filters.verdict !== null;
  return (
    <>
      <div class="log-filters">
        <div class="quick">
          {(Object.keys(spans) as Span[]).map((span) => (
            <button
              type="button"
              key={span}
              aria-pressed={filters.span === span}
              data-testid={`span-${span}`}
              onClick={() => onChange({ span })}
            >
              {words.times[span]}
            </button>
          ))}
          <i aria-hidden="true" />
          {verdicts.map((verdict) => (
            <button
              type="button"
              key={verdict}
              aria-pressed={filters.verdict === verdict}
              data-testid={`verdict-${verdict}`}
              onClick={() => onChange({ verdict: filters.verdict === verdict ? null : verdict })}
            >
              {words.verdicts[verdict]}
            </button>
          ))}
        </div>
        <button
          type="button"
          class="button"
          aria-expanded={isOpen}
          aria-controls={panel}
          data-testid="log-filters"
          onClick={() => setOpen(!isOpen)}
        >
          {words.moreFilters}
          {count > 0 && ` (${count})`}
        </button>
      </div>
      {isNarrow && (
        <p class="filters-told" role="status" data-testid="filters-told">
          <Icon name="search" size={18} /> {words.onlyShown(told)}
        </p>
      )}
      <div id={panel} class="filters" hidden={!isOpen}>
        {isOpen && <Panel filters={filters} onChange={onChange} />}
      </div>
    </>
  );
}

function Panel({ filters, onChange }: FiltersProps) {
  const floor = useFloor();
  // The log still has entries of a lane that was taken away.
  const lines = linesEver(floor);
  const words = say(logWords);
  return (
    <>
      <Field
        label={words.filters.slot}
        testId="filter-slot"
        placeholder={words.slotHelp}
        value={filters.slot}
        onInput={(text) => onChange({ slot: text })}
      />
      <SelectField
        label={words.filters.person}
        value={filters.who ?? ''}
        onChoose={(who) => onChange({ who: who || null })}
      >
        <option value="">{words.filters.all}</option>
        {[...floor.people.values()].map((person) => (
          <option key={person.person} value={person.person}>
            {person.name}
          </option>
        ))}
      </SelectField>
      {lines.length > 1 && (
        <SelectField
          label={words.filters.line}
          value={filters.line ?? ''}
          onChoose={(line) => onChange({ line: line || null })}
        >
          <option value="">{words.filters.all}</option>
          {lines.map((line) => (
            <option key={line.line} value={line.line}>
              {line.name}
            </option>
          ))}
        </SelectField>
      )}
      <Button testId="filters-clear" onPress={() => onChange(firstFilters)}>
        {words.clearFilters}
      </Button>
    </>
  );
}
