import type { words as english } from '../en/lines.ts';
import { byNumber, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  add: 'Dodaj linię',
  edit: 'Zmień',
  editOf: (name) => `Zmień: ${name}`,
  machines: (count) =>
    byNumber(count, { one: `${count} maszyna`, few: `${count} maszyny`, other: `${count} maszyn` }),
  slots: (count) =>
    byNumber(count, { one: `${count} slot`, few: `${count} sloty`, other: `${count} slotów` }),
  fromSheets:
    'Niektóre sloty są znane tylko z arkuszy setupu. Otwórz linię, by nazwać je tak, jak są opisane na maszynie.',
  newTitle: 'Nowa linia',
  newName: (number) => `Linia ${number}`,
  name: 'Nazwa',
  zone: 'Strefa czasowa',
  zoneHelp: 'Tam, gdzie stoi linia, np. Europe/Warsaw.',
  help: 'Dla każdego banku wpisz pierwszy i ostatni slot tak, jak są opisane na maszynie.',
  bankOf: (number) => `Bank ${number}`,
  removeOf: (number) => `Usuń bank ${number}`,
  first: 'Pierwszy slot',
  last: 'Ostatni slot',
  addAcross: (slot) => `Dodaj drugą stronę: ${slot}`,
  addMachine: (slot) => `Dodaj następną maszynę: ${slot}`,
  addBank: 'Dodaj bank',
  holdsTrays: 'Tacki, bez podajników',
  trays: 'tacki',
  lanes: {
    title: 'Tory',
    help: 'Transporter może prowadzić dwa produkty naraz. Każdy tor ma własną serię; wszystkie pobierają z tych samych slotów.',
    add: 'Dodaj tor',
    name: (number) => `Nazwa toru ${number}`,
    called: (line, number) => `${line}, tor ${number}`,
    removeOf: (number) => `Usuń tor ${number}`,
    held: {
      runs: (lane) => `${lane} produkuje. Najpierw zakończ serię.`,
      reels: (slots) => `Najpierw wyjmij to, czego potrzebuje tylko ten tor: ${slots}.`,
      open: 'Na tym torze jest coś otwarte: wstrzymana rolka, przekazanie, przezbrojenie, checklista, przegląd, pasta, stacja licząca, gotowy podajnik lub wózek. Najpierw to zakończ.',
    },
  },
  picture: 'Jak wygląda linia',
  save: 'Zapisz linię',
  saved: (name) => `Zapisano: ${name}.`,
  faults: {
    'no-number': 'Oba muszą kończyć się numerem: M1-F-001 i M1-F-025.',
    differs: 'Różnić się może tylko numer na końcu.',
    'not-from-one': 'Pierwszy slot musi mieć numer 1.',
    backwards: 'Ostatni numer jest mniejszy niż pierwszy.',
    'too-many': 'Bank ma najwyżej 500 slotów.',
    twice: 'Ten bank już tu jest.',
  },
  obstacles: {
    ranges: (count) =>
      byNumber(count, {
        one: 'Popraw bank zaznaczony wyżej.',
        few: `Popraw ${count} banki zaznaczone wyżej.`,
        other: `Popraw ${count} banków zaznaczonych wyżej.`,
      }),
    'name-missing': 'Podaj nazwę.',
    'lanes-alike': 'Nadaj każdemu torowi własną nazwę.',
    'zone-unknown': 'Wybierz strefę czasową z listy.',
    'no-banks': 'Najpierw wpisz sloty jednego banku.',
    lost: (slots, count) =>
      byNumber(count, {
        one: `Slot ${slots} jest w użyciu. Zostaw go.`,
        few: `Zniknęłyby ${count} sloty w użyciu: ${slots}. Zostaw je.`,
        other: `Zniknęłoby ${count} slotów w użyciu: ${slots}. Zostaw je.`,
      }),
  },
};
