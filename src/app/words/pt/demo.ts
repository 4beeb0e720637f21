import type { words as english } from '../en/demo.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  stale: 'Este treino é de um início anterior da demonstração.',
  fresh: 'Recomeçar',
  failed: (why) => `Não foi possível carregar a planta de demonstração: ${why}`,
};
