import { type SheetField, sheetFieldNames } from '../../../../shared/sheet/fields.ts';
import type { SheetProblem, SheetProblemCode } from '../../../../shared/sheet/problems.ts';
import type { words as english } from '../en/sheet-problems.ts';
import type { Sentences } from '../words.ts';

type Facts = SheetProblem['facts'];

const fieldsPl: Readonly<Record<SheetField, string>> = {
  slot: 'slot',
  machine: 'maszyna',
  bank: 'bank',
  number: 'numer slotu',
  part: 'komponent',
  perPanel: 'ułożenia na panel',
  tapeWidth: 'szerokość taśmy',
  pitch: 'skok',
  sharing: 'podział między sloty',
  alternates: 'zamienniki',
  supplierParts: 'indeksy dostawcy',
  description: 'opis',
  package: 'obudowa',
  pins: 'piny',
  bodySize: 'rozmiar korpusu',
  bodyThickness: 'grubość korpusu',
  msl: 'poziom MSL',
  polarity: 'polaryzacja',
  feederType: 'typ podajnika',
  drive: 'napęd podajnika',
  pocket: 'głębokość kieszeni',
  critical: 'krytyczny',
  positions: 'zajęte pozycje',
  side: 'strona',
  designators: 'oznaczenia',
  fitted: 'montowany',
  notFitted: 'niemontowany',
  note: 'notatka',
};

const namesByEnglish = new Map(
  // The keys of a table by field are its fields.
  (Object.keys(sheetFieldNames) as SheetField[]).map((field) => [sheetFieldNames[field], fieldsPl[field]]),
);

/** Facts that name a field carry its English name. */
function field(name: string | number | undefined): string {
  return namesByEnglish.get(String(name)) ?? String(name);
}

/** A side as the file's reader names it. */
function sidePl(side: string | number | undefined): string {
  return side === 'bottom' ? 'dół' : 'góra';
}

