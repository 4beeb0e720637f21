import type { words as english } from '../en/change.ts';
import { byNumber, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Przezbrojenie',
  none: 'Brak otwartego przezbrojenia',
  noneHelp: 'Wybierz, co linia zbuduje potem. Przygotuj, póki jeszcze pracuje.',
  missing: {
    title: 'Nie ma jeszcze czego przezbrajać',
    text: 'Ten zakład jest nowy. Najpierw zrób to:',
    people: 'Nikt nie może się jeszcze zalogować.',
    peopleDone: 'Można się logować.',
    addPerson: 'Dodaj pierwszą osobę',
    setup: 'Nie ma jeszcze setupu ani linii.',
    bringSetup: 'Zaimportuj setup',
    done: 'zrobione',
  },
  noSetups: 'Ta linia nie ma jeszcze setupu. Zaimportuj go, potem wybierz tutaj.',
  nothingElse: 'Ta linia nie ma jeszcze innego produktu.',
  nextKept: 'Z zapisanej kolejności zleceń.',
  nextOthers: 'Inny produkt',
  panels: (count, shown) =>
    byNumber(count, { one: `${shown} panel`, few: `${shown} panele`, other: `${shown} paneli` }),
  running: (product) => `Linia jest ustawiona na ${product}.`,
  nothing: 'Linia nie jest jeszcze ustawiona.',
  shiftStart: 'Początek zmiany',
  splice: 'Checklista łączenia',
  exchange: 'Checklista wymiany',
  next: 'Co będzie następne?',
  plan: 'Zaplanuj to',
  same: 'teraz ustawiony',
  keep: (count) =>
    byNumber(count, { one: `${count} zostaje`, few: `${count} zostają`, other: `${count} zostaje` }),
  move: (count) => `${count} do przestawienia`,
  takeOut: (count) => `${count} do wyjęcia`,
  putIn: (count) => `${count} do włożenia`,
  parked: (count) => `${count} trzeba odstawić`,
  cannotFit: 'Ten setup nie pasuje do tej linii',
  faults: {
    width: (slot, part) => `${part} na ${slot}: arkusz nie podaje szerokości podajnika, której można użyć.`,
    'slot-twice': (slot, part) => `Setup używa ${slot} dwa razy, raz dla ${part}.`,
    overlap: (slot, part, neighbour) => `${part} na ${slot} i ${neighbour} zachodzą na siebie.`,
    keptFor: (slot, part, lane) => `${slot} musi zachować ${part} dla ${lane}.`,
    'slot-unknown': (slot, part) => `Ta linia nie ma slotu ${slot} dla ${part}.`,
    pastEnd: (slot, part, last) =>
      `Nie ma ${slot} dla ${part}: jego bank ma ${byNumber(last, { one: `${last} slot`, few: `${last} sloty`, other: `${last} slotów` })}.`,
    over: (slot, part, positions) =>
      `${part} na ${slot} wystaje o ${byNumber(positions, { one: `${positions} pozycję`, few: `${positions} pozycje`, other: `${positions} pozycji` })} poza koniec banku.`,
  },
  byFeeder: (feeder, positions) =>
    `Podajnik ${feeder} ma na liście ${byNumber(positions, { one: `${positions} pozycję`, few: `${positions} pozycje`, other: `${positions} pozycji` })}.`,
  moreFaults: (count) => `i jeszcze ${count}`,
  twice: (part, slots) => `${part} idzie na ${slots}. Nie pomiń żadnego.`,
  fromTo: (from, to) => `${from} → ${to}`,
  preparing: 'Linia pracuje',
  standing: 'Linia została zatrzymana',
  lineRuns:
    'Linia pracuje: nie sięgaj do środka. Te przestawienia czekają, aż ostatni panel będzie gotowy, a maszyna się zatrzyma.',
  since: (span) => `od ${span}`,
  lastPanel: 'Ostatni panel jest gotowy',
  lastPanelTitle: 'Czy ostatni dobry panel jest gotowy?',
  lastPanelText: (done, wanted) =>
    `Policzono ${done} z ${plural(wanted, `${wanted} panelu`, `${wanted} paneli`)}. Seria kończy się tutaj, a linia zostaje ustawiona na następny produkt.`,
  drop: 'Anuluj przezbrojenie',
  dropNot: 'Zostaw przezbrojenie',
  dropTitle: 'Anulować to przezbrojenie?',
  dropText: 'Załadowane rolki zostają załadowane. Odhaczone kroki zostają w dzienniku.',
  tabs: {
    feeders: 'Przestawienia',
    kit: 'Przygotuj',
    checklist: 'Checklista',
    first: 'Pierwszy panel',
    times: 'Czasy',
  },
  tabWaits: 'Po zatrzymaniu',
  stepsLeft: (count) =>
    byNumber(count, {
      one: `Zostało ${count} przestawienie`,
      few: `Zostały ${count} przestawienia`,
      other: `Zostało ${count} przestawień`,
    }),
  stepsWait: (count) =>
    byNumber(count, {
      one: `${count} przestawienie czeka na zatrzymanie`,
      few: `${count} przestawienia czekają na zatrzymanie`,
      other: `${count} przestawień czeka na zatrzymanie`,
    }),
  stepsDone: 'Nie ma już przestawień',
  stepsDoneNext: 'Dalej: skończ checklistę, sprawdź pierwszy panel, potem zwolnij serię.',
  stepsNone: 'Następny produkt nie wymaga przestawień.',
  slotsRight: (right, all) => `Sloty w porządku: ${right} z ${all}`,
  whys: {
    held: 'czeka na lidera',
    'wrong-feeder': 'wymaga innego podajnika',
    blocked: 'ta rolka jest zablokowana',
  },
  acts: {
    takeOut: (part) => `Wyjmij ${part}`,
    park: (part) => `Odstaw ${part} poza maszynę`,
    move: (part, to) => `Przestaw ${part} na ${to}`,
    unpark: (part, to) => `Wstaw odstawiony ${part} na ${to}`,
    putIn: (part) => `Włóż ${part}`,
  },
  onLane: {
    off: (part) => `Zdejmij rolkę ${part} z tego toru podajnika; podajnik zostaje`,
    on: (part) => `Załóż ${part} na ten tor podajnika; podajnik zostaje`,
  },
  scanSlot: 'Zeskanuj slot, potem rolkę. Przestawienie zostanie odhaczone.',
  doneNow: 'Zrobione w tym przezbrojeniu',
  taken: (slot) => `${slot}: wyjęto.`,
  unload: 'Zdejmij',
  load: 'Załaduj',
  release: 'Zwolnij serię',
  releaseTitle: 'Zwolnij serię',
  releaseReason: 'Dlaczego mimo to zwolnić?',
  released: 'Zwolniono. Zacznij serię na ekranie linii.',
  caution:
    'Zatrzymaj maszynę i poczekaj, aż nic się nie rusza, zanim sięgniesz do środka. Ostrza tną. Lokalne zasady mają pierwszeństwo.',
};
