// The picture of a week against the calendar that the forecast goes by, what does not fit, and what is written when the rules are saved.

import { describe, expect, test } from 'vitest';
import { calendarStops } from '../../../../../shared/forecast/calendar.ts';
import { linePlan, weeksOf } from '../../../../../shared/forecast/line-calendar.ts';
import { pageOf, rulesDrafts, withWeeks } from '../../../../../src/app/screens/plant/rules-drafts.ts';
import { rulesToForm } from '../../../../../src/app/screens/plant/rules-form.ts';
import {
  mondayOf,
  patternOf,
  type Weeks,
  weekFault,
  weekRows,
  weeksPayload,
} from '../../../../../src/app/screens/plant/week/model.ts';
import { beginStory, type Story, tellPlant } from '../../../../shared/floor/story.ts';

const weekdays = [1, 2, 3, 4, 5];
const weeks: Weeks = {
  weeks: [
    [
      {
        days: weekdays,
        from: '06:00',
        to: '14:00',
        breaks: [{ days: [5], from: '10:00', to: '11:00' }],
      },
      { days: [7], from: '22:00', to: '06:00', breaks: [{ days: [7], from: '02:00', to: '02:30' }] },
    ],
    [{ days: weekdays, from: '14:00', to: '22:00', breaks: [] }],
  ],
  firstWeek: '2026-03-02',
  holidays: [{ from: '2026-03-04', to: '2026-03-04', note: '' }],
  overtime: [{ from: '2026-03-07T08:00', to: '2026-03-07T12:00', note: '' }],
  stops: [{ from: '2026-03-03T23:00', to: '2026-03-04T01:00', note: '' }],
};

function line(): Story {
  const story = beginStory();
  tellPlant(story, { rules: { shifts: [{ days: weekdays, from: '06:00', to: '14:00' }] } });
  return story;
}
function rulesOf(story: Story) {
  const rules = story.floor().rules.get('L1');
  if (!rules) throw new TypeError('Cannot go on as the line must have rules');
  return rules;
}

describe('weekRows()', () => {
  test('shows the same minutes as the forecast’s calendar works, week by week', () => {
    const story = line();
    story.tell('line.calendar-ruled', weeksPayload('L1', weeks));
    const plan = linePlan(story.floor(), 'L1');
    // Winter, when the plant's clock is UTC.
    for (const monday of ['2026-02-23', '2026-03-02', '2026-03-09', '2026-03-16']) {
      const startMs = Date.parse(`${monday}T00:00Z`);
      const stops = plan ? calendarStops(plan, { fromMs: startMs, toMs: startMs + 7 * 86_400_000 }) : [];
      const rows = weekRows(weeks, monday);
      for (let minute = 0; minute < 7 * 1440; minute += 15) {
        const ms = startMs + minute * 60_000;
        const works = !stops.some(({ fromMs, toMs }) => fromMs <= ms && ms < toMs);
        const bars = rows[Math.floor(minute / 1440)]?.bars ?? [];
        const kinds = bars
          .filter(({ from, to }) => from <= minute % 1440 && minute % 1440 < to)
          .map(({ kind }) => kind);
        const isOn = kinds.some((kind) => kind === 'shift' || kind === 'overtime');
        const isOff = kinds.some((kind) => kind === 'break' || kind === 'stop');
        expect(isOn && !isOff, `${monday} ${minute}`).toBe(works);
      }
    }
  });

  test('a tap on what reaches over from a week of the other pattern changes nothing of this one', () => {
    const [monday] = weekRows(weeks, '2026-03-09');
    expect(monday?.bars).toContainEqual({ kind: 'shift', from: 0, to: 360, shift: null });
  });

  test('weeks begin on Mondays and take turns both ways from the first', () => {
    expect(['2026-03-02', '2026-03-05', '2026-03-08', '2026-03-09'].map(mondayOf)).toEqual([
      '2026-03-02',
      '2026-03-02',
      '2026-03-02',
      '2026-03-09',
    ]);
    expect(
      ['2026-02-16', '2026-02-23', '2026-03-02', '2026-03-09'].map((day) => patternOf(weeks, day)),
    ).toEqual([0, 1, 0, 1]);
  });
});

