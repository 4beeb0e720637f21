import type { words as english } from '../en/demo.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  stale: 'To ćwiczenie jest z wcześniejszego uruchomienia demo.',
  fresh: 'Zacznij od nowa',
  failed: (why) => `Nie udało się wczytać zakładu demo: ${why}`,
};
