import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import {
  dateToIsoWeek,
  formatDate,
  isIsoWeek,
  parseDate,
  parseIsoLikeDate,
  parseWeek,
  readDateAs,
  readDateCode,
  weeksInYear,
} from '../../../shared/labels/dates.ts';

describe('weeks of ISO 8601', () => {
  it('`dateToIsoWeek()` agrees with luxon on every day of 1970 to 2099', () => {
    let day = DateTime.utc(1970, 1, 1);
    const end = DateTime.utc(2100, 1, 1);
    let compared = 0;
    while (day < end) {
      const week = dateToIsoWeek({ year: day.year, month: day.month, day: day.day });
      if (week.year !== day.weekYear || week.week !== day.weekNumber) {
        expect.fail(
          `${day.toISODate()}: ${week.year}-W${week.week}, luxon ${day.weekYear}-W${day.weekNumber}`,
        );
      }
      compared += 1;
      day = day.plus({ days: 1 });
    }
    expect(compared).toBe(47482);
  });

  it('`weeksInYear()` agrees with luxon for 1970 to 2099', () => {
    for (let year = 1970; year < 2100; year += 1) {
      expect(weeksInYear(year), String(year)).toBe(DateTime.utc(year, 6, 1).weeksInWeekYear);
    }
  });

  // Calendar values after ISO 8601 as tabled at https://kampuspedia.com/en/ISO_week_date and by calculation.
  it.each([
    [
      { year: 2019, month: 12, day: 30 },
      { year: 2020, week: 1 },
    ],
    [
      { year: 2020, month: 12, day: 31 },
      { year: 2020, week: 53 },
    ],
    [
      { year: 2021, month: 1, day: 3 },
      { year: 2020, week: 53 },
    ],
    [
      { year: 2024, month: 12, day: 20 },
      { year: 2024, week: 51 },
    ],
    [
      { year: 2022, month: 12, day: 31 },
      { year: 2022, week: 52 },
    ],
    [
      { year: 2026, month: 12, day: 31 },
      { year: 2026, week: 53 },
    ],
    [
      { year: 2027, month: 1, day: 3 },
      { year: 2026, week: 53 },
    ],
  ])('`dateToIsoWeek()` puts %o into %o', (date, week) => {
    expect(dateToIsoWeek(date)).toEqual(week);
  });

  it('`isIsoWeek()` has week 53 only in the long years 2009 to 2043', () => {
    const long = [];
    for (let year = 2009; year <= 2043; year += 1) if (isIsoWeek(year, 53)) long.push(year);
    expect(long).toEqual([2009, 2015, 2020, 2026, 2032, 2037, 2043]);
  });
});

describe('reading dates', () => {
  it.each([
    ['2653', 'YYWW', { year: 2026, week: 53 }],
    ['2753', 'YYWW', null], // 2027 has 52 weeks
    ['2600', 'YYWW', null],
    ['2654', 'YYWW', null],
    ['9952', 'YYWW', { year: 1999, week: 52 }],
    ['202653', 'YYYYWW', { year: 2026, week: 53 }],
    ['210001', 'YYYYWW', null], // no reel is from later
    ['26W3', 'YYWW', null],
  ] as const)('`parseWeek()` reads %s as %s', (text, format, week) => {
    expect(parseWeek(text, format)).toEqual(week);
  });

  it.each([
    ['2644', { made: { year: 2026, week: 44 }, problem: null }, 'a week YYWW'],
    ['2753', { made: null, problem: 'no-such-week' }, 'four digits, no such week'],
    ['202653', { made: { year: 2026, week: 53 }, problem: null }, 'YYYYWW; month 26 makes a day impossible'],
    ['201105', { made: null, problem: 'unclear' }, '2011-W05, or 5 November 2020'],
    ['26055', { made: null, problem: 'unclear' }, 'week 05 day 5, or day 055 of the year'],
    ['20260523', { made: { year: 2026, week: 21 }, problem: null }, 'a day YYYYMMDD'],
    ['2026-W44', { made: { year: 2026, week: 44 }, problem: null }, 'as ISO 8601 writes weeks'],
    ['2026W44', { made: { year: 2026, week: 44 }, problem: null }, 'as ISO 8601 writes weeks, short'],
    ['26W44', { made: { year: 2026, week: 44 }, problem: null }, 'a week with its mark'],
    ['27W53', { made: null, problem: 'unclear' }, 'a mark, but no such week'],
    ['2026-05-23', { made: { year: 2026, week: 21 }, problem: null }, 'as ISO 8601 writes days'],
    ['2644A', { made: null, problem: 'unclear' }, 'a letter with no known meaning'],
    ['', { made: null, problem: 'unclear' }, 'nothing'],
  ])('`readDateCode()` of %s gives %o: %s', (text, reading, _reason) => {
    expect(readDateCode(text)).toEqual(reading);
  });

  it.each([
    ['260228', 'YYMMDD', '2026-02-28'],
    ['260229', 'YYMMDD', null], // no leap year
    ['280229', 'YYMMDD', '2028-02-29'],
    ['01022026', 'DDMMYYYY', '2026-02-01'],
    ['020126', 'MMDDYY', '2026-02-01'],
    ['26366', 'YYDDD', null],
    ['28366', 'YYDDD', '2028-12-31'],
    ['26059', 'YYDDD', '2026-02-28'],
    ['20261301', 'YYYYMMDD', null],
    ['2026012', 'YYYYMMDD', null],
  ] as const)('`parseDate()` reads %s as %s', (text, format, date) => {
    const found = parseDate(text, format);
    expect(found === null ? null : formatDate(found)).toBe(date);
  });

  it('`parseIsoLikeDate()` refuses mixed marks', () => {
    expect(parseIsoLikeDate('2026-05/23')).toBeNull();
    expect(parseIsoLikeDate('2026/05/23')).toEqual({ year: 2026, month: 5, day: 23 });
  });

  it('`readDateAs()` reads back every day that luxon writes, in every format', () => {
    const formats = {
      YYMMDD: 'yyMMdd',
      YYYYMMDD: 'yyyyMMdd',
      DDMMYY: 'ddMMyy',
      DDMMYYYY: 'ddMMyyyy',
      MMDDYY: 'MMddyy',
      YYDDD: 'yyooo',
    } as const;
    const names = Object.keys(formats) as (keyof typeof formats)[]; // keys of the object above
    fc.assert(
      fc.property(
        fc.constantFrom(...names),
        fc.date({ min: new Date('1970-01-01'), max: new Date('2069-12-31'), noInvalidDate: true }),
        (name, date) => {
          const day = DateTime.fromJSDate(date, { zone: 'utc' });
          expect(readDateAs(day.toFormat(formats[name]), name)).toEqual({
            made: { year: day.weekYear, week: day.weekNumber },
            problem: null,
          });
        },
      ),
    );
  });
});
