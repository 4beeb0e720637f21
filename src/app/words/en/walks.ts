import { formatCount, plural } from '../words.ts';

export const words = {
  walksTitle: 'Walks',
  walkSplices: (count: number) => plural(count, '1 splice', `${count} splices, one walk`),
  walkMore: (count: number) => plural(count, '1 more walk later', `${count} more walks later`),
  crew: 'People on this line',
  missTitle: 'Not possible in time',
  miss: {
    windowTooShort: (moment: string) => `splice by ${moment}: the time is too short for it`,
    closesTooSoon: (moment: string) => `splice by ${moment}: nobody can be there in time`,
    crowdedOut: (moment: string) => `splice by ${moment}: everybody is busy with other splices`,
  },
  remedies: {
    cutEarly: (parts: number, moment: string) =>
      `Cut the old tape early, at ${moment}: ${plural(parts, 'about 1 part is wasted', `about ${formatCount(parts)} parts are wasted`)}`,
    secondPerson: (moment: string) => `A second person goes by ${moment}`,
    secondSlot: (moment: string) => `Load the part in a second slot by ${moment}`,
  },
  orRemedy: (remedy: string) => `or: ${remedy}`,
  missMore: (count: number) => plural(count, '1 more later', `${count} more later`),
  noRemedy: 'The line will stop. Have the next reel ready.',
} as const;
