import type { words as english } from '../en/demo.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  stale: 'Esta es la práctica de un arranque anterior de la demostración.',
  fresh: 'Empezar de nuevo',
  failed: (why) => `No se pudo cargar la planta de demostración: ${why}`,
};
