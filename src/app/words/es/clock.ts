import type { words as english } from '../en/clock.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  back: (span, clock) => `El reloj de esta tableta se atrasó ${span} a las ${clock}: póngalo en hora.`,
  ahead: (span, clock) =>
    `Esta tableta durmió ${span} a las ${clock}, o su reloj se adelantó. Si ahora va mal, póngalo en hora.`,
  'behind-log': (span) =>
    `El reloj de esta tableta va ${span} por detrás del último apunte: póngalo en hora.`,
  'behind-server': (span) => `El reloj de esta tableta va ${span} por detrás del servidor: póngalo en hora.`,
  'ahead-of-server': (span) =>
    `El reloj de esta tableta va ${span} por delante del servidor: póngalo en hora.`,
  goesOn: 'Avisos y horas siguen desde la última hora buena.',
  isRight: 'El reloj está en hora',
};
