import type { words as english } from '../en/this-plant.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  name: 'Nazwa zakładu',
  nameHelp: 'Stoi na kartach załadunku, kartach osób i eksportach.',
  zoneHelp: 'Od niej zaczynają nowe linie.',
  nameMissing: 'Wpisz nazwę zakładu.',
  zoneUnknown: 'Wybierz strefę czasową z listy.',
  same: 'Nic się nie zmieniło.',
  save: 'Zapisz nazwę',
  saved: (name) => `${name}: zapisano.`,
  fileTitle: 'Plik dla drugiego zakładu',
  fileHelp:
    'Zawiera linie, maszyny, banki, reguły, reguły indeksów, checklisty i reguły etykiet. Nie zawiera osób, rolek, setupów ani historii.',
  noLine: 'Nie ma jeszcze linii.',
  fileSave: 'Zapisz plik',
  fileSaved: (name) => `${name}: zapisano.`,
  beginTitle: 'Zacznij od pliku innego zakładu',
  beginHelp: 'Zapisano go w innym zakładzie, na tej stronie albo przez „reelward plant”.',
  notEmpty: 'Ten zakład ma już linie. Plik jest tylko dla zakładu bez linii.',
  begun: 'Linie i reguły są na miejscu. Przejdź do następnego kroku.',
  choose: 'Wybierz plik',
  brings: 'Przynosi:',
  bringsOf: (name) => `Z ${name} przynosi:`,
  counts: {
    lines: 'Linie',
    slots: 'Sloty',
    parts: 'Reguły indeksów',
    checklists: 'Checklisty',
    labelRules: 'Reguły etykiet',
  },
  begin: 'Użyj tego pliku',
  toSteps: 'Pierwsze kroki',
  faults: {
    'not-json': 'To nie jest plik zakładu. Wybierz plik zapisany w innym zakładzie.',
    'not-a-plant': 'To inny rodzaj pliku. Wybierz plik zapisany w innym zakładzie.',
    newer: 'Ten plik zapisała nowsza wersja. Najpierw zaktualizuj ten tablet.',
    'no-lines': 'W tym pliku nie ma linii. Zapisz go na nowo w innym zakładzie.',
    kind: (at, what) =>
      `Wpis ${at} (${what}) nie należy do takiego pliku. Zapisz go na nowo w innym zakładzie.`,
    payload: (at, what) => `Wpis ${at} (${what}) jest uszkodzony. Zapisz plik na nowo w innym zakładzie.`,
  },
};
