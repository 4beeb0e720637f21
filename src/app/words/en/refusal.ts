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
  notNow: 'not needed yet',
  cameBack: (clock: string) => `This scan was open at ${clock}. Go on, or clear it.`,
  goOnWith: 'Go on',
  leadWanted: 'A lead must decide about this reel.',
  runsHere: {
    title: 'That reel is already running here',
    text: (slot: string) =>
      `This label matches the reel on ${slot}. Is it a second reel with the same label?`,
    same: 'No, it is that reel',
    second: 'Yes, a second reel',
  },
} as const;
