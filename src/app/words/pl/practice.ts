import type { words as english } from '../en/practice.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  word: 'ĆWICZENIE',
  tells: 'Tu nic się nie liczy. Prawdziwa linia pracuje dalej.',
  end: 'Zakończ ćwiczenie',
  real: (slot, told) => `Na prawdziwej linii: ${slot} ${told}`,
  title: 'Ćwicz bez ruszania linii',
  about:
    'Dostajesz kopię tej linii w obecnym stanie. Skanuj, łącz, przezbrajaj, popełniaj błędy: nic nie trafia do prawdziwej linii, jej dziennika ani liczników. Kopia znika po zakończeniu ćwiczenia albo po dwunastu godzinach.',
  aboutNew:
    'Ten zakład nie ma jeszcze linii, więc dostajesz małą, zmyśloną. Skanuj, ładuj, łącz, popełniaj błędy. Znika po zakończeniu ćwiczenia albo po dwunastu godzinach.',
  warns: 'Ostrzeżenia prawdziwej linii nadal się pokazują.',
  start: 'Zacznij ćwiczenie',
  taken: 'Ćwiczenie jest otwarte w innym oknie tego tabletu. Najpierw zakończ je tam.',
  notSaved: (name) => `Ćwiczenie: żaden plik nie powstaje. Na prawdziwej linii byłby to ${name}.`,
  labels: 'Etykiety do ćwiczeń',
  labelsHelp: 'Dotknij etykiety zamiast skanować: slot, jego podajnik, jeśli potrzebny, jego rolka.',
  print: 'Drukuj etykiety',
  groups: {
    load: 'Do załadowania',
    splice: 'Do łączenia jako następne',
    wrong: 'Do odrzucenia lub wstrzymania',
    panels: 'Panele',
  },
  slot: (slot) => `Slot ${slot}`,
  wants: (part) => `wymaga ${part}`,
  right: (slot) => `właściwa rolka dla ${slot}`,
  wrong: (slot, asked) => `idzie na ${slot}; spróbuj na ${asked}`,
  foreign: (asked) => `żaden slot jej nie potrzebuje; spróbuj na ${asked}`,
  bare: (slot) => `bez ilości na etykiecie; dla ${slot}`,
  free: (slot) => `wolny podajnik dla ${slot}`,
  panel: 'liczy jeden panel',
  nothing: 'Najpierw wybierz setup. Jego etykiety pokażą się tutaj.',
  names: {
    line: 'Linia ćwiczebna',
    machine: 'pierwsza maszyna',
    bank: 'przód',
    product: 'Płytka ćwiczebna',
  },
};
