// When the line works, on one week: a picture of the week as the rules make it, the shift that was opened to change beneath it, and what is
// not of every week: holidays, overtime, planned stops.

import { useState } from 'preact/hooks';
import { Button } from '../../../ui/Button.tsx';
import { weekWords } from '../../../words/week.ts';
import { locale, say } from '../../../words/words.ts';
import { daysOn, mondayOf, patternOf, type WeekShift, type Weeks } from './model.ts';
import { ShiftEditor } from './ShiftEditor.tsx';
import { Spells } from './Spells.tsx';
import { WeekPicture } from './WeekPicture.tsx';
import './week.css';

interface WeekPlanProps {
  readonly weeks: Weeks;
  /** The plant's own day, `YYYY-MM-DD`: its week is shown first. */
  readonly today: string;
  readonly onChange: (weeks: Weeks) => void;
}

const dayText = (date: string) =>
  new Intl.DateTimeFormat(locale(), { day: 'numeric', month: 'long', timeZone: 'UTC' }).format(
    Date.parse(`${date}T00:00Z`),
  );

const newShift: WeekShift = { days: [1, 2, 3, 4, 5], from: '06:00', to: '14:00', breaks: [] };

export function WeekPlan({ weeks, today, onChange }: WeekPlanProps) {
  const words = say(weekWords);
  const [monday, setMonday] = useState(() => mondayOf(today));
  const [open, setOpen] = useState<number | null>(null);
  const pattern = patternOf(weeks, monday);
  const shifts = weeks.weeks[pattern] ?? [];
  const setShifts = (next: readonly WeekShift[]) =>
    onChange({ ...weeks, weeks: weeks.weeks.map((each, at) => (at === pattern ? [...next] : each)) });
  const turn = (days: number) => {
    setMonday(daysOn(monday, days));
    setOpen(null);
  };
  const name = words.patterns[pattern] ?? '';
  const shown = open === null ? undefined : shifts[open];
  return (
    <section class="whole stack week" data-testid="week-plan">
      <h2>{words.title}</h2>
      <div class="row">
        <Button onPress={() => turn(-7)} testId="week-before">
          ‹ {words.earlier}
        </Button>
        <b data-testid="week-shown">
          {words.weekOf(dayText(monday))}
          {weeks.weeks.length > 1 && ` · ${words.pattern(name)}`}
        </b>
        <Button onPress={() => turn(7)} testId="week-after">
          {words.later} ›
        </Button>
      </div>
      <WeekPicture weeks={weeks} monday={monday} open={open} />
      <small class="soft">{weeks.weeks.flat().length === 0 ? words.roundTheClock : words.help}</small>
      <ShiftChoice shifts={shifts} open={open} onOpen={setOpen} />
      {open !== null && shown && (
        <ShiftEditor
          key={`${pattern}/${open}`}
          shift={shown}
          onChange={(next) => setShifts(shifts.map((each, at) => (at === open ? next : each)))}
          onRemove={() => {
            setShifts(shifts.filter((_, at) => at !== open));
            setOpen(null);
          }}
          onClose={() => setOpen(null)}
        />
      )}
      <div class="row">
        <Button
          testId="week-add-shift"
          onPress={() => {
            setShifts([...shifts, newShift]);
            setOpen(shifts.length);
          }}
        >
          {words.addShift}
        </Button>
        <AlternateChoice weeks={weeks} monday={monday} onChange={onChange} />
      </div>
      <Spells list="holidays" weeks={weeks} today={today} onChange={onChange} />
      <Spells list="overtime" weeks={weeks} today={today} onChange={onChange} />
      <Spells list="stops" weeks={weeks} today={today} onChange={onChange} />
    </section>
  );
}

/** The shifts of the week shown, each to be opened: a bar of the picture may be an hour wide, too narrow for a finger. */
function ShiftChoice(props: {
  readonly shifts: readonly WeekShift[];
  readonly open: number | null;
  readonly onOpen: (shift: number | null) => void;
}) {
  const words = say(weekWords);
  const { shifts, open, onOpen } = props;
  if (shifts.length === 0) return null;
  return (
    <div class="choice">
      {shifts.map(({ from, to }, at) => (
        <button
          type="button"
          key={`${at}/${shifts.length}`}
          aria-pressed={open === at}
          data-testid={`shift-${at}`}
          onClick={() => onOpen(open === at ? null : at)}
        >
          {words.shift(from, to)}
        </button>
      ))}
    </div>
  );
}

/** Whether two weeks take turns, and which of them the week shown is. */
function AlternateChoice(props: {
  readonly weeks: Weeks;
  readonly monday: string;
  readonly onChange: (weeks: Weeks) => void;
}) {
  const words = say(weekWords);
  const { weeks, monday, onChange } = props;
  const [first = [], second] = weeks.weeks;
  const isOn = second !== undefined;
  const pattern = patternOf(weeks, monday);
  return (
    <div class="choice">
      <button
        type="button"
        aria-pressed={isOn}
        data-testid="week-alternate"
        onClick={() =>
          onChange(
            isOn
              ? { ...weeks, weeks: [weeks.weeks[pattern] ?? first], firstWeek: null }
              : { ...weeks, weeks: [first, [...first]], firstWeek: monday },
          )
        }
      >
        {isOn ? '✓ ' : ''}
        {words.alternate}
      </button>
      {isOn &&
        words.patterns.map((name, at) => (
          <button
            type="button"
            key={name}
            aria-pressed={pattern === at}
            data-testid={`week-is-${name}`}
            onClick={() => onChange({ ...weeks, firstWeek: at === 0 ? monday : daysOn(monday, -7) })}
          >
            {words.thisIs(name)}
          </button>
        ))}
    </div>
  );
}
