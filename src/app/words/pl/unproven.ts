import type { words as english } from '../en/unproven.ts';
import { byNumber, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  page: 'Nieudowodnione',
  none: 'Nic nie jest nieudowodnione: za każdym wpisem, który wymaga lidera, stoi bilet serwera.',
  noTickets:
    'Ten zakład nie wydaje jeszcze biletów. Zaczynają się, gdy lider wpisze PIN tam, gdzie serwer odpowiada.',
  help: 'Te wpisy wymagają lidera lub inżyniera, a zrobiono je bez biletu serwera. Na hali się liczą. Lider, który o nich wie, potwierdza je lub odrzuca.',
  stands: {
    proven: 'udowodnione biletem',
    unproven: 'nieudowodnione',
    confirmed: 'potwierdzone przez lidera',
    rejected: 'odrzucone przez lidera',
    'before-tickets': 'zrobione przed biletami',
  },
  right: 'Uprawnienie',
  why: {
    'no-ticket': (role) => `Brak biletu serwera: nic nie dowodzi, że zrobiła to osoba w roli „${role}”.`,
    'ticket-over': () => 'Bilet nie obejmował tej chwili.',
    role: (role) => `Bilet jest dla niższej roli. Potrzebna: ${role}.`,
  },
  before: 'Ten zakład nie wydawał jeszcze biletów, gdy to zapisano.',
  by: (name) => name,
  nobody: 'nikogo nie podano',
  confirm: 'Potwierdź',
  reject: 'Odrzuć',
  confirmAll: (count) =>
    byNumber(count, {
      one: 'Potwierdź',
      few: `Potwierdź wszystkie ${count}`,
      other: `Potwierdź wszystkie ${count}`,
    }),
  confirmTitle: (count) =>
    byNumber(count, {
      one: 'Czy zrobiono to, jak zapisano?',
      few: `Czy wszystkie ${count} zrobiono, jak zapisano?`,
      other: `Czy wszystkie ${count} zrobiono, jak zapisano?`,
    }),
  rejectTitle: 'Czy nie zrobiła tego ta osoba?',
  rejectHelp:
    'Wpis zostaje, oznaczony jako odrzucony. To, co zmienił na hali, też zostaje: napraw to samodzielnie.',
  rejectPerson: 'Na serwerze zmiana tej osoby się nie liczy. Zobacz osoby w Zakład i popraw listę.',
  reason: 'Skąd to wiadomo?',
  needsServer: 'Do tego serwer musi odpowiadać: dopiero wtedy jest udowodnione, kto decyduje.',
  notProven:
    'Zapisano to, ale bez biletu, więc niczego nie rozstrzyga. Spróbuj ponownie tam, gdzie serwer odpowiada.',
  confirmed: (count) =>
    byNumber(count, {
      one: 'Wpis jest potwierdzony.',
      few: `${count} wpisy są potwierdzone.`,
      other: `${count} wpisów jest potwierdzonych.`,
    }),
  rejected: 'Wpis jest odrzucony.',
  engineerOnly: (count) =>
    byNumber(count, {
      one: `${count} z nich wymaga słowa inżyniera.`,
      few: `${count} z nich wymagają słowa inżyniera.`,
      other: `${count} z nich wymaga słowa inżyniera.`,
    }),
  badgeAlone: (name) =>
    `${name}: zalogowano samą kartą. To, co wymaga lidera, zostaje nieudowodnione. Zaloguj się nazwiskiem i PIN-em, aby to udowodnić.`,
  settled: { confirmed: 'potwierdzone', rejected: 'odrzucone' },
};
