import type { Layout } from '../../scan/layouts.ts';
import type { words as english } from '../en/scanner.ts';
import { byNumber, plural, type Sentences } from '../words.ts';

const layoutsPl: Readonly<Record<Layout, string>> = {
  us: 'angielska (USA)',
  uk: 'angielska (brytyjska)',
  german: 'niemiecka',
  'swiss-german': 'szwajcarska niemiecka',
  french: 'francuska',
  spanish: 'hiszpańska',
  italian: 'włoska',
  swedish: 'szwedzka',
};

export const words: Sentences<typeof english> = {
  layouts: layoutsPl,
  title: 'Zeskanuj ten kod skanerem',
  help: 'Z tego ekranu, z innego albo z wydrukowanego arkusza. Gdy ta strona jest otwarta, skany nie idą nigdzie indziej.',
  codeLabel: 'Kod kalibracji',
  striped: 'Skaner, który czyta tylko kody kreskowe',
  stripedLabel: 'Kreskowy kod kalibracji',
  stripedHelp:
    'Za szeroki na mały ekran: wtedy wydrukuj arkusz. Kody kreskowe mają jeden separator, więc tylko on jest testowany.',
  stripedSheet: 'Dla skanera, który czyta tylko kody kreskowe:',
  print: 'Drukuj arkusz',
  waiting: 'Czekam na skan…',
  right: 'Ten skaner jest dobrze ustawiony.',
  rightText: 'Litery, znaki i separatory przychodzą tak, jak wydrukowano.',
  plainOnly: 'Proste kody są czytane; etykiety z separatorami nie.',
  plainOnlyText: 'Takie etykiety są odrzucane, dopóki skaner nie zostanie ustawiony jak poniżej.',
  wrong: 'Temu skanerowi nie można jeszcze ufać.',
  wrongText: 'To, co skanuje, nie przychodzi tak, jak wydrukowano.',
  findings: {
    'all-equal': 'Każdy znak przyszedł tak, jak wydrukowano.',
    'half-arrived': (found, wanted) =>
      `Przyszło tylko ${found} z ${plural(wanted, `${wanted} znaku`, `${wanted} znaków`)}: skan został ucięty. Ustaw opóźnienie między znakami na zero albo zbliż skaner do bazy.`,
    'layout-differs': (scanner, tablet) =>
      `Skaner pisze dla klawiatury: ${scanner}, tablet oczekuje: ${tablet}. Ustaw klawiaturę skanera na: ${tablet} albo układ tabletu na: ${scanner}.`,
    'characters-differ':
      'Znaki przychodzą zmienione i nie tłumaczy tego żaden znany tu układ klawiatury. Ustaw klawiaturę skanera na układ tabletu i zeskanuj ponownie.',
    'case-inverted':
      'Wielkie i małe litery przychodzą zamienione. Wyłącz Caps Lock i ustaw skaner, by zostawiał litery jak wydrukowano.',
    'separators-lost': (names) =>
      `Separatory nie przychodzą (${names}). Ustaw skaner, by wysyłał znaki sterujące, jako Ctrl z klawiszem albo jako Alt z klawiaturą numeryczną.`,
    'separator-replaced': (name, by) =>
      `Separator ${name} przychodzi jako „${by}”. Ustaw skaner, by wysyłał znaki sterujące bez zmian.`,
    'terminator-missing':
      'Brak Enter na końcu, więc koniec skanu jest zgadywany. Ustaw sufiks skanera na Enter.',
    'unknown-key': (key) =>
      `W środku skanu przyszedł klawisz „${key}”. Usuń takie klawisze z ustawień skanera.`,
    slow: (pace) => `${pace} ms między dwoma znakami to wolno. Ustaw opóźnienie między znakami na zero.`,
    'symbology-id-sent': (id) =>
      `Skaner wysyła z przodu rodzaj kodu (${id}). To jest rozumiane i może zostać.`,
  },
  wanted: 'wydrukowano',
  found: 'przyszło',
  label: {
    title: 'Zeskanuj wydrukowaną etykietę',
    help: 'Slotu, podajnika, karty lub rolki.',
    read: 'Ta etykieta jest odczytana.',
    unknown: 'Ten tablet nie zna tej etykiety.',
    unknownHelp:
      'Zeskanuj ją jeszcze raz. Jeśli to nie pomoże, wydrukuj ją większą albo najpierw dodaj do zakładu.',
  },
  arrived: 'Co przyszło',
  none: 'Jeszcze nic. Zeskanuj cokolwiek: pokaże się tutaj, ze znakami sterującymi.',
  characters: (count) =>
    byNumber(count, { one: `${count} znak`, few: `${count} znaki`, other: `${count} znaków` }),
  pace: (ms) => `${ms} ms każdy`,
  endedBy: { Enter: 'potem Enter', Tab: 'potem Tab', silence: 'bez Enter' },
  reads: 'czyta się jako',
  readsNothing: 'żadna znana etykieta',
  settingsTitle: 'Jak ustawić skaner',
  settings: [
    'Działa jako klawiatura (HID).',
    'Kraj klawiatury: taki jak w tablecie.',
    'Wysyła znaki sterujące, jako Ctrl z klawiszem albo Alt z klawiaturą numeryczną.',
    'Sufiks: Enter. Bez prefiksu.',
    'Litery jak wydrukowano: bez zmiany wielkości.',
    'Bez opóźnienia między znakami.',
  ],
  keep: 'Zapisz tempo tego skanera na tym tablecie',
  keptNow: 'Zapisano. Ten tablet odróżnia skany od pisania po tym tempie.',
  isKept: 'Ten tablet zapisał tempo swojego skanera.',
  forget: 'Użyj zwykłego tempa',
  sheetTitle: 'Kalibracja skanera',
  sheetText: 'Otwórz Zakład, Skaner na tablecie, potem zeskanuj ten kod.',
  sheetHolds: 'Kod zawiera:',
  fields: {
    part: 'komponent',
    supplierPart: 'indeks dostawcy',
    quantity: 'ilość',
    lot: 'partia',
    dateCode: 'date code',
    reel: 'rolka',
  },
};
