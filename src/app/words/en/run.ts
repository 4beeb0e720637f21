import { formatCount, plural } from '../words.ts';

export const words = {
  notRight: (count: number) =>
    plural(count, '1 slot is not right yet: see Load.', `${count} slots are not right yet: see Load.`),
  startTitle: 'Start a run',
  panelSecondsHelp: 'Used until the line’s own pace is measured.',
  panelPrefix: 'Panel codes begin with',
  panelPrefixHelp: 'Leave empty if panels have no code. Then tap to count.',
  wrongNumber: 'Enter a number above zero.',
  startAnyway: 'Start with empty slots',
  stopTitle: 'Why is the line stopped?',
  endTitle: 'End this run?',
  endText: (done: string, wanted: number) =>
    `${plural(wanted, `${done} of 1 panel is counted.`, `${done} of ${formatCount(wanted)} panels are counted.`)} Reels stay on their slots.`,
  plusManyTitle: 'How many more panels?',
  skippedTitle: 'Which boards of the next panel are skipped?',
  skippedHelp: 'Tap each board that is marked bad. The next count includes it.',
  skippedUse: (count: number) =>
    count === 0 ? 'No board skipped' : plural(count, 'Skip 1 board', `Skip ${count} boards`),
  skippedManyTitle: (panels: number) =>
    plural(panels, 'Boards skipped on this panel?', `Boards skipped on these ${formatCount(panels)} panels?`),
  skippedMost: (boards: string) =>
    plural(boards, 'There is only 1 board.', `There are only ${boards} boards. Enter fewer.`),
  skippedNotKnown: 'Not known',
  scrapTitle: 'How many panels are scrapped?',
  scrapHelp: 'They stay counted: their parts are used. The run builds as many more.',
  scrapMost: (panels: string) =>
    plural(panels, 'Only 1 good panel is counted.', `Only ${panels} good panels are counted. Enter fewer.`),
  setRightTitle: 'How many panels are done?',
  setRightHelp: 'The run then has this number. Whoever counts goes on from there.',
  setRightWhy: 'Why does the number change?',
  setRightYes: (panels: string) => `Set to ${panels}`,
  setRightMissing: 'Enter another number, and why.',
  stoodSince: 'Stopped since',
  stoodLast: (clock: string, span: string) => `${clock}, the last panel, ${span} ago`,
  stoodNow: (clock: string) => `now, ${clock}`,
} as const;
