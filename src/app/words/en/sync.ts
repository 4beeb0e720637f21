import { plural } from '../words.ts';

export const words = {
  live: 'Synced',
  syncing: 'Syncing…',
  toSend: (count: string) => `${count} to send`,
  unreached: (span: string | null) =>
    span === null ? 'Server not reached' : `Server not reached for ${span}`,
  waits: 'The server asks to wait',
  refused: 'Refused by the server',
  quarantined: (count: number) => plural(count, '1 entry set aside', `${count} entries set aside`),
  rolledBack: 'The server’s log may have gone back',
  headFault: 'The server’s log is in doubt',
  clocksOff: (count: number) => plural(count, '1 tablet’s clock is off', `${count} tablets’ clocks are off`),
  history: (share: string) => `Loading history: ${share}`,
  historyChecked: 'Checking the history',
  historyTitle: 'History',
  stillMissing: (missing: string, of: string) =>
    plural(
      of,
      `${missing} of 1 older entry is not here yet.`,
      `${missing} of ${of} older entries are not here yet.`,
    ),
  checkedHelp: 'All entries are here. This tablet now works everything out itself and compares.',
  historyHelp:
    'This tablet started from what another tablet worked out. Loading and checking work as usual. The log, its exports and traces are incomplete here until the rest is in.',
  notWhole: (missing: string) =>
    `${plural(missing, '1 older entry is', `${missing} older entries are`)} still coming in: the answer would be incomplete. The server has them all.`,
} as const;
