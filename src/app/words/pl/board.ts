import type { words as english } from '../en/board.ts';
import { byNumber, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  way: 'Plik współrzędnych i BOM',
  wayHelp:
    'Nie masz arkusza ze slotami? Zacznij od pliku współrzędnych płytki. Potem możesz dodać BOM; sloty zostaną zaproponowane dla twojej linii.',
  choosePlacements: 'Wybierz plik współrzędnych',
  isPlacements: 'Ten plik nie podaje slotów, więc jest czytany jako plik współrzędnych.',
  isBill: 'To jest BOM. Teraz wybierz plik współrzędnych tej samej płytki.',
  readAsSheet: 'Czytaj jako arkusz setupu',
  billColumnsTitle: 'Kolumny BOM-u',
  putAway: 'Odłóż',
  correctColumns: 'Popraw kolumny',
  variant: 'Produkowany wariant',
  variantNone: 'nie wybrano',
  variantHelp: 'BOM różni się między wariantami.',
  sidesOf: (top, bottom) => `Ułożenia: góra ${top}, dół ${bottom}.`,
  notPlacedTitle: (count) =>
    `Nieukładane: ${byNumber(count, { one: `${count} oznaczenie`, few: `${count} oznaczenia`, other: `${count} oznaczeń` })}. Wymienione, niepoliczone.`,
  left: {
    notFitted: 'Niemontowane',
    fiducial: 'Fiduciale',
    testPoint: 'Punkty testowe',
    hole: 'Otwory',
    mark: 'Znaki',
    throughHole: 'Przewlekane',
    noPart: 'Bez komponentu',
    doubled: 'Podane dwa razy',
  },
  leftByBill: 'Niemontowane według BOM-u albo nie ma ich w obu plikach',
  noSide: 'Najpierw wybierz stronę. Każda strona to osobny setup.',
  noParts: 'Po tej stronie nie ma komponentów.',
  namedByValue: (count) =>
    `${byNumber(count, { one: `${count} komponent nie ma indeksu i jest nazwany`, few: `${count} komponenty nie mają indeksu i są nazwane`, other: `${count} komponentów nie ma indeksu i są nazwane` })} wartością. Rolki są sprawdzane z tą nazwą. Dodaj BOM z indeksami.`,
  filesWrong: (count) =>
    `Najpierw popraw ${byNumber(count, { one: 'błąd', few: `${count} błędy`, other: `${count} błędów` })} w plikach`,
  filesHelp: 'Popraw kolumnę powyżej albo popraw plik i wybierz go ponownie. Ostrzeżenia nie blokują.',
  noLine: 'Nie ma jeszcze znanej linii z maszynami i slotami.',
  noLineHelp:
    'Sloty można zaproponować tylko dla znanej linii. Najpierw zaimportuj arkusz setupu tej linii; podaje on maszyny i sloty. Potem możesz ponownie wybrać pliki.',
  toSheet: 'Najpierw zaimportuj arkusz setupu',
  chooseLine: 'Wybierz linię',
  slotsTitle: 'Sloty',
  isProposal:
    'To propozycja dla podajników, nie program układania. Nie mówi, która głowica co i kiedy układa; uzgodnij sloty ze swoim programem.',
  proposalHelp:
    'Komponenty zostają tam, gdzie stoją na linii lub w innych jej setupach. Nowe dostają wolne sloty.',
  propose: 'Zaproponuj sloty',
  proposeAgain: 'Zaproponuj znów',
  proposing: 'Szukam slotów…',
  stopProposing: 'Zatrzymaj',
  proposeFailed: 'Nie udało się nic zaproponować. Spróbuj ponownie albo wybierz sloty ręcznie.',
  toPutIn: (count) =>
    byNumber(count, {
      one: `${count} podajnik do włożenia`,
      few: `${count} podajniki do włożenia`,
      other: `${count} podajników do włożenia`,
    }),
  difference: (fresh, moves, stays) =>
    `Nowych: ${fresh}, z innego slotu linii: ${moves}. ${byNumber(stays, { one: `${stays} podajnik zostaje`, few: `${stays} podajniki zostają`, other: `${stays} podajników zostaje` })}.`,
  comeOut: (count) =>
    `${byNumber(count, { one: `${count} inny podajnik zawadza i trzeba go wyjąć`, few: `${count} inne podajniki zawadzają i trzeba je wyjąć`, other: `${count} innych podajników zawadza i trzeba je wyjąć` })}.`,
  openTitle: (count) =>
    byNumber(count, {
      one: `${count} komponent bez slotu`,
      few: `${count} komponenty bez slotu`,
      other: `${count} komponentów bez slotu`,
    }),
  leftTitle: (count) =>
    byNumber(count, {
      one: `${count} komponent, którego ta linia nie układa`,
      few: `${count} komponenty, których ta linia nie układa`,
      other: `${count} komponentów, których ta linia nie układa`,
    }),
  reasons: {
    'too-wide': 'Jego podajnik jest szerszy niż każdy bank linii.',
    'no-room': 'Na linii nie ma już miejsca.',
  },
  noneYet: 'Nie zaproponowano jeszcze slotu.',
  ownPlaces: 'Własne miejsca',
  perPanel: (count) => `${count} na panel`,
  stays: 'zostaje',
  moves: (from) => `z ${from}`,
  fresh: 'nowy',
  inFile: (part) => `${part} w pliku`,
  said: 'wybrane ręcznie',
  asIn: (product) => `jak w ${product}`,
  width: {
    tray: 'na tackach',
    maybeTray: 'na tackach?',
    said: (mm) => `${mm} mm`,
    setup: (mm) => `${mm} mm`,
    usual: (mm) => `${mm} mm?`,
    none: 'szerokość nieznana',
  },
  faults: {
    'on-trays': 'Tu stoją tacki, nie podajniki.',
    'no-tray': 'Przychodzi na tackach; tu stoją podajniki.',
    'look-alike': (part, slot) => `Łatwo pomylić z ${part} obok na ${slot}.`,
    overlap: (part, slot) => `Koliduje z ${part} na ${slot}.`,
    'over-end': (positions) =>
      `Jego podajnik zajmuje ${byNumber(positions, { one: `${positions} pozycję`, few: `${positions} pozycje`, other: `${positions} pozycji` })} i wystaje poza koniec banku.`,
    'off-line': 'Linia nie ma takiego slotu.',
    'lane-wide': (positions) =>
      `Jego podajnik zajmuje ${byNumber(positions, { one: `${positions} pozycję`, few: `${positions} pozycje`, other: `${positions} pozycji` })}; na torze mieści się jedna.`,
    'lane-width': (part) => `Tor obok podaje ${part} z taśmy innej szerokości. Sprawdź podajnik.`,
  },
  addBoard: 'Zaproponuj z inną płytką',
  together: (boards) =>
    `Proponowane razem z: ${boards}. Dzięki temu wkłada się najmniej podajników na wszystkich.`,
  heldTitle: 'Płytki, które czekają',
  goOnWith: (board) => `Kontynuuj z ${board}`,
  dragHelp: 'Przeciągnij element za uchwyt na inny slot albo dotknij go.',
  freeOne: (slot) => `Wolny: ${slot}`,
  freeRange: (first, last) => `Wolne: od ${first} do ${last}`,
  bankOfTrays: (bank) => `${bank}: tacki`,
  change: (part) => `${part}: zmień slot`,
  tapeWidth: 'Szerokość taśmy',
  widthUnknown: 'nieznana',
  widthFrom: {
    said: 'Podane ręcznie.',
    setup: 'Z najnowszego setupu z tym komponentem.',
    list: 'Z listy komponentów.',
    usual: 'Zwykła dla tej obudowy. Liczy się tylko do miejsca; podajniki nie są z nią sprawdzane.',
    none: 'Jego podajnik liczy się jako jedna pozycja, dopóki nie podasz więcej.',
  },
  widthsUnknown: (count) =>
    `${byNumber(count, { one: `${count} komponent nie ma`, few: `${count} komponenty nie mają`, other: `${count} komponentów nie ma` })} znanej szerokości taśmy. Każdy podajnik liczy się jako jedna pozycja: dotknij komponentu i podaj szerokość taśmy.`,
  bank: 'Maszyna i bank',
  legend: '■ w tym setupie · □ teraz stoi tam podajnik',
  free: (slot) => `${slot} jest wolny.`,
  here: (slot) => `Już jest na ${slot}.`,
  swaps: (slot, other, back) => `${other} stoi na ${slot}. Idzie na ${back}.`,
  pushes: (slot, other) => `${other} stoi na ${slot}. Zostanie wtedy bez slotu.`,
  takesOut: (slot, part) => `${part} stoi tam teraz na linii. Trzeba go wyjąć z ${slot}.`,
  moveHere: (slot) => `Użyj ${slot}`,
  chooseSlot: 'Najpierw wybierz slot',
  leaveOut: 'Ta linia go nie układa',
  takeBack: 'Ta linia go układa',
  close: 'Zamknij',
  paper: {
    title: 'Karta załadunku',
    print: 'Drukuj kartę załadunku',
    perPanel: 'Na panel',
    feeder: 'Podajnik',
  },
  noSlots: 'Najpierw zaproponuj sloty',
  slotsOpen: (count) =>
    `${byNumber(count, { one: `${count} komponent nie ma`, few: `${count} komponenty nie mają`, other: `${count} komponentów nie ma` })} slotu: podaj go albo zaznacz, że ta linia go nie układa`,
  slotsFaulty: (count) =>
    `${byNumber(count, { one: `${count} slot zawadza innemu lub jest za mały`, few: `${count} sloty zawadzają innym lub są za małe`, other: `${count} slotów zawadza innym lub jest za małych` })}: wybierz inny`,
};