const pl: Readonly<Record<SheetProblemCode, (facts: Facts) => string>> = {
  encodingGuessed: () =>
    'Plik nie jest w UTF-8, więc odczytano go jako Windows-1252. Sprawdź litery ze znakami albo zapisz go jako UTF-8.',
  quoteBroken: (f) =>
    `Cudzysłów otwarty w wierszu ${f['row']} nie jest zamknięty. Dalszy ciąg może być w złej komórce. Popraw ten wiersz.`,
  rowTooLong: (f) =>
    `Komórek w wierszu: ${f['found']}, w nagłówku: ${f['wanted']}. Komórka chyba zawiera separator: ujmij ją w cudzysłów.`,
  rowUnreadable: (f) =>
    `Komórek w wierszu: ${f['found']}, w nagłówku: ${f['wanted']}, i nie pasują do siebie. Popraw wiersz.`,
  noRows: () => 'Pod nagłówkiem nie ma wiersza. Wyeksportuj arkusz ponownie z jego wierszami.',
  moreProblems: (f) => `Niewymienionych problemów: ${f['count']}. Popraw te, potem wczytaj arkusz ponownie.`,
  moreErrors: (f) =>
    `Niewymienionych problemów: ${f['count']}, część to błędy. Popraw te, potem wczytaj arkusz ponownie.`,
  columnMissing: (f) =>
    `Nie ma kolumny „${field(f['wanted'])}” wśród: ${f['headers']}. Wybierz kolumnę ręcznie.`,
  columnAbsent: (f) =>
    `Nie ma kolumny „${field(f['wanted'])}” wśród: ${f['headers']}. Wybierz kolumnę ręcznie albo idź dalej bez niej.`,
  columnNotFound: (f) =>
    `Ten arkusz nie ma kolumny „${f['wanted']}” (${field(f['field'])}). Ma: ${f['headers']}. Wybierz kolumnę ponownie.`,
  columnUnknown: (f) =>
    `Kolumna „${f['found']}” nie jest używana. Jeśli setup jej potrzebuje, wybierz ręcznie, co zawiera.`,
  columnTwice: (f) =>
    `Kolumna „${f['found']}” też wygląda na: ${field(f['field'])}; używana jest „${f['used']}”. Jeśli ma to być ta druga, wybierz ją ręcznie.`,
  usagePerBoard: (f) =>
    `Kolumna „${f['found']}” chyba liczy na płytkę, a jest brana jako na panel. Jeśli panel ma kilka płytek, pomnóż ją.`,
  slotMissing: (f) => `Slot jest pusty, ale wiersz podaje komponent ${f['part']}. Wpisz slot.`,
  textTooLong: (f) => `${field(f['field'])}: „${f['found']}…” ma więcej znaków niż ${f['most']}. Skróć.`,
  textCut: (f) => `Tekst ma więcej znaków niż ${f['most']}. Reszta jest pominięta: skróć go.`,
  slotUnclear: (f) =>
    `Slot „${f['found']}” nie jest zapisany jak M1-F-014, więc nie można sprawdzić jego sąsiadów. Jest brany, jak zapisano.`,
  slotNumberUnreadable: (f) =>
    `Numer slotu „${f['found']}” nie jest liczbą całkowitą od 1 w górę. Popraw go.`,
  partMissing: (f) => `Slot ${f['slot']} nie ma indeksu, ale inne komórki są wypełnione. Uzupełnij go.`,
  usageUnreadable: (f) => `Ułożenia na panel „${f['found']}” to nie liczba całkowita od 0 w górę. Popraw.`,
  usageMissing: () =>
    'Brak ułożeń na panel, więc nikt nie wie, kiedy skończy się ten slot. Uzupełnij albo dodaj plik współrzędnych.',
  usageZero: () =>
    'Ułożenia na panel to 0: slot jest załadowany, ale nieużywany. Jeśli tak, oznacz wiersz jako niemontowany.',
  usageFromDesignators: (f) =>
    `Brak ułożeń na panel, więc oznaczenia (${f['count']}) liczą się jako ${f['count']}. Sprawdź, czy obejmują cały panel.`,
  designatorsDisagree: (f) =>
    `Oznaczeń: ${f['found']}, ale ułożeń na panel: ${f['wanted']}. Sprawdź, co jest dobre.`,
  widthUnreadable: (f) => `Szerokość taśmy „${f['found']}” nie jest liczbą mm. Napisz 8 lub 8 mm.`,
  widthUnknown: (f) => `${f['found']} mm nie jest szerokością taśmy z EIA-481 (${f['wanted']} mm). Popraw.`,
  widthMissing: () => 'Brak szerokości taśmy, więc nikt nie sprawdzi, czy podajnik pasuje. Uzupełnij ją.',
  notTape: (f) => `„${f['found']}” to nie taśma, więc ten slot nie ma długości taśmy ani godzin łączenia.`,
  pitchUnreadable: (f) => `Skok „${f['found']}” nie jest liczbą mm większą od 0. Napisz 4 lub 4 mm.`,
  pitchUnusual: (f) =>
    `EIA-481 nie podaje skoku ${f['found']} mm dla taśmy ${f['width']} mm, tylko ${f['wanted']} mm. Sprawdź; nieliczne taśmy się różnią.`,
  pitchMissing: () => 'Brak skoku, więc długości taśmy nie da się przeliczyć na sztuki. Uzupełnij go.',
  positionsUnreadable: (f) => `Zajęte pozycje „${f['found']}” to nie liczba całkowita od 1 do 60. Popraw.`,
  pinsUnreadable: (f) =>
    `Liczba pinów „${f['found']}” nie jest liczbą całkowitą 1 lub większą; zostaje pominięta. Popraw ją.`,
  bodySizeUnreadable: (f) =>
    `Rozmiar korpusu „${f['found']}” to nie długość i szerokość w mm; zostaje pominięty. Napisz jak 17 x 17.`,
  thicknessUnreadable: (f) =>
    `Grubość korpusu „${f['found']}” nie jest liczbą mm większą od 0, więc zostaje pominięta. Popraw ją.`,
  pocketUnreadable: (f) =>
    `Głębokość kieszeni „${f['found']}” nie jest liczbą mm większą od 0; zostaje pominięta. Popraw ją.`,
  mslUnknown: (f) =>
    `„${f['found']}” to nie poziom MSL (1, 2, 2a, 3, 4, 5, 5a, 6), więc zostaje pominięty. Popraw go.`,
  sharingUnknown: (f) =>
    `„${f['found']}” nie mówi, jak sloty dzielą ten komponent. Napisz „split”, jeśli każdy układa swoją część, „in turn”, jeśli jeden podaje, aż będzie pusty.`,
  turnUsageDiffers: (f) =>
    `Komponent ${f['part']} jest używany po kolei: podający slot układa wszystkie ${f['wanted']}. Ten wiersz mówi ${f['found']}. Wpisz tę samą liczbę w każdym wierszu.`,
  sideUnknown: (f) => `„${f['found']}” to ani góra, ani dół, więc strona zostaje pominięta. Popraw ją.`,
  flagUnreadable: (f) =>
    `„${f['found']}” to ani tak, ani nie; liczy się jako ${f['taken'] === 'yes' ? 'tak' : 'nie'}. Popraw.`,
  alternateIsPart: (f) => `Komponent ${f['part']} jest tu własnym zamiennikiem. To zostaje pominięte.`,
  slotTwice: (f) =>
    `Slot ${f['slot']} jest już w wierszu ${f['first']}, z komponentem ${f['part']}. Slot przyjmuje jeden komponent: popraw jeden z wierszy.`,
  noRoom: (f) =>
    `Podajnik na slocie ${f['slot']} zajmuje ${f['wanted']} poz. Slot ${f['next']} (wiersz ${f['nextRow']}) jest tylko ${f['found']} poz. dalej. Przestaw jeden z nich.`,
  littleRoom: (f) =>
    `Podajnik ${f['width']} mm na slocie ${f['slot']} zajmuje zwykle ${f['wanted']} poz. Slot ${f['next']} (wiersz ${f['nextRow']}) jest tylko ${f['found']} poz. dalej. Sprawdź, czy się mieści, albo wpisz zajęte pozycje.`,
  noApprovedReels: (f) =>
    `Komponent ${f['part']} nie ma zatwierdzonego indeksu dostawcy, więc przechodzą tylko etykiety z indeksem własnym. Uzupełnij go.`,
  partDiffers: (f) =>
    `Komponent ${f['part']}: ${field(f['field'])} to tutaj ${f['found']}, a w wierszu ${f['first']}: ${f['wanted']}. Sprawdź, co jest dobre.`,
  usageDisagrees: (f) =>
    `Komponent ${f['part']}: ułożeń na panel w arkuszu ${f['found']}, w pliku współrzędnych ${f['wanted']}. Sprawdź, co jest dobre.`,
  usageRatio: (f) =>
    `Arkusz ma ${f['ratio']} razy tyle ułożeń co plik współrzędnych dla każdego komponentu. Plik zawiera chyba jedną płytkę z ${f['ratio']}: podaj, ile płytek ma panel.`,
  usageSplitUnknown: (f) =>
    `Komponent ${f['part']}: ułożeń jest ${f['wanted']}, slotów ${f['found']}, a plik współrzędnych nie mówi, ile na każdy. Wpisz ułożenia na panel.`,
  partNotPlaced: (f) =>
    `Komponent ${f['part']} ma slot, ale nie ma go w pliku współrzędnych. Sprawdź indeks w obu.`,
  partWithoutSlot: (f) =>
    `Komponent ${f['part']} jest układany ${f['found']}× (plik współrzędnych, od wiersza ${f['first']}), ale nie ma slotu. Daj mu slot albo oznacz jako niemontowany.`,
  placementPartMissing: (f) =>
    `Oznaczenie ${f['designator']} nie ma indeksu, więc zostaje pominięte. Uzupełnij go.`,
  placementTwice: (f) =>
    `Oznaczenie ${f['designator']} jest w tym samym miejscu co w wierszu ${f['first']}. Liczy się raz.`,
  placementSideMissing: () => 'Plik współrzędnych nie ma kolumny strony. Każde ułożenie liczy się jako góra.',
  placementSideUnknown: (f) =>
    `„${f['found']}” to ani góra, ani dół, więc ułożenie liczy się jako góra. Popraw.`,
  headerGuessed: (f) =>
    `Plik nie ma znanego nagłówka. Sądząc po zawartości, kolumny to: ${f['wanted']}. Sprawdź je.`,
  columnByLook: (f) =>
    `Kolumna „${f['found']}” jest po zawartości brana jako: ${field(f['field'])}. Sprawdź ją.`,
  genericParts: (f) =>
    `Kolumna „${f['found']}” ma jedną nazwę dla kilku wartości, więc zawiera rodzaje, nie indeksy. Liczą się wartości. Wybierz ręcznie kolumnę indeksów, jeśli jest.`,
  partsAreDesignators: (f) =>
    `Kolumna „${f['found']}” zawiera oznaczenia, nie indeksy. Wybierz ręcznie kolumnę indeksów.`,
  sheetAdded: (f) =>
    `Wiersze arkusza „${f['found']}” mają ten sam nagłówek i też są czytane; liczą się dalej od wiersza ${f['first']}.`,
  designatorTwice: (f) =>
    `Oznaczenie ${f['designator']} jest już w wierszu ${f['first']}, w innym miejscu. Liczy się raz. Nadaj każdemu komponentowi płytki własną nazwę.`,
  designatorSeldom: (f) =>
    `Oznaczenie ${f['designator']} jest w pliku razy: ${f['found']}, większość innych: ${f['wanted']}. Sprawdź, czy ma je każda płytka panelu.`,
  placementSideFromName: (f) =>
    `Nic w pliku nie podaje strony. Po nazwie „${f['found']}” wszystkie ułożenia liczą się jako ${sidePl(f['side'])}.`,
  throughHole: (f) =>
    `Oznaczenie ${f['designator']} (${f['part']}) jest przewlekane, więc nie liczy się jako układane.`,
  oddPlaced: (f) =>
    `Oznaczenie ${f['designator']} wygląda na punkt testowy lub otwór, ale ma komponent ${f['part']}. Liczy się jako układane. Jeśli nie jest, oznacz je jako niemontowane.`,
  valueInPackages: (f) =>
    `Wartość ${f['part']} jest tu w obudowie ${f['found']}, a w wierszu ${f['first']} w ${f['wanted']}. Liczą się jako dwa komponenty. Nadaj im indeksy.`,
  partInPackages: (f) =>
    `Komponent ${f['part']} jest tu w obudowie ${f['found']}, a w wierszu ${f['first']} w ${f['wanted']}. Sprawdź indeks.`,
  valueWithoutPackage: (f) =>
    `Oznaczenie ${f['designator']} ma wartość ${f['part']}, ale bez obudowy i indeksu. Nikt nie powie, który to komponent: uzupełnij je.`,
  xmlBroken: (f) =>
    `XML jest tu uszkodzony: ${f['found']}. Dalszy ciąg nie jest czytany. Wyeksportuj plik ponownie.`,
  noComponents: () => 'Plik nie zawiera komponentów. Wyeksportuj go z komponentami i ich miejscami.',
  panelOfFile: (f) =>
    `Panel w pliku ma płytek: ${f['found']}; liczona jest jedna. Podaj, ile płytek ma panel.`,
  billRowWithoutDesignators: (f) =>
    `Komponent ${f['part']} nie podaje oznaczeń, więc z tego wiersza nic się nie układa. Uzupełnij je, jeśli jest układany.`,
  billPartMissing: (f) => `Wiersz z ${f['designator']} nie ma indeksu ani wartości. Uzupełnij jedno z nich.`,
  billPartByOther: (f) =>
    `Wiersz nie ma indeksu, więc jego komponent nazywa się ${f['part']}. Uzupełnij indeks.`,
  secondTable: (f) => `Zaczyna się tu inna tabela (${f['headers']}). Nie jest czytana.`,
  boardsInFile: (f) =>
    `Plik współrzędnych ma już płytek: ${f['found']}, więc płytki (${f['wanted']}) nie są mnożone ponownie. Sprawdź, ile płytek ma panel.`,
  quantityDiffers: (f) =>
    `Ilość to ${f['wanted']}, ale oznaczeń w wierszu jest ${f['found']}. Sprawdź, co jest dobre.`,
  quantityUnreadable: (f) => `Ilość „${f['found']}” nie jest liczbą. Liczą się oznaczenia. Popraw ją.`,
  quantityRatio: (f) =>
    `W każdym wierszu ilość to ${f['ratio']} razy liczba oznaczeń. BOM chyba liczy płytek: ${f['ratio']}.`,
  billDesignatorTwice: (f) =>
    `Oznaczenie ${f['designator']} jest już w wierszu ${f['first']}, z tym samym komponentem. Liczy się raz.`,
  billDesignatorDiffers: (f) =>
    `Oznaczenie ${f['designator']} jest już w wierszu ${f['first']}, z komponentem ${f['wanted']}; tutaj to ${f['found']}. Miejsce przyjmuje jeden komponent: popraw jeden z wierszy.`,
  variantOpen: (f) =>
    `Warianty BOM-u różnią się tutaj: ${f['wanted']}. Liczy się jako montowany. Podaj, który wariant jest budowany, albo dodaj BOM tego wariantu.`,
  variantNotFound: (f) => `BOM nie ma wariantu „${f['found']}”. Ma: ${f['wanted']}.`,
  partDescribedTwice: (f) =>
    `Komponent ${f['part']} ma tu wartość ${f['found']}, a w wierszu ${f['first']}: ${f['wanted']}. Sprawdź indeks.`,
  markInRemark: (f) =>
    `Według uwagi „${f['found']}” nic z tego wiersza nie jest montowane. Jeśli dotyczy to tylko niektórych oznaczeń, wymień je tam.`,
  blankNotFitted: (f) =>
    `Kolumna „${f['found']}” ma w niektórych wierszach znak, a pustych jest ${f['count']}. Puste liczą się jako niemontowane.`,
  designatorNotInBill: (f) =>
    `Oznaczenie ${f['designator']} jest w pliku współrzędnych, ale w żadnym wierszu BOM-u, więc nie jest liczone. Dodaj je do BOM-u albo oznacz jako niemontowane.`,
  designatorNotPlaced: (f) =>
    `Oznaczenie ${f['designator']} (komponent ${f['part']}) jest w BOM-ie, ale nie w pliku współrzędnych, więc nie jest liczone.`,
  partOfFileDiffers: (f) =>
    `Oznaczenie ${f['designator']}: komponent ${f['found']} w pliku współrzędnych, ${f['wanted']} w BOM-ie (wiersz ${f['first']}). Liczy się BOM. Sprawdź, co jest dobre.`,
  valueOfFileDiffers: (f) =>
    `Oznaczenie ${f['designator']}: wartość ${f['found']} w pliku współrzędnych, ${f['wanted']} w BOM-ie (wiersz ${f['first']}). Liczy się BOM. Sprawdź, co jest dobre.`,
  sideOfFileDiffers: (f) =>
    `Oznaczenie ${f['designator']} w pliku współrzędnych: ${sidePl(f['found'])}; BOM podaje: ${sidePl(f['wanted'])}. Liczy się plik współrzędnych.`,
  sheetDesignatorNotPlaced: (f) =>
    `Oznaczenie ${f['designator']} jest w tym wierszu, ale nie w pliku współrzędnych. Sprawdź w obu.`,
  designatorWithoutSlot: (f) =>
    `Oznaczenia ${f['designator']} (plik współrzędnych, wiersz ${f['first']}, komponent ${f['part']}) nie ma w żadnym wierszu arkusza. Dodaj je do wiersza jego slotu albo oznacz jako niemontowane.`,
  sheetPartDiffers: (f) =>
    `Oznaczenie ${f['designator']}: komponent ${f['found']} w tym wierszu, ${f['wanted']} w pliku współrzędnych lub BOM-ie. Sprawdź, co jest dobre.`,
  sheetDesignatorTwice: (f) =>
    `Oznaczenie ${f['designator']} jest już w wierszu ${f['first']}. Liczy się tam.`,
  listPartEmpty: () => 'Wiersz nie ma indeksu, a inne komórki są wypełnione. Uzupełnij go.',
  listPackingUnknown: (f) =>
    `„${f['found']}” to nie taśma, odcinek taśmy, tacka, tuba ani luzem, więc jest pominięte. Popraw to.`,
  listAgeUnreadable: (f) =>
    `Limit wieku „${f['found']}” nie jest liczbą miesięcy, więc jest pominięty. Wpisz 24 albo 2 lata.`,
  listPriceUnreadable: (f) =>
    `Cena „${f['found']}” nie jest liczbą większą od 0 i zostaje pominięta. Wpisz 0.012 lub 0.012 EUR.`,
  listPriceUnclear: (f) =>
    `„${f['found']}” nie mówi, ilu sztuk dotyczy cena. Wpisz Price each lub Price per 1000.`,
  listToleranceUnclear: (f) =>
    `„${f['found']}” ma same liczby mniejsze od 1: ułamki czy procenty? Są pominięte. Nazwij kolumnę Tolerance % albo wpisz 1 % w komórkach.`,
  listReelEmpty: () => 'Wiersz nie ma ID rolki, więc jest pominięty. Uzupełnij go.',
  listReelTwice: (f) =>
    `Rolka ${f['found']} jest już w wierszu ${f['first']}. Liczy się jej ostatnia liczba.`,
  listCountUnreadable: (f) =>
    `Liczba „${f['found']}” nie jest całkowitą liczbą sztuk, więc wiersz jest pominięty. Popraw ją.`,
};

export const words: Sentences<typeof english> = { say: (problem) => pl[problem.code](problem.facts) };
