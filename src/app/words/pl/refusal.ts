import type { words as english } from '../en/refusal.ts';
import { formatCount, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  inLog: (clock) => `${clock}, w dzienniku`,
  nothingLoaded: 'Nic nie jest załadowane.',
  closest: 'najbliższy oczekiwany',
  characters: (count) => `Różniących się znaków: ${formatCount(count)}.`,
  belongsAt: 'Ta rolka idzie na',
  belongsNowhere: 'Żaden slot tutaj jej nie potrzebuje.',
  lacksReel: 'Nie ma tam teraz rolki.',
  hasReel: 'Jest tam teraz rolka.',
  onLine: (slot, line) => `${slot} na ${line}`,
  rightReel: (slot) => `${slot} potrzebuje`,
  rightReelNone: 'Dziennik nie ma takiej rolki w magazynie.',
  rightReelAt: (reel, more) => (more === 0 ? reel : `${reel} i jeszcze ${formatCount(more)}`),
  feederToFetch: 'Podajnik do przyniesienia',
  feederNone: 'Na liście nie ma wolnego podajnika tego rozmiaru.',
  anotherFeeder: 'Zeskanuj inny podajnik',
  carryOn: (slot) => `Zanieś na ${slot}`,
  unload: (slot) => `Zdejmij z ${slot}`,
  reachIn: 'Zatrzymaj maszynę, zanim sięgniesz do środka.',
  runsHere: {
    title: 'Ta rolka już tu pracuje',
    text: (slot) => `Ta etykieta pasuje do rolki na ${slot}. Czy to druga rolka z taką samą etykietą?`,
    same: 'Nie, to tamta rolka',
    second: 'Tak, druga rolka',
  },
  cameBefore: {
    title: 'Czy ta rolka była już na linii?',
    text: (lot, left) =>
      `Jej etykieta nie ma własnego ID. Taka rolka${lot === null ? '' : `, partia ${lot},`} zeszła z linii ${left === null ? 'z nieznaną liczbą.' : `z resztą ${left} szt.`}`,
    same: 'Tak, to tamta rolka',
    fresh: 'Nie, nowa',
  },
};
