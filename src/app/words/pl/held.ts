import type { words as english } from '../en/held.ts';
import { byNumber, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  causes: {
    'wrong-reel': 'Zła rolka wykryta późno',
    cleared: 'Wstrzymanie mylnie zwolnione',
    blocked: 'Zablokowany materiał',
    'floor-life': 'Czas na hali minął',
  },
  hold: 'Wstrzymaj te panele',
  holdTitle: (panels) =>
    `Wstrzymać ${byNumber(panels, { one: `${panels} panel`, few: `${panels} panele`, other: `${panels} paneli` })}?`,
  holdHelp:
    'Wstrzymane są wszystkie panele, które mogą go zawierać, także te jeszcze na linii. Pozostają wstrzymane, aż podpisze je lider.',
  goesOn: 'Wciąż jest na slocie. Najpierw zdejmij, inaczej kolejne panele nie zostaną wstrzymane.',
  cause: 'Dlaczego są wstrzymane?',
  lifeHelp: 'Wstrzymane są panele od chwili, gdy skończył się czas na hali.',
  noLifeOver: 'Według dziennika czas na hali nigdy nie był przekroczony podczas budowy paneli.',
  reason: 'Co stwierdzono?',
  codes: (codes) => `Znane kody paneli: ${codes}.`,
  sure: (panels) => (panels === 0 ? 'O żadnym nie wiadomo na pewno.' : `Na pewno go zawiera: ${panels}.`),
  done: (panels) =>
    byNumber(panels, {
      one: `${panels} panel jest wstrzymany.`,
      few: `${panels} panele są wstrzymane.`,
      other: `${panels} paneli jest wstrzymanych.`,
    }),
  none: 'Żaden panel nie jest wstrzymany.',
  span: (first, last) => `Panele ${first} do ${last}`,
  still: (held, all) => `Jeszcze niepodpisane: ${held} z ${all}`,
  noCodes: 'Brak kodów paneli. Znajdź te panele po numerach.',
  signed: (who, when) => `Podpis: ${who}, ${when}`,
  sign: 'Podpisz',
  signAll: 'Podpisz wszystkie',
  signTitle: 'Co zrobiono z tymi panelami?',
  signHelp: 'Wybierz pojedyncze panele albo podpisz wszystkie.',
  signWhy: 'Co zrobiono? Np. naprawione, złomowane, uznane za dobre.',
  signDone: 'Podpisano.',
  save: 'Zapisz kody jako CSV',
  which: 'Które panele?',
};
