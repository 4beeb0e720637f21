import { plural } from '../words.ts';

export const words = {
  kinds: { tape: 'Tape', 'cut-tape': 'Cut tape', tray: 'Tray', tube: 'Tube', bulk: 'Bulk' },
  acts: { splice: 'Splice', exchange: 'Exchange', refill: 'Refill' },
  label: 'Print its label',
  /** What a warning says where no tape from a reel feeds. */
  warns: {
    splice: (span: string, clock: string) => `runs out in ${span}, about ${clock}. Bring the next piece.`,
    exchange: (span: string, clock: string) =>
      `runs out in ${span}, about ${clock}. The machine then stops until it is exchanged.`,
    refill: (span: string, clock: string) => `runs out in ${span}, about ${clock}. Refill it before.`,
  },
  comesNext: { splice: 'New reel', exchange: 'Goes on instead', refill: 'Poured on top' },
  accepted: {
    exchange: 'What was there counts as taken off. No splice: the machine stands until this is in.',
    refill: 'Both lots count as possible from here on, until the feeder is emptied out.',
  },
  sayFeeds: {
    tape: '',
    'cut-tape': 'Cut tape: no splice window. It ends where the piece ends.',
    tray: 'Tray: once empty, the machine stops until it is exchanged.',
    tube: 'Tube: once empty, the machine stops until it is exchanged.',
    bulk: 'Bulk: refill it before it is empty.',
  },
  picks: {
    tape: '',
    'cut-tape': (count: number) => plural(count, '1 piece', `${count} pieces`),
    tray: (count: number) => plural(count, '1 stack of trays', `${count} stacks of trays`),
    tube: (count: number) => plural(count, '1 set of tubes', `${count} sets of tubes`),
    bulk: (count: number) => plural(count, '1 package', `${count} packages`),
  },
  /** What is due now, where it is no splice. */
  dueNow: { splice: 'splice now', exchange: 'exchange now', refill: 'refill now' },
  /** What another lane of the conveyor takes from the slot. */
  forLane: (lane: string, part: string, count: string) => `For ${lane}: ${part}, ${count} per panel.`,
} as const;
