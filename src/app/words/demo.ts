import { area } from './words.ts';

/** The demo's own sentences. */
export const demoWords = area({
  en: {
    stale: 'This practice is from an earlier start of the demo.',
    fresh: 'Start over',
    failed: (why: string) => `The demo plant could not be loaded: ${why}`,
  },
  es: {
    stale: 'Esta es la práctica de un arranque anterior de la demostración.',
    fresh: 'Empezar de nuevo',
    failed: (why) => `No se pudo cargar la planta de demostración: ${why}`,
  },
});
