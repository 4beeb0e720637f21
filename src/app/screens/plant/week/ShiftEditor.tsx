// One shift of the week: its days, its times, and the breaks that belong to it.

import type { ComponentChildren } from 'preact';
import { Button } from '../../../ui/Button.tsx';
import { weekWords } from '../../../words/week.ts';
import { say } from '../../../words/words.ts';
import { minutesOf, type WeekShift } from './model.ts';

interface ShiftEditorProps {
  readonly shift: WeekShift;
  readonly onChange: (shift: WeekShift) => void;
  readonly onRemove: () => void;
  readonly onClose: () => void;
}

export function ShiftEditor({ shift, onChange, onRemove, onClose }: ShiftEditorProps) {
  const words = say(weekWords);
  const { days, from, to, breaks } = shift;
  const setBreaks = (next: WeekShift['breaks']) => onChange({ ...shift, breaks: next });
  return (
    <section class="card stack" data-testid="shift-editor">
      <h3>{words.shift(from, to)}</h3>
      <Days label={words.daysOfShift} days={days} onChange={(next) => onChange({ ...shift, days: next })} />
      <Times id="shift" from={from} to={to} onChange={(part) => onChange({ ...shift, ...part })} />
      <h4>{words.breaks}</h4>
      {breaks.map((pause, at) => {
        const set = (part: Partial<typeof pause>) =>
          setBreaks(breaks.map((each, index) => (index === at ? { ...each, ...part } : each)));
        return (
          <div class="stack week-break" key={`${at}/${breaks.length}`} data-testid={`break-${at}`}>
            <Times id={`break-${at}`} from={pause.from} to={pause.to} onChange={set}>
              <Button onPress={() => setBreaks(breaks.filter((_, index) => index !== at))}>
                {words.remove}
              </Button>
            </Times>
            <Days
              label={words.breakDays}
              of={days}
              days={pause.days}
              onChange={(next) => set({ days: next })}
            />
          </div>
        );
      })}
      <div class="row">
        <Button
          testId="break-add"
          onPress={() => setBreaks([...breaks, { days: [...days], ...middle(from) }])}
        >
          {words.addBreak}
        </Button>
        <Button testId="shift-remove" tone="stop" onPress={onRemove}>
          {words.removeShift}
        </Button>
        <Button testId="shift-close" onPress={onClose}>
          {words.done}
        </Button>
      </div>
    </section>
  );
}

/** A quarter of an hour, three hours into the shift. */
function middle(from: string): { readonly from: string; readonly to: string } {
  const text = (minutes: number) => {
    const of = minutes % 1440;
    return `${String(Math.floor(of / 60)).padStart(2, '0')}:${String(of % 60).padStart(2, '0')}`;
  };
  const first = minutesOf(from) + 180;
  return { from: text(first), to: text(first + 15) };
}

/** Weekdays to choose from; `of`: those that may be chosen, all where absent. */
function Days(props: {
  readonly label: string;
  readonly days: readonly number[];
  readonly of?: readonly number[];
  readonly onChange: (days: number[]) => void;
}) {
  const words = say(weekWords);
  const { days, of } = props;
  return (
    <div class="week-days">
      <span>{props.label}</span>
      <div class="choice">
        {words.days.map((name, at) => {
          const day = at + 1;
          if (of !== undefined && !of.includes(day)) return null;
          const isOn = days.includes(day);
          return (
            <button
              type="button"
              key={name}
              aria-pressed={isOn}
              onClick={() =>
                props.onChange(
                  isOn ? days.filter((each) => each !== day) : [...days, day].sort((a, b) => a - b),
                )
              }
            >
              {isOn ? '✓ ' : ''}
              {name}
            </button>
          );
        })}
      </div>
    </div>
  );
}

function Times(props: {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly onChange: (part: { from?: string; to?: string }) => void;
  readonly children?: ComponentChildren;
}) {
  const words = say(weekWords);
  return (
    <div class="week-times">
      <label>
        {words.from}
        <input
          type="time"
          data-testid={`${props.id}-from`}
          value={props.from}
          onInput={(event) => props.onChange({ from: event.currentTarget.value })}
        />
      </label>
      <label>
        {words.to}
        <input
          type="time"
          data-testid={`${props.id}-to`}
          value={props.to}
          onInput={(event) => props.onChange({ to: event.currentTarget.value })}
        />
      </label>
      {props.children}
    </div>
  );
}
