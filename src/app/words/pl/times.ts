import type { words as english } from '../en/times.ts';
import { byNumber, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  loading: 'Czytanie dziennika…',
  running: 'Linia pracuje. Czas liczy się od ostatniego dobrego panelu.',
  stopped: 'Linia jest zatrzymana. Postój liczy się, gdy ostatni dobry panel zostanie potwierdzony.',
  madeReady: (span) => `${span} przygotowań wcześniej`,
  standing: 'Linia stała',
  external: 'Przygotowano, gdy linia pracowała',
  paused: (span) => `${span} przerw i planowanych postojów pominięto.`,
  before: 'W porównaniu z wcześniejszymi przezbrojeniami tego rodzaju',
  noneBefore: 'W dzienniku nie ma wcześniejszego przezbrojenia między tymi dwoma produktami.',
  thisOne: 'bieżące',
  people: 'Według osób',
  nobody: 'nikt nie był zalogowany',
  marks: (count) =>
    byNumber(count, { one: `${count} czynność`, few: `${count} czynności`, other: `${count} czynności` }),
  steps: 'Najdłuższe czynności',
  kinds: {
    step: 'checklista',
    skip: 'pominięto',
    load: 'włożono',
    unload: 'wyjęto',
    measure: 'zmierzono',
    look: 'obejrzano',
  },
  none: 'W tym przezbrojeniu nic jeszcze nie odhaczono ani nie zeskanowano.',
  where: 'Gdzie poszły minuty',
  axis: 'min',
  legend: { act: 'czynność', outside: 'można było wcześniej', stop: 'przerwa lub planowany postój' },
  median: (count, span) =>
    byNumber(count, {
      one: `Poprzednie trwało ${span}.`,
      few: `Mediana ${count} wcześniejszych to ${span}.`,
      other: `Mediana ${count} wcześniejszych to ${span}.`,
    }),
  longer: (span) => `Tym razem postój był o ${span} dłuższy.`,
  shorter: (span) => `Tym razem postój był o ${span} krótszy.`,
  asMedian: 'Tym razem postój trwał mniej więcej tyle samo.',
  medianMark: (span) => `mediana wcześniejszych, ${span}`,
  saved: (steps, span) =>
    byNumber(steps, {
      one: `${steps} krok można było zrobić przed ostatnim panelem. Linia stałaby do ${span} krócej.`,
      few: `${steps} kroki można było zrobić przed ostatnim panelem. Linia stałaby do ${span} krócej.`,
      other: `${steps} kroków można było zrobić przed ostatnim panelem. Linia stałaby do ${span} krócej.`,
    }),
  outside: 'Można było zrobić, gdy linia pracuje',
  late: 'przewidziane przy pracującej linii, zrobione podczas postoju',
  candidate: 'bez sięgania do środka: zdecyduj, czy można wcześniej',
  noneOutside: 'Każda czynność z postoju wymaga zatrzymanej linii.',
  how: 'Każdy czas liczy się od poprzedniej czynności tej samej osoby.',
};
