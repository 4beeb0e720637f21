import type { words as english } from '../en/demo.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  stale: 'Diese Übung stammt aus einem früheren Start der Demo.',
  fresh: 'Neu beginnen',
  failed: (why) => `Das Demo-Werk konnte nicht geladen werden: ${why}`,
};
