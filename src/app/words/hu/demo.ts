import type { words as english } from '../en/demo.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  stale: 'Ez a gyakorlás a demó egy korábbi indításából való.',
  fresh: 'Újrakezdés',
  failed: (why) => `A demóüzemet nem sikerült betölteni: ${why}`,
};
