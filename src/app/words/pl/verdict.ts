import type { words as english } from '../en/verdict.ts';
import { type ReasonWords, restsOn } from '../reason-words.ts';
import { formatCount, type Sentences } from '../words.ts';
import { moistureReasonsPl, tablePl } from './verdict-moisture.ts';
import { plantReasonsPl } from './verdict-plant.ts';

const reasonsPl: ReasonWords = {
  ...moistureReasonsPl,
  ...plantReasonsPl,
  'unknown-slot': {
    title: 'Nie ma takiego slotu',
    say: (f) => `Ta linia nie ma slotu ${f['slot']}.`,
    act: 'Zeskanuj kod slotu przy maszynie.',
  },
  'slot-not-in-setup': {
    title: 'Slot nieużywany',
    say: (f) => `Ten setup niczego nie wymaga na ${f['slot']}.`,
    act: 'Zostaw go pusty. Zeskanuj właściwy slot.',
  },
  'slot-loaded': {
    title: 'Slot już załadowany',
    say: (f) => `${f['slot']} ma już ${f['part']}${f['reel'] ? ` (rolka ${f['reel']})` : ''}.`,
    act: 'Najpierw zdejmij tamtą rolkę.',
  },
  'slot-empty': {
    title: 'Slot jest pusty',
    say: (f) => `Na ${f['slot']} nic nie załadowano.`,
    act: 'Zamiast tego załaduj tam rolkę.',
  },
  'no-part': {
    title: 'Brak indeksu',
    say: (f) => `Żaden kod na tej etykiecie nie mówi, jaki to komponent. Oczekiwany: ${f['wanted']}.`,
    act: 'Zeskanuj całą etykietę albo wpisz wydrukowany indeks.',
  },
  'wrong-part': {
    title: 'Zły komponent',
    say: (f) =>
      f['goesTo']
        ? `Ta rolka idzie na ${f['goesTo']}.`
        : 'Żaden slot tego setupu nie potrzebuje tego komponentu.',
    act: 'Odłóż ją na miejsce. Zeskanuj inną rolkę.',
  },
  'wrong-for-lane': {
    title: 'Zła dla drugiego toru',
    say: (f) => `${f['lane']} pobiera ${f['wanted']} z tego slotu.`,
    act: 'Odłóż ją. Zeskanuj rolkę, która pasuje do obu torów.',
  },
  'kept-for-lane': {
    title: 'Zostaje dla drugiego toru',
    say: (f) => `${f['slot']} ma ${f['part']} dla: ${f['lane']}.`,
    act: 'Zostaw tam tę rolkę. Aby połączyć następną, najpierw wybierz drugi tor.',
  },
  'not-in-setup': {
    title: 'Spoza tego setupu',
    say: (f) =>
      f['slot']
        ? `Żaden slot nie potrzebuje tej rolki. Najbliższy to ${f['slot']}.`
        : 'Żaden slot nie potrzebuje tej rolki.',
    act: 'Zostaw ją na wózku albo oddaj do magazynu.',
  },
  'bake-short': {
    title: 'Wygrzewana za krótko',
    say: (f) =>
      `Wygrzewana ${f['hours']} h${f['celsius'] ? ` w ${f['celsius']} °C` : ''}. ${f['wanted'] ? `Tabela wymaga tam ${f['wanted']} h` : 'Tabela nie ma na to wiersza'}, więc czas na hali nie jest przywrócony: zostało ${f['leftSeconds']}. (${restsOn(f, tablePl)}Nieznana obudowa liczy się jako najgorsza.)`,
    act: 'Musi zdecydować lider.',
  },
  'same-label': {
    title: 'Druga rolka z taką samą etykietą',
    say: () => 'Potwierdził to człowiek: etykieta zgadza się z rolką, która tu pracuje.',
    act: '',
  },
  'reel-elsewhere': {
    title: 'Rolka jest na innym slocie',
    say: (f) => `Według dziennika rolka ${f['reel']} jest na ${f['slot']}.`,
    act: 'Jeśli nie ma jej na tym slocie, najpierw zdejmij ją tam.',
  },
  'reel-on-cart': {
    title: 'Rolka jest na wózku',
    say: (f) => `Według dziennika rolka ${f['reel']} jest na wózku ${f['cart']}, gotowa na ${f['slot']}.`,
    act: 'Weź inną rolkę albo najpierw zdejmij ją z wózka w Przygotuj.',
  },
  'slot-on-cart': {
    title: 'Slot jest gotowy na wózku',
    say: (f) => `Wózek ${f['cart']} ma już rolkę gotową na ${f['slot']}.`,
    act: 'Zeskanuj inny slot albo najpierw zdejmij to miejsce z wózka.',
  },
  'reel-here': {
    title: 'Rolka już tu jest',
    say: (f) => `Rolka ${f['reel']} jest już na ${f['slot']}.`,
    act: 'Zeskanuj następną rolkę.',
  },
  'reel-blocked': {
    title: 'Rolka jest zablokowana',
    say: (f) => `Zablokowana: ${f['reason']}.`,
    act: 'Odłóż ją. Sprowadź lidera.',
  },
  'feeder-elsewhere': {
    title: 'Podajnik jest na innym slocie',
    say: (f) => `Według dziennika podajnik ${f['feeder']} jest na ${f['slot']}.`,
    act: 'Sprawdź kod podajnika albo najpierw zdejmij go tam.',
  },
  'feeder-aside': {
    title: 'Podajnik odłożony',
    say: (f) => `Podajnika ${f['feeder']} nie wolno używać: ${f['why']}.`,
    act: 'Weź inny podajnik. Po konserwacji zapisz ją przy podajniku.',
  },
  'feeder-lanes': {
    title: 'Podajnik nie ma wolnego toru',
    say: (f) => `Tory podajnika ${f['feeder']}: ${f['lanes']}. Według dziennika jest już na ${f['slots']}.`,
    act: 'Sprawdź kod podajnika albo popraw liczbę torów jego typu.',
  },
  'feeder-on-cart': {
    title: 'Podajnik jest na wózku',
    say: (f) =>
      `Według dziennika podajnik ${f['feeder']} jest na wózku ${f['cart']}, gotowy na ${f['slot']}.`,
    act: 'Sprawdź kod podajnika albo najpierw zdejmij go z wózka w Przygotuj.',
  },
  'feeder-width': {
    title: 'Podajnik nie pasuje do taśmy',
    say: (f) => `Podajnik ${f['feeder']} jest na taśmę ${f['found']} mm; ten slot wymaga ${f['wanted']} mm.`,
    act: 'Weź podajnik o właściwej szerokości.',
  },
  'feeder-pitch': {
    title: 'Skok podajnika nie pasuje',
    say: (f) => `Podajnik ${f['feeder']} przesuwa o ${f['found']} mm; ta taśma wymaga ${f['wanted']} mm.`,
    act: 'Ustaw skok albo weź inny podajnik. Zły skok niepostrzeżenie wyrzuca komponenty.',
  },
  'floor-life-over': {
    title: 'Czas na hali minął',
    say: () => 'Ta rolka była za długo poza suchą torebką.',
    act: 'Nie używaj jej. Oddaj do wygrzania według swoich zasad.',
  },
  'not-the-loaded-reel': {
    title: 'To nie rolka z dziennika',
    say: (f) => `Według dziennika ${f['loaded'] || 'inna rolka'} jest na ${f['slot']}.`,
    act: 'Ustal, kto to zmienił. Potem zdejmij i załaduj ponownie.',
  },
  'part-contradicts': {
    title: 'Etykieta sama sobie przeczy',
    say: (f) => `Podaje ${f['part']}, ale ${f['supplierPart']} jest zatwierdzony dla ${f['approvedFor']}.`,
    act: 'Musi zdecydować lider.',
  },
  'alternate-not-approved': {
    title: 'Zamiennik tu niezatwierdzony',
    say: (f) => `${f['found']} może zastąpić ${f['wanted']} w ${f['approvedFor']}, ale nie w tym produkcie.`,
    act: 'Musi zdecydować lider.',
  },
  'supplier-part-not-approved': {
    title: 'Nieznany indeks dostawcy',
    say: (f) => `${f['supplierPart']} nie ma na liście zatwierdzonych. Oczekiwany: ${f['wanted']}.`,
    act: 'Musi zdecydować lider.',
  },
  'no-quantity': {
    title: 'Brak ilości',
    say: () => 'Etykieta nie podaje ilości, więc koniec rolki jest nieznany.',
    act: 'Wpisz ilość albo niech zdecyduje lider.',
  },
  expired: {
    title: 'Po terminie',
    say: (f) => `Zużyć do ${f['expires']}.`,
    act: 'Musi zdecydować lider.',
  },
  'by-alternate': {
    title: 'Zatwierdzony zamiennik',
    say: (f) => `${f['found']} to zatwierdzony zamiennik ${f['wanted']}.`,
    act: '',
  },
  'by-supplier-part': {
    title: 'Po indeksie dostawcy',
    say: (f) => `${f['supplierPart']} jest zatwierdzony dla ${f['part']}.`,
    act: '',
  },
  'by-comparison': {
    title: 'Uznano za ten sam indeks',
    say: (f) => `${f['found']} liczy się jako ${f['wanted']} według reguły zakładu: ${f['rule']}.`,
    act: '',
  },
  'mixed-lots': {
    title: 'Inna partia',
    say: (f) => `Partia zmienia się z ${f['from']} na ${f['to']}.`,
    act: '',
  },
  'quantity-corrected': {
    title: 'Nie ilość z etykiety',
    say: (f) =>
      f['label'] === ''
        ? `Etykieta jej nie podaje; dziennik używa ${f['quantity']}.`
        : `Etykieta podaje ${f['label']}; dziennik używa ${f['quantity']}.`,
    act: '',
  },
};

