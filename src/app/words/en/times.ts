import { plural } from '../words.ts';

export const words = {
  loading: 'Reading the log…',
  running: 'The line is running. Time counts from the last good panel.',
  stopped: 'The line is stopped. It counts as standing once the last good panel is confirmed.',
  madeReady: (span: string) => `${span} made ready before`,
  standing: 'Line stood',
  external: 'Made ready while the line ran',
  paused: (span: string) => `${span} of breaks and planned stops are left out.`,
  before: 'Compared with earlier changeovers of the same kind',
  noneBefore: 'No earlier changeover between these two products is in the log.',
  thisOne: 'this one',
  people: 'By person',
  nobody: 'nobody signed in',
  marks: (count: number) => plural(count, '1 action', `${count} actions`),
  steps: 'Longest actions',
  kinds: {
    ...{ step: 'checklist', skip: 'skipped', load: 'put in', unload: 'taken out', measure: 'measured' },
    look: 'looked at',
  },
  none: 'Nothing is ticked or scanned in this changeover yet.',
  where: 'Where the minutes went',
  axis: 'min',
  legend: { act: 'action', outside: 'could be done before', stop: 'break or planned stop' },
  median: (count: number, span: string) =>
    plural(count, `The one before took ${span}.`, `The median of ${count} earlier ones is ${span}.`),
  longer: (span: string) => `This one stood ${span} longer.`,
  shorter: (span: string) => `This one stood ${span} less.`,
  asMedian: 'This one stood about as long.',
  medianMark: (span: string) => `median of the earlier ones, ${span}`,
  saved: (steps: number, span: string) =>
    plural(
      steps,
      `1 step could be done before the last panel. The line would have stood up to ${span} less.`,
      `${steps} steps could be done before the last panel. The line would have stood up to ${span} less.`,
    ),
  outside: 'Could be done while the line runs',
  late: 'meant for the running line, done while it stood',
  candidate: 'no reaching in: decide if it can be done before',
  noneOutside: 'Every action done while the line stood needs it stopped.',
  how: 'Each time counts from the same person’s action before.',
} as const;
