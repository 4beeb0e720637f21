import type { words as english } from '../en/search.ts';
import { byNumber, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  field: 'Wpisz lub zeskanuj cokolwiek',
  help: 'Rolka, komponent, partia, panel, slot, podajnik, osoba lub produkt. Skan tutaj szuka, nie ładuje.',
  kinds: {
    reel: 'Rolki',
    slot: 'Sloty',
    part: 'Komponenty',
    'supplier-part': 'Indeksy dostawców',
    lot: 'Partie',
    panel: 'Panele',
    feeder: 'Podajniki',
    person: 'Osoby',
    setup: 'Setupy',
    entry: 'Wpisy dziennika',
  },
  more: (count) => `Pokaż jeszcze ${count}`,
  nothing: (text) => `Nic tutaj nie zawiera „${text}”.`,
  alike: (codes) => `Nie są takie same: ${codes}. Sprawdź każdy znak.`,
  onLabel: 'Także na tej etykiecie:',
  left: (count) => `zostało ${count} szt.`,
  slotIs: {
    right: 'dobrze',
    empty: 'nic nie załadowano',
    held: 'czeka na lidera',
    'other-part': 'zły komponent',
    'wrong-feeder': 'zły podajnik',
    blocked: 'zablokowane',
  },
  notWanted: 'nie w tym setupie',
  chosen: 'wybrany',
  reading: (entries) =>
    `Czytanie dziennika: dotąd ${byNumber(entries, { one: `${entries} wpis`, few: `${entries} wpisy`, other: `${entries} wpisów` })}.`,
  searchedAll: (entries) =>
    `Przeszukano: ${byNumber(entries, { one: `${entries} wpis dziennika`, few: `wszystkie ${entries} wpisy dziennika`, other: `wszystkie ${entries} wpisów dziennika` })} na tym tablecie.`,
  searchedSince: (day) => `Przeszukano: wpisy dziennika od ${day}. Starsze są w dzienniku.`,
  askServer: 'Zapytaj serwer',
  asking: 'Pytanie do serwera…',
  noServer: 'Serwer nie odpowiada: nie przeszukano tego, co wie tylko on.',
  serverNothing: (text) => `Serwer nie ma nic o „${text}”.`,
  serverHas: (kind, count) => `${kind}: ${count} na serwerze`,
};