export const words: Sentences<typeof english> = {
  accepted: {
    exchange: 'Właściwe do wymiany',
    refill: 'Właściwe do dosypania',
    load: 'Właściwa rolka',
    splice: 'Właściwa rolka do łączenia',
    sweep: 'Widziana',
  },
  refused: 'Odrzucona',
  held: 'Wstrzymana: czeka na lidera',
  wants: (slot) => `${slot} wymaga`,
  says: 'rolka podaje',
  also: 'Także',
  goOn: 'Dalej',
  nextIs: (slot) => `Następny: ${slot}`,
  another: 'Zeskanuj inną rolkę',
  callLead: 'Niech zdecyduje lider',
  typeQuantity: 'Wpisz ilość',
  takeBack: 'Cofnij',
  parts: (count) => `${formatCount(count)} szt.`,
  lot: (lot) => `partia ${lot}`,
  reel: (reel) => `rolka ${reel}`,
  practice: 'skan ćwiczebny',
  allLoaded: 'Każdy slot jest załadowany.',
  spliceCaution:
    'Łącz taśmy, gdy maszyna stoi albo podajnik jest poza strefą chronioną, jak mówi jego instrukcja. Tnij z dala od palców. Lokalne zasady mają pierwszeństwo.',
  loadCaution:
    'Zatrzymaj maszynę i poczekaj na głowicę, zanim sięgniesz do środka. Lokalne zasady mają pierwszeństwo.',
  reasons: reasonsPl,
};
