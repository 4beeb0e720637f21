import type { words as english } from '../en/kit.ts';
import { byNumber, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: 'Lista pobrań i wózki',
  list: 'Lista pobrań',
  panels: 'Panele następnego zlecenia',
  needed: (count) => `${count} szt.`,
  short: (count) => `brakuje ${count}`,
  enough: 'wystarczy',
  probably: (chance, missing) => `prawdopodobnie wystarczy (${chance}): jeszcze ${missing} dla pewności`,
  readyNow: 'Zrób to, gdy linia pracuje',
  readyFetch: (count) =>
    count === 0
      ? 'Nie ma rolek do przyniesienia.'
      : plural(
          count,
          `Przynieś rolki ${count} komponentu: lista pobrań poniżej.`,
          `Przynieś rolki ${count} komponentów: lista pobrań poniżej.`,
        ),
  readyCarts: (count) =>
    count === 0
      ? 'Ustaw następne podajniki na wózku.'
      : `Ustaw podajniki na wózku: gotowe miejsca: ${count}.`,
  readyOpenList: 'Otwórz checklistę: niektóre kroki nie wymagają postoju.',
  readyList: (count) =>
    `Checklista: ${byNumber(count, { one: `${count} krok można zrobić teraz.`, few: `${count} kroki można zrobić teraz.`, other: `${count} kroków można zrobić teraz.` })}`,
  toChecklist: 'Checklista',
  fetch: (reels) => `Przynieś ${reels}`,
  stays: (slot, count) => `zostaje na ${slot}, ${count}`,
  goesTo: (from, to, count) => `z ${from} na ${to}, ${count}`,
  comesOff: (slot, count) => `wolna na ${slot}, ${count}`,
  leftThen: (count) => `zostanie około ${count} po tym zleceniu`,
  leftNow: (count) => `zostało około ${count}`,
  onLine: (count) =>
    byNumber(count, {
      one: `${count} komponent jest na linii: nic do przyniesienia`,
      few: `${count} komponenty są na linii: nic do przyniesienia`,
      other: `${count} komponentów jest na linii: nic do przyniesienia`,
    }),
  cartFirst: 'Najpierw zeskanuj lub wpisz jego kod.',
  leftUnknown: 'niepoliczone',
  maybeShort: 'najpierw policz',
  unsure: (count) =>
    byNumber(count, {
      one: `${count} komponent może wymagać więcej: policz jego rolki.`,
      few: `${count} komponenty mogą wymagać więcej: policz ich rolki.`,
      other: `${count} komponentów może wymagać więcej: policz ich rolki.`,
    }),
  uncounted: (count) =>
    byNumber(count, {
      one: `${count} rolka niepoliczona`,
      few: `${count} rolki niepoliczone`,
      other: `${count} rolek niepoliczonych`,
    }),
  none: 'nie znaleziono rolki',
  msl: (level) => `MSL ${level}: pilnuj czasu na hali`,
  shortfalls: (count) =>
    byNumber(count, {
      one: `${count} komponent wymaga więcej, niż mają znane rolki. Przynieś więcej albo powiedz liderowi.`,
      few: `${count} komponenty wymagają więcej, niż mają znane rolki. Przynieś więcej albo powiedz liderowi.`,
      other: `${count} komponentów wymaga więcej, niż mają znane rolki. Przynieś więcej albo powiedz liderowi.`,
    }),
  carts: 'Wózki',
  cart: 'Wózek',
  cartHelp: 'Zeskanuj lub wpisz kod wózka. Potem zeskanuj slot, podajnik i rolkę.',
  use: 'Użyj tego wózka',
  filling: (cart) => `Uzbrajasz ${cart}`,
  leave: 'Zostaw wózek',
  wanted: {
    slot: 'Zeskanuj slot, na który idzie',
    feeder: 'Zeskanuj podajnik',
    'old-reel': '',
    reel: 'Zeskanuj rolkę',
  },
  accepted: (slot) => `Dobrze: gotowe na ${slot}.`,
  refused: (why) => `Nie zakładaj: ${why}`,
  held: (why) => `Wstrzymana: ${why}. Odłóż ją. Lider decyduje na ekranie Załaduj.`,
  places: (count) =>
    byNumber(count, {
      one: `${count} miejsce gotowe`,
      few: `${count} miejsca gotowe`,
      other: `${count} miejsc gotowych`,
    }),
  empty: 'Zdejmij',
  dock: 'Zadokuj',
  dockTitle: (cart) => `Zadokować ${cart}?`,
  dockCaution:
    'Najpierw zatrzymaj maszynę i poczekaj, aż nic się nie rusza. Trzymaj ręce z dala od zacisku, głowicy i noża.',
  willLoad: (count, product) =>
    byNumber(count, {
      one: `${count} slot zostanie załadowany dla ${product}:`,
      few: `${count} sloty zostaną załadowane dla ${product}:`,
      other: `${count} slotów zostanie załadowanych dla ${product}:`,
    }),
  goesOff: (count) =>
    byNumber(count, {
      one: `${count} podajnik schodzi:`,
      few: `${count} podajniki schodzą:`,
      other: `${count} podajników schodzi:`,
    }),
  doesNotFit: (count) =>
    byNumber(count, {
      one: `${count} miejsce nie pasuje i zostaje pominięte:`,
      few: `${count} miejsca nie pasują i zostają pominięte:`,
      other: `${count} miejsc nie pasuje i zostaje pominiętych:`,
    }),
  unfit: {
    'feeder-loaded': (f) => `Podajnik ${f.thing} jest teraz na ${f.at}.`,
    'reel-loaded': (f) => `Rolka ${f.thing} jest teraz na ${f.at}.`,
    'lane-beside': (f) => `Jego podajnik zostaje na wózku: rolki dla ${f.at} nie można teraz założyć.`,
    neighbour: (f) => `Podajnik ${f.thing} zachodzi na ${f.at}. Najpierw zdejmij jeden z nich.`,
    'other-lane': (f) => `${f.line} potrzebuje ${f.slot}. Zostaw to na wózku.`,
    blocked: (f) => `${f.thing} ma teraz blokadę. Zdejmij z wózka.`,
  },
  others: (count) =>
    byNumber(count, {
      one: `${count} miejsce jest dla innego setupu i zostaje.`,
      few: `${count} miejsca są dla innego setupu i zostają.`,
      other: `${count} miejsc jest dla innego setupu i zostaje.`,
    }),
  nothingFits: 'Z tego wózka nic nie można załadować do tego przezbrojenia.',
  noChangeover: 'Na tej linii nie ma otwartego przezbrojenia. Najpierw je zaplanuj.',
  knownCart: (cart) => `Wybrano ${cart}.`,
  dockable: (count) =>
    byNumber(count, {
      one: `ładuje ${count} slot`,
      few: `ładuje ${count} sloty`,
      other: `ładuje ${count} slotów`,
    }),
  notStanding: 'Zadokuj, gdy ostatni panel będzie gotowy.',
  docked: (cart, count) =>
    `${cart} zadokowany: ${byNumber(count, { one: `załadowano ${count} slot.`, few: `załadowano ${count} sloty.`, other: `załadowano ${count} slotów.` })}`,
  signIn: 'Najpierw zeskanuj swoją kartę.',
  unknown: (text) => `Nieznane: ${text.slice(0, 40)}. Aby uzbroić nowy wózek, najpierw zostaw ten.`,
};