describe('weekFault()', () => {
  const withShift = (shift: Weeks['weeks'][number][number]): Weeks => ({ ...weeks, weeks: [[shift]] });
  const night = { days: [1], from: '22:00', to: '06:00' };
  test('names what does not fit, and nothing else', () => {
    expect(weekFault(weeks)).toBeNull();
    expect(weekFault(withShift({ ...night, days: [], breaks: [] }))?.code).toBe('no-days');
    const pause = (from: string, to: string) =>
      weekFault(withShift({ ...night, breaks: [{ days: [1], from, to }] }))?.code ?? null;
    expect([pause('02:00', '02:30'), pause('22:00', '22:15'), pause('05:30', '06:00')]).toEqual([
      null,
      null,
      null,
    ]);
    expect([pause('05:30', '06:30'), pause('21:00', '22:30'), pause('03:00', '02:00')]).toEqual([
      'break-outside',
      'break-outside',
      'break-outside',
    ]);
    expect(pause('', '02:00')).toBe('not-filled');
    const { stops } = weeks;
    expect(
      weekFault({ ...weeks, stops: stops.map(({ from }) => ({ from, to: from, note: '' })) })?.code,
    ).toBe('ends-early');
    expect(
      weekFault({ ...weeks, holidays: [{ from: '2026-03-04', to: '2026-03-03', note: '' }] })?.code,
    ).toBe('ends-early');
  });
});

describe('rulesDrafts()', () => {
  const kinds = (told: ReturnType<typeof rulesDrafts>) =>
    'drafts' in told ? told.drafts.map(({ kind }) => kind) : told.fault;
  test('writes the weeks after the rules, and folds to what was entered; unchanged weeks are not written', () => {
    const story = line();
    const rules = rulesOf(story);
    const page = pageOf(story.floor(), rules, rulesToForm(rules));
    expect(kinds(rulesDrafts(story.floor(), rules, page))).toEqual(['line.ruled']);
    const told = rulesDrafts(story.floor(), rules, withWeeks(page, weeks));
    expect(kinds(told)).toEqual(['line.ruled', 'line.calendar-ruled']);
    if ('drafts' in told) for (const { kind, payload } of told.drafts) story.tell(kind, payload as never);
    const { line: _, ...stands } = weeksOf(story.floor(), 'L1', rulesOf(story));
    expect(stands).toEqual(weeks);
    const again = pageOf(story.floor(), rulesOf(story), rulesToForm(rulesOf(story)));
    expect(kinds(rulesDrafts(story.floor(), rulesOf(story), again))).toEqual(['line.ruled']);
    expect(rulesOf(story).shifts).toHaveLength(3);
  });

  test('writes age limits, trailer and leader where they change, and refuses what is no number', () => {
    const story = line();
    const rules = rulesOf(story);
    const page = pageOf(story.floor(), rules, rulesToForm(rules));
    const ages = [{ begins: 'U-', months: '24' }];
    const told = rulesDrafts(story.floor(), rules, { ...page, ages, trailerMm: '0', leaderMm: '' });
    expect(told).toMatchObject({
      drafts: [
        { kind: 'line.ruled' },
        { payload: { limits: [{ begins: 'U-', months: 24 }] } },
        { kind: 'line.tape-ruled', payload: { trailerMm: 0, leaderMm: null } },
      ],
    });
    const fault = (part: Partial<typeof page>) =>
      kinds(rulesDrafts(story.floor(), rules, { ...page, ...part }));
    expect(fault({ ages: [{ begins: 'U-', months: '1.5' }] })).toEqual({ code: 'ages' });
    expect(fault({ ages: [...ages, { begins: 'u-', months: '12' }] })).toEqual({ code: 'ages' });
    expect(fault({ trailerMm: 'x' })).toEqual({ code: 'numbers' });
    expect(fault({ weeks: { ...weeks, overtime: [{ from: '', to: '', note: '' }] } })).toMatchObject({
      code: 'week',
    });
  });
});
