// Days of a recurrence rule by the `rrule` package, as a plan's test asks for them. The package counts in dates as if they were UTC, which is what
// RFC 5545 calls floating time.

import rrulePackage from 'rrule';

const { RRule } = rrulePackage;

/** The days of `FREQ=WEEKLY;BYDAY=…;WKST=MO` between two dates, or of `FREQ=DAILY` until one. */
export function rrule(rule: {
  readonly start: Date;
  /** ISO weekdays, 1 = Monday. */
  readonly days?: readonly number[];
  readonly interval?: number;
  readonly daily?: boolean;
  readonly until?: Date;
  readonly from?: Date;
  readonly to?: Date;
}): Date[] {
  const { start, days = [], interval = 1, daily = false, until, from, to } = rule;
  const made = new RRule({
    freq: daily ? RRule.DAILY : RRule.WEEKLY,
    dtstart: start,
    interval,
    wkst: RRule.MO,
    ...(daily ? {} : { byweekday: days.map((day) => day - 1) }),
    ...(until === undefined ? {} : { until }),
  });
  return from === undefined || to === undefined ? made.all() : made.between(from, to, true);
}
