import { area } from './words.ts';

/** What is wrong with the tablet's clock, and what to do. */
export const clockWords = area({
  en: {
    back: (span: string, clock: string) => `This tablet’s clock went back ${span} at ${clock}: set it right.`,
    ahead: (span: string, clock: string) =>
      `This tablet slept for ${span} at ${clock}, or its clock went forward. If it is wrong now, set it right.`,
    'behind-log': (span: string) => `This tablet’s clock is ${span} behind the newest entry: set it right.`,
    'behind-server': (span: string) => `This tablet’s clock is ${span} behind the server: set it right.`,
    'ahead-of-server': (span: string) => `This tablet’s clock is ${span} ahead of the server: set it right.`,
    goesOn: 'Warnings and times go on from the last correct time.',
    short: 'Check the clock',
    isRight: 'The clock is right',
  },
  es: {
    back: (span, clock) => `El reloj de esta tableta se atrasó ${span} a las ${clock}: póngalo en hora.`,
    ahead: (span, clock) =>
      `Esta tableta durmió ${span} a las ${clock}, o su reloj se adelantó. Si ahora va mal, póngalo en hora.`,
    'behind-log': (span) =>
      `El reloj de esta tableta va ${span} por detrás del último apunte: póngalo en hora.`,
    'behind-server': (span) =>
      `El reloj de esta tableta va ${span} por detrás del servidor: póngalo en hora.`,
    'ahead-of-server': (span) =>
      `El reloj de esta tableta va ${span} por delante del servidor: póngalo en hora.`,
    goesOn: 'Avisos y horas siguen desde la última hora buena.',
    short: 'Mire el reloj',
    isRight: 'El reloj está en hora',
  },
});
