// What is said of the reasons that come from the plant's own lists: types of feeders, makers of a product, ages, the store.

import type { PlantReasons, ReasonFacts } from '../reason-words.ts';

/** What was measured, what is wanted, and what the guard band leaves. */
const measured = (f: ReasonFacts) =>
  `Zmierzono: ${f['quantity']} ± ${f['uncertainty']} ${f['unit']}. Oczekiwane: ${f['nominal']} ${f['unit']}, od ${f['least']} do ${f['most']}. Z pasmem ochronnym ${f['guard']}: od ${f['from']} do ${f['to']}.`;

export const plantReasonsPl: PlantReasons = {
  'feeder-unknown': {
    title: 'Nieznany podajnik',
    say: (f) =>
      `Podajnika ${f['feeder']} nie ma na liście zakładu, więc nie można sprawdzić jego szerokości.`,
    act: 'Musi zdecydować lider.',
  },
  'feeder-type': {
    title: 'Zły typ podajnika',
    say: (f) => `Podajnik ${f['feeder']} to ${f['found']}; ten slot wymaga ${f['wanted']}.`,
    act: 'Weź podajnik tego typu.',
  },
  'feeder-drive': {
    title: 'Zły napęd',
    say: (f) => `Podajnik ${f['feeder']} ma napęd ${f['found']}; ten slot wymaga ${f['wanted']}.`,
    act: 'Weź podajnik z właściwym napędem.',
  },
  'feeder-height': {
    title: 'Kieszenie za głębokie dla podajnika',
    say: (f) =>
      `Kieszenie taśmy mają ${f['wanted']} mm głębokości; podajnik ${f['feeder']} przepuszcza ${f['found']} mm.`,
    act: 'Weź podajnik na głębsze kieszenie.',
  },
  'maker-not-listed': {
    title: 'Producenta nie ma na liście tego produktu',
    say: (f) =>
      `${f['supplierPart']} nie jest zatwierdzony dla ${f['part']} w tym produkcie.${f['listed'] ? ` Zatwierdzone: ${f['listed']}.` : ''}${f['approvedFor'] ? ` Jest zatwierdzony w ${f['approvedFor']}.` : ''}`,
    act: 'Weź rolkę producenta z listy albo niech zdecyduje lider.',
  },
  'date-code-old': {
    title: 'Za stara według date code',
    say: (f) =>
      `Wyprodukowano ${f['made']}. Limit wieku linii dla tego komponentu skończył się ${f['last']}.`,
    act: 'Musi zdecydować lider.',
  },
  'date-code-unknown': {
    title: 'Wiek nieznany',
    say: (f) =>
      f['dateCode']
        ? `Nie da się na pewno odczytać date code ${f['dateCode']}. Linia ogranicza wiek tego komponentu.`
        : 'Etykieta nie podaje date code. Linia ogranicza wiek tego komponentu.',
    act: 'Musi zdecydować lider.',
  },
  'value-outside': {
    title: 'Zła wartość',
    say: measured,
    act: 'Nie ładuj. Odłóż rolkę i zeskanuj inną.',
  },
  'value-unsure': {
    title: 'Wartość niejasna',
    say: (f) => `${measured(f)} Zbyt blisko granicy dla tego miernika.`,
    act: 'Zeskanuj rolkę jeszcze raz, żeby zmierzyć ponownie, albo niech zdecyduje lider.',
  },
  'value-unmeasured': {
    title: 'Wartość niezmierzona',
    say: (f) => `Linia wymaga zmierzenia jednego komponentu ${f['part']}, zanim rolka zacznie podawać.`,
    act: 'Zeskanuj rolkę jeszcze raz, żeby go zmierzyć, albo niech zdecyduje lider.',
  },
  'value-unknown': {
    title: 'Brak wartości do sprawdzenia',
    say: (f) =>
      f['lack'] === 'tolerance'
        ? `Lista komponentów podaje dla ${f['part']} wartość bez tolerancji.`
        : `Lista komponentów nie podaje wartości dla ${f['part']}.`,
    act: 'Musi zdecydować lider. Wpisz wartość w Komponentach.',
  },
  'value-within': { title: 'Wartość sprawdzona', say: measured, act: '' },
  'feeder-care': {
    title: 'Czas na konserwację podajnika',
    say: (f) =>
      `Podajnik ${f['feeder']} ułożył około ${f['placed']} szt.; zakład ustalił konserwację po ${f['after']} szt. Oddaj go do konserwacji po wyjęciu.`,
    act: '',
  },
  'older-in-store': {
    title: 'W magazynie jest starsza rolka',
    say: (f) =>
      f['by'] === 'expires'
        ? `Rolka ${f['reel']} w ${f['place']} ma być zużyta do ${f['expires']}, przed tą.`
        : `Rolka ${f['reel']} w ${f['place']} ma date code ${f['dateCode']}, starszy niż ta.`,
    act: '',
  },
};
