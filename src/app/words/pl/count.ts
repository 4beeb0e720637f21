import type { words as english } from '../en/count.ts';
import { byNumber, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: (what) => `Ile sztuk: ${what}`,
  ways: { typed: 'Wpisane', machine: 'Licznik lub maszyna', weighed: 'Zważone', measured: 'Zmierzone' },
  wayHelp: {
    typed: 'Liczba z etykiety albo twoje liczenie.',
    machine: 'To, co pokazuje licznik rolek albo maszyna.',
    weighed: 'Zważ tę rolkę. Waga pełnej i pustej rolki tego komponentu jest zapisywana.',
    measured: 'Mierz średnicę nawiniętej taśmy, nie kołnierza.',
  },
  fields: {
    parts: 'Sztuki',
    massG: 'Ta rolka, g',
    emptyG: 'Pusta rolka, g',
    fullMassG: 'Pełna rolka, g',
    outerMm: 'Nawinięta taśma D, mm',
    hubMm: 'Piasta d, mm',
    fullOuterMm: 'D pełnej rolki, mm',
    thicknessMm: 'lub grubość taśmy, mm',
    pitchMm: 'Skok, mm',
    fullParts: 'Sztuki na pełnej rolce',
  },
  wrong: {
    missing: 'jeszcze brakuje',
    notNumber: 'to nie liczba',
    tooSmall: 'za mało wobec innych liczb',
    tooLarge: 'więcej niż pełna rolka',
  },
  picture:
    'Rolka z boku: D to średnica nawiniętej taśmy, d średnica piasty. Kołnierz jest szerszy niż taśma.',
  flange: 'kołnierz',
  wound: 'nawinięta taśma',
  hub: 'piasta',
  remembered: (parts) => `Z pełnej rolki ${parts} szt., zmierzonej wcześniej.`,
  result: (parts, sd) => `${parts} ± ${sd} szt.`,
  before: (parts, sd, basis) => `Dziennik podaje ${parts} ± ${sd} (${basis}).`,
  beforeUnknown: 'Dziennik nie ma jeszcze liczby.',
  printed: (share, least, isEntered) =>
    `Liczby drukowane lub wpisane liczą się jako ± ${share}${isEntered ? ' (z reguł linii)' : ' (powszechna praktyka)'}, co najmniej ± ${least} (powszechna praktyka).`,
  agree: 'Oba liczenia się zgadzają. Razem:',
  contradicts: 'Oba liczenia się nie zgadzają. Sprawdź rolkę, potem wybierz.',
  takeNew: 'Użyj nowego liczenia',
  takeBoth: 'Użyj obu razem',
  take: 'Użyj tego liczenia',
  bases: {
    'one-by-one': 'liczone po jednej',
    label: 'etykieta',
    typed: 'wpisane',
    machine: 'licznik',
    weighed: 'zważone',
    measured: 'zmierzone',
    'counted-down': 'odliczone',
    combined: 'kilka liczeń',
  },
  saved: (slot, parts, sd) => `${slot}: teraz ${parts} ± ${sd} szt.`,
  leftTitle: (slot) => `Zdejmij z ${slot}: co zostało?`,
  leftHelp:
    'To, co zostało, pokazuje, ile stracił podajnik. Policz teraz albo niech magazyn policzy później.',
  offLanes: {
    ask: 'Co schodzi?',
    one: (slot) => `Tylko rolka na ${slot}`,
    all: (slots) => `Cały podajnik, razem z ${slots}`,
  },
  leftEmpty: 'Nic: jest pusta',
  leftCount: 'Policz',
  leftUnknown: (parts) => `Niepoliczone: około ${parts}`,
  leftUnknownPlain: 'Niepoliczone',
  lost: (feeder, lost, picks, share) =>
    `${feeder}: stracono ${lost} z ${plural(picks, `${picks} pobrania`, `${picks} pobrań`)} (${share}).`,
  moreThanGone: 'Ułożono więcej, niż ubyło: któreś liczenie jest złe. Straty zostają jak były.',
  unlikely: (feeder, share, bound) =>
    `${feeder}: strata wyniosłaby ${share}. To mało prawdopodobne (ponad ${bound}): sprawdź liczenia. Straty zostają jak były.`,
  leftOut: (count, bound) =>
    `Nieużyte: ${count}. Ponad ${bound} strat jest mało prawdopodobne (0,1–3 % to powszechna praktyka; granica jest nasza).`,
  lossTitle: 'Stracone pobrania',
  lossNone:
    'Żadna rolka o znanej liczbie jeszcze się nie skończyła. Do tego czasu liczą się straty przyjęte dla linii.',
  lossRow: (share, low, high) => `${share} (${low} do ${high})`,
  skipsUnknown: (reels) =>
    `Pominięte płytki nieznane dla ${plural(reels, `${reels} rolki: mogła stracić więcej.`, `${reels} rolek: mogły stracić więcej.`)}`,
  skipsUnknownReel: 'pominięcia nieznane',
  lossEvidence: (reels, lost, picks) =>
    `skończone: ${reels}, stracono ${lost} z ${plural(picks, `${picks} pobrania`, `${picks} pobrań`)}`,
  rising: (feeder, share, others) => `Podajnik ${feeder} odrzuca ${share}, inne ${others}.`,
  risingAlone: (feeder, share) => `Podajnik ${feeder} odrzuca ${share}, więcej niż wcześniej.`,
  pickFaults: (times, since) =>
    `Od ${since} maszyna podała ${byNumber(times, { one: `${times} błąd pobrania`, few: `${times} błędy pobrania`, other: `${times} błędów pobrania` })}.`,
  pickFaultsTitle: 'Błędy pobrania tam, gdzie strat jeszcze nie znamy',
  risingAct: 'Przy najbliższym postoju sprawdź ssawkę, tor taśmy i wysokość pobrania.',
  feeder: 'Podajnik',
  slot: 'Slot',
  loss: 'Straty',
  evidence: 'Na podstawie',
  told: { count: 'policzone', splice: 'połączone', machine: 'podała maszyna' },
  evidenceLine: (from, to, placed) => `${from} na początku, ${to} zostało, ${placed} ułożono`,
  showEvidence: 'Pokaż rolki',
  hideEvidence: 'Ukryj rolki',
  spliceDiffers: 'Łączenie i liczenie się nie zgadzają: liczba starej rolki była błędna.',
};
