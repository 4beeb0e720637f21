// What is said of the reasons about bakes, labels of level 6 and reels without an id.

import type { MoistureReasons, TableWords } from '../reason-words.ts';

/** On what a bake's hours rest. */
export const tablePl: TableWords = {
  own: 'Tabela: własny egzemplarz zakładu. ',
  copy: 'Tabela: porównana z opublikowanym egzemplarzem. ',
  memory: 'Tabela: z pamięci. ',
};

export const moistureReasonsPl: MoistureReasons = {
  'bake-hours-over': {
    title: 'Łącznie wygrzewana za długo',
    say: (f) =>
      `Dotąd ${f['hours']} h powyżej 90 °C; limit to ${f['most']} h. Wyprowadzenia mogą się źle lutować.`,
    act: 'Musi zdecydować lider. Zapytaj producenta komponentu.',
  },
  'label-time-missing': {
    title: 'Poziom 6: czas z etykiety?',
    say: () =>
      'Po wygrzaniu rolka poziomu 6 wytrzymuje tyle, ile mówi etykieta jej torebki. Nikt tego nie podał.',
    act: 'Wygrzej ją, wpisz godziny w Torebka / piec, potem zeskanuj ponownie.',
  },
  'reel-unnamed': {
    title: 'Bez ID i może być otwarta',
    say: (f) =>
      `Rolka tego komponentu${f['lot'] ? `, partia ${f['lot']},` : ''} zeszła wcześniej z linii${f['left'] ? `, zostało ${f['left']}` : ''}. Bez ID nie da się ich odróżnić, więc ${f['floorLife'] === 'true' ? 'czas na hali jest nieznany' : 'liczba sztuk jest nieznana'}.`,
    act: 'Nadaj rolce ID albo niech zdecyduje lider.',
  },
  'reel-gone': {
    title: 'Według dziennika dawno zużyta',
    say: (f) =>
      `Według dziennika rolka ${f['reel']} lub część jej zawartości dawno się zużyła. Ten tablet nie wie, jak długo była poza torebką.`,
    act: 'Jej partii szukaj w: Śledzenie. Musi zdecydować lider.',
  },
  'floor-life-short': {
    title: 'Czas na hali kończy się przed rolką',
    say: (f) =>
      `Jej czas na hali kończy się za ${f['leftSeconds']}, rolki wystarczy na ${f['neededSeconds']}.`,
    act: 'Musi zdecydować lider.',
  },
};
