import { formatCount, plural } from '../words.ts';

export const words = {
  inLog: (clock: string) => `${clock}, in the log`,
  nothingLoaded: 'Nothing is loaded.',
  closest: 'closest wanted',
  characters: (count: number) =>
    plural(count, '1 character differs.', `${formatCount(count)} characters differ.`),
  belongsAt: 'This reel belongs on',
  belongsNowhere: 'No slot here wants it.',
  lacksReel: 'No reel there now.',
  hasReel: 'A reel is there now.',
  onLine: (slot: string, line: string) => `${slot} on ${line}`,
  rightReel: (slot: string) => `${slot} needs`,
  rightReelNone: 'The log has no reel of it in the store.',
  rightReelAt: (reel: string, more: number) =>
    more === 0 ? reel : `${reel} and ${plural(more, '1 more', `${formatCount(more)} more`)}`,
  feederToFetch: 'Feeder to fetch',
  feederNone: 'No free feeder of that size is on the list.',
  anotherFeeder: 'Scan another feeder',
  carryOn: (slot: string) => `Take it to ${slot}`,
  unload: (slot: string) => `Unload ${slot}`,
  reachIn: 'Stop the machine before you reach in.',
  runsHere: {
    title: 'That reel is already running here',
    text: (slot: string) =>
      `This label matches the reel on ${slot}. Is it a second reel with the same label?`,
    same: 'No, it is that reel',
    second: 'Yes, a second reel',
  },
  cameBefore: {
    title: 'Was this reel on the line before?',
    text: (lot: string | null, left: string | null) =>
      `Its label has no id of its own. A reel like it${lot === null ? '' : `, lot ${lot},`} came off the line with ${left === null ? 'an unknown count' : plural(left, '1 part', `${left} parts`)} left.`,
    same: 'Yes, it is that reel',
    fresh: 'No, a new one',
  },
} as const;
