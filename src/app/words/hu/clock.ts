import type { words as english } from '../en/clock.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  back: (span, clock) => `A tablet órája visszaugrott (${span}, ekkor: ${clock}): állítsa be.`,
  ahead: (span, clock) =>
    `A tablet aludt (${span}, ekkor: ${clock}), vagy az órája előreugrott. Ha most rossz, állítsa be.`,
  'behind-log': (span) => `A tablet órája késik a legújabb bejegyzéshez képest (${span}): állítsa be.`,
  'behind-server': (span) => `A tablet órája késik a szerverhez képest (${span}): állítsa be.`,
  'ahead-of-server': (span) => `A tablet órája siet a szerverhez képest (${span}): állítsa be.`,
  goesOn: 'A figyelmeztetések és idők az utolsó jó időtől mennek tovább.',
  short: 'Ellenőrizze az órát',
  isRight: 'Az óra jó',
};
