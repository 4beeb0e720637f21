// How a label looks on the picture and in the list: a shape, a word and a colour for each answer, never a colour alone.

import type { ReasonCode } from '../../../shared/verdict/reasons.ts';
import { findWords } from '../words/find.ts';
import { verdictWords } from '../words/verdict.ts';
import { say } from '../words/words.ts';
import type { FoundThing } from './find-model.ts';

export const findLooks = [
  'wanted',
  'barred',
  'ticked',
  'stands',
  'other',
  'thing',
  'unknown',
  'reading',
] as const;
export type FindLook = (typeof findLooks)[number];

/** Lines of 16 units about the middle. */
export const findShapes: Readonly<Record<FindLook, string>> = {
  wanted: 'M-7 0h13M1-6l6 6-6 6',
  barred: 'M-6-6l12 12M6-6l-12 12',
  ticked: 'M-6 0l5 5 8-10',
  stands: 'M-6-5h12v10h-12z',
  other: 'M-6 0h12',
  thing: 'M-6-5h12v10h-12z',
  unknown: 'M-4-3a4 4 0 1 1 6 3.4c-1.4.8-2 1.6-2 3M0 8h.01',
  reading: 'M-6 0h.01M0 0h.01M6 0h.01',
};

/** What stands on a label. */
export function lookOf(
  thing: FoundThing | null,
  ticked: ReadonlySet<string>,
): { readonly look: FindLook; readonly text: string } {
  const words = say(findWords);
  if (thing === null) return { look: 'reading', text: words.reading };
  switch (thing.is) {
    case 'unknown':
      return { look: 'unknown', text: words.unknown };
    case 'slot':
    case 'feeder':
      return { look: thing.slot !== null && ticked.has(thing.slot) ? 'ticked' : 'thing', text: thing.text };
    case 'thing':
      return { look: 'thing', text: thing.text };
    default:
      return { look: lookOfReel(thing, ticked), text: reelWord(thing) };
  }
}

function lookOfReel(thing: Extract<FoundThing, { reel: unknown }>, ticked: ReadonlySet<string>): FindLook {
  return thing.is === 'stands' && thing.slots.every((slot) => ticked.has(slot)) ? 'ticked' : thing.is;
}

/** What a reel is to the task, in a word or two. */
export function reelWord({ is, slots, why, text }: Extract<FoundThing, { reel: unknown }>): string {
  const words = say(findWords);
  if (is === 'wanted') return words.to(slots.join(' '));
  if (is === 'barred')
    return why === null ? words.barred : say(verdictWords).reasons[why satisfies ReasonCode].title;
  return is === 'stands' ? words.on(slots.join(' ')) : text;
}
