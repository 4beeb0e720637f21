import type { words as english } from '../en/clock.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  back: (span, clock) => `Zegar tego tabletu cofnął się o ${span} o ${clock}: ustaw go.`,
  ahead: (span, clock) =>
    `Ten tablet spał ${span} o ${clock} albo jego zegar przeskoczył do przodu. Jeśli teraz jest zły, ustaw go.`,
  'behind-log': (span) => `Zegar tego tabletu jest o ${span} za najnowszym wpisem: ustaw go.`,
  'behind-server': (span) => `Zegar tego tabletu jest o ${span} za serwerem: ustaw go.`,
  'ahead-of-server': (span) => `Zegar tego tabletu wyprzedza serwer o ${span}: ustaw go.`,
  goesOn: 'Ostrzeżenia i godziny liczą się dalej od ostatniej dobrej godziny.',
  short: 'Sprawdź zegar',
  isRight: 'Zegar jest w porządku',
};
