import type { words as english } from '../en/sync.ts';
import { byNumber, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  live: 'Zsynchronizowano',
  syncing: 'Synchronizacja…',
  toSend: (count) => `${count} do wysłania`,
  unreached: (span) =>
    span === null ? 'Brak połączenia z serwerem' : `Brak połączenia z serwerem od ${span}`,
  waits: 'Serwer prosi o czekanie',
  refused: 'Odrzucony przez serwer',
  quarantined: (count) =>
    byNumber(count, {
      one: `${count} wpis odłożony`,
      few: `${count} wpisy odłożone`,
      other: `${count} wpisów odłożonych`,
    }),
  rolledBack: 'Dziennik serwera mógł się cofnąć',
  headFault: 'Dziennik serwera jest niepewny',
  clocksOff: (count) =>
    byNumber(count, {
      one: `${count} tablet ma zły zegar`,
      few: `${count} tablety mają zły zegar`,
      other: `${count} tabletów ma zły zegar`,
    }),
  history: (share) => `Wczytywanie historii: ${share}`,
  historyChecked: 'Sprawdzanie historii',
  historyTitle: 'Historia',
  stillMissing: (missing, of) =>
    `Brakuje tu jeszcze ${missing} z ${plural(of, `${of} starszego wpisu.`, `${of} starszych wpisów.`)}`,
  checkedHelp: 'Wszystkie wpisy są tutaj. Ten tablet teraz sam wszystko przelicza i porównuje.',
  historyHelp:
    'Ten tablet zaczął od tego, co obliczył inny tablet. Ładowanie i sprawdzanie działają jak zwykle. Dziennik, jego eksporty i śledzenie są tu niepełne, dopóki nie przyjdzie reszta.',
  notWhole: (missing) =>
    `${byNumber(missing, { one: `${missing} starszy wpis jeszcze nadchodzi`, few: `${missing} starsze wpisy jeszcze nadchodzą`, other: `${missing} starszych wpisów jeszcze nadchodzi` })}: odpowiedź byłaby niepełna. Serwer ma je wszystkie.`,
};
