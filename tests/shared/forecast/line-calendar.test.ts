// When does a line work, by its rules as older tablets write them and by the weeks that somebody entered? Hours counted by hand.

import { describe, expect, test } from 'vitest';
import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import { lineCalendar, weeksOf } from '../../../shared/forecast/line-calendar.ts';
import { workingSeconds } from '../../../shared/forecast/working-time.ts';
import { beginStory, type Story, tellPlant } from '../floor/story.ts';

type Rules = Partial<PayloadOf<'line.ruled'>>;
const weekdays = [1, 2, 3, 4, 5];

function told(rules: Rules): Story {
  const story = beginStory();
  tellPlant(story, { rules });
  return story;
}

/** Hours worked between two moments of the plant, which keeps London's time; in winter that is UTC. */
function hours(story: Story, from: string, to: string): number {
  const [fromMs, toMs] = [Date.parse(`${from}Z`), Date.parse(`${to}Z`)];
  return workingSeconds(lineCalendar(story.floor(), 'L1', fromMs), fromMs, toMs) / 3600;
}

describe('rules without weeks', () => {
  test('a break is taken on its own weekdays only', () => {
    // 2026-03-02 is a Monday.
    const story = told({
      shifts: [{ days: weekdays, from: '06:00', to: '14:00' }],
      breaks: [{ days: [5], from: '10:00', to: '11:00' }],
    });
    expect(hours(story, '2026-03-03T00:00', '2026-03-04T00:00')).toBe(8);
    expect(hours(story, '2026-03-06T00:00', '2026-03-07T00:00')).toBe(7);
  });

  test('is laid out from the day before to a week ahead', () => {
    const story = told({ shifts: [{ days: [1, 2, 3, 4, 5, 6, 7], from: '06:00', to: '14:00' }] });
    const calendar = lineCalendar(story.floor(), 'L1', Date.parse('2026-03-03T12:00Z'));
    const worked = (from: string, to: string) =>
      workingSeconds(calendar, Date.parse(`${from}Z`), Date.parse(`${to}Z`)) / 3600;
    expect(worked('2026-03-02T00:00', '2026-03-03T00:00')).toBe(8);
    expect(worked('2026-03-10T12:00', '2026-03-11T12:00')).toBe(8);
  });

  test('a break belongs to the shift in which it begins: not to one that ends just then', () => {
    const breaksOf = (from: string, to: string, pause: string, days: readonly number[]) => {
      const rules: Rules = {
        shifts: [{ days: weekdays, from, to }],
        breaks: [{ days: [...days], from: pause, to: '23:59' }],
      };
      const floor = told(rules).floor();
      return weeksOf(floor, 'L1', floor.rules.get('L1')!).weeks[0]?.[0]?.breaks.map((each) => each.days);
    };
    expect(breaksOf('06:00', '14:00', '06:00', weekdays)).toEqual([weekdays]);
    expect(breaksOf('06:00', '14:00', '14:00', weekdays)).toEqual([]);
    expect(breaksOf('22:00', '06:00', '06:00', weekdays)).toEqual([]);
    // It begins with the night: on Monday, and a Saturday has none.
    expect(breaksOf('22:00', '06:00', '22:00', [1, 6])).toEqual([[1]]);
    expect(breaksOf('22:00', '06:00', '05:59', [6])).toEqual([[5]]);
  });

  test('a break after midnight goes with its night, whether its days are those of the shift or of the calendar', () => {
    const night = { from: '22:00', to: '06:00' };
    const pause = { from: '02:00', to: '02:30' };
    const monday = (shiftDays: number[], pauseDays: number[]) =>
      hours(
        told({ shifts: [{ days: shiftDays, ...night }], breaks: [{ days: pauseDays, ...pause }] }),
        ...(['2026-03-02T12:00', '2026-03-03T12:00'] as const),
      );
    // Monday's night alone, its break entered for the Tuesday on which it falls.
    expect(monday([1], [2])).toBe(7.5);
    expect(monday(weekdays, [2, 3, 4, 5, 6])).toBe(7.5);
    // Entered for the days of the shift.
    expect(monday([1], [1])).toBe(7.5);
    expect(monday(weekdays, weekdays)).toBe(7.5);
    expect(monday([1], [3])).toBe(8);
  });

  test('are read as one week for who edits them', () => {
    const rules: Rules = {
      shifts: [{ days: weekdays, from: '22:00', to: '06:00' }],
      breaks: [
        { days: [2, 3, 4, 5, 6], from: '02:00', to: '02:30' },
        { days: [5], from: '23:00', to: '23:30' },
      ],
    };
    const floor = told(rules).floor();
    const line = floor.rules.get('L1');
    expect(line && weeksOf(floor, 'L1', line).weeks).toEqual([
      [
        {
          days: weekdays,
          from: '22:00',
          to: '06:00',
          breaks: [
            { from: '02:00', to: '02:30', days: weekdays },
            { from: '23:00', to: '23:30', days: [5] },
          ],
        },
      ],
    ]);
  });
});

describe('weeks that somebody entered', () => {
  const rules: Rules = { shifts: [{ days: weekdays, from: '06:00', to: '14:00' }] };
  const weeks: PayloadOf<'line.calendar-ruled'> = {
    line: 'L1',
    weeks: [
      [{ days: weekdays, from: '06:00', to: '14:00', breaks: [] }],
      [{ days: weekdays, from: '14:00', to: '20:00', breaks: [] }],
    ],
    firstWeek: '2026-03-02',
    holidays: [{ from: '2026-03-05', to: '2026-03-06', note: '' }],
    overtime: [{ from: '2026-03-06T08:00', to: '2026-03-06T10:00', note: '' }],
    stops: [{ from: '2026-03-03T08:00', to: '2026-03-03T09:00', note: 'meeting' }],
  };

  test('take turns, rest on holidays, work overtime on them, and stand at planned stops', () => {
    const story = told(rules);
    story.tell('line.calendar-ruled', weeks);
    const day = (date: string) => hours(story, `${date}T00:00`, `${date}T23:59`);
    expect(['02', '03', '04', '05', '06', '07', '09', '16'].map((date) => day(`2026-03-${date}`))).toEqual([
      8, 7, 8, 0, 2, 0, 6, 8,
    ]);
  });

  test('stand until the rules’ own shifts change, as a tablet of an older version may do', () => {
    const story = told(rules);
    story.tell('line.calendar-ruled', weeks);
    const ruled = story.floor().rules.get('L1');
    if (!ruled) throw new TypeError('Cannot go on as the line must have rules');
    const before = {
      ...ruled,
      shifts: [...ruled.shifts],
      breaks: [...ruled.breaks],
      stops: [...ruled.stops],
    };
    story.tell('line.ruled', { ...before, walkSeconds: 90 });
    expect(story.floor().calendars.has('L1')).toBe(true);
    story.tell('line.ruled', { ...before, shifts: [{ days: [6], from: '06:00', to: '14:00' }] });
    expect(story.floor().calendars.has('L1')).toBe(false);
    expect(hours(story, '2026-03-07T00:00', '2026-03-08T00:00')).toBe(8);
  });
});
