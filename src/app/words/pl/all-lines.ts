import type { words as english } from '../en/all-lines.ts';
import { byNumber, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  tile: 'Stan każdej linii i ekran ścienny.',
  states: {
    running: 'W ruchu',
    stopped: 'Postój',
    silent: 'Bez licznika',
    changing: 'Przezbrojenie',
    loading: 'Załadunek',
    ready: 'Gotowa',
    idle: 'Bez setupu',
  },
  since: (span) => `od ${span}`,
  loaded: 'slotów załadowanych',
  ends: (clock) => `koniec około ${clock}`,
  now: 'Teraz',
  nextWalk: (when, count, slots) =>
    `${when}: ${byNumber(count, { one: `${count} łączenie`, few: `${count} łączenia`, other: `${count} łączeń` })}, ${slots}`,
  noWalk: 'Nie ma łączeń do zrobienia.',
  missed: (slot, clock) => `${slot}: nikt nie dotrze do ${clock}.`,
  looking: 'Obliczanie…',
  together: (clock: string) => `Obie linie potrzebują Cię o ${clock}.`,
  warnings: (count) =>
    byNumber(count, {
      one: `${count} ostrzeżenie`,
      few: `${count} ostrzeżenia`,
      other: `${count} ostrzeżeń`,
    }),
  holds: (count) => `${count} dla lidera`,
  blocked: (count) =>
    byNumber(count, {
      one: `${count} zablokowana rolka`,
      few: `${count} zablokowane rolki`,
      other: `${count} zablokowanych rolek`,
    }),
  byHand: 'Liczona ręcznie',
  byStation: (name) => `Liczy ${name}`,
  silentStation: (name) => `${name} milczy`,
  lastPanel: (span) => `ostatni panel ${span} temu`,
  lastAct: (who, span) => `${who}, ${span} temu`,
  heard: (span) => `ostatni wpis ${span} temu`,
  notHeard: 'jeszcze żadnego wpisu',
  here: 'ten tablet',
  caution: 'Inne linie są takie, jak ostatnio podały ich tablety. Spójrz na linię, zanim coś zrobisz.',
  quiet: (tablets) => `Nic nie zapisano na: ${tablets}`,
  quietFor: (name, span) => `${name} od ${span}`,
  toWall: 'Pokaż na ścianie',
  wallHelp: 'Nikt nie jest tu zalogowany, a skany nic nie robią.',
  stay: 'Zawsze zaczynaj tutaj',
  stayNoMore: 'Nie zaczynaj już tutaj',
  leave: 'Opuść ekran ścienny',
  unheard: (clock, span) => `Brak wieści od ${clock}, od ${span}.`,
  unheardHelp: 'To, co tu widać, jest z tamtej chwili. Sprawdź na liniach.',
  unheardEver: 'Jeszcze brak wieści z serwera. Sprawdź sieć.',
  readsOnly: 'Ten ekran tylko pokazuje. Lider może go wykluczyć na tablecie.',
};
