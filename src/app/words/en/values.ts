export const words = {
  title: (part: string) => `Measure ${part}`,
  ask: 'Put one part off this reel on the meter before it feeds.',
  which: 'The code may mean several values. Choose the right one.',
  wanted: (nominal: string, least: string, most: string, unit: string) =>
    `Wanted: ${nominal} ${unit}, from ${least} to ${most} ${unit}`,
  meter: (percent: string, digits: string, guard: string) =>
    `Meter: ± ${percent} % and ± ${digits} in the last place. Guard band: ${guard} % of that.`,
  shows: (unit: string) => `Meter shows, in ${unit}`,
  help: 'Type it, or let the meter type it.',
  wrong: 'Enter a figure, for example 10.02.',
  otherUnit: (unit: string) => `The meter shows something else. Wanted: a figure in ${unit}.`,
  check: 'Check the value',
  cannot: 'Leave it unmeasured',
  rule: {
    title: 'Parts to measure before they feed',
    help: 'One row for each class of parts. The value comes from the parts list or the setup’s note. No row: no check.',
    begins: 'Part numbers begin with (empty: all with a value)',
    add: 'Add a class of parts',
    percent: 'Meter: ± % of the reading',
    digits: 'Meter: ± digits of the last place',
    guard: 'Guard band, % of the meter’s uncertainty',
    wrong: 'Enter the meter’s figures as numbers, and each class once.',
  },
} as const;
