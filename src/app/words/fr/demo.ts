import type { words as english } from '../en/demo.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  stale: 'Cet exercice vient d’un démarrage précédent de la démo.',
  fresh: 'Recommencer',
  failed: (why) => `L’usine de démonstration n’a pas pu être chargée : ${why}`,
};
