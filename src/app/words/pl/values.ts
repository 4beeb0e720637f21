import type { words as english } from '../en/values.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: (part) => `Zmierz ${part}`,
  ask: 'Zanim ta rolka zacznie podawać, zmierz jeden jej komponent miernikiem.',
  which: 'Kod może oznaczać kilka wartości. Wybierz właściwą.',
  wanted: (nominal, least, most, unit) => `Oczekiwane: ${nominal} ${unit}, od ${least} do ${most} ${unit}`,
  meter: (percent, digits, guard) =>
    `Miernik: ± ${percent} % i ± ${digits} na ostatnim miejscu. Pasmo ochronne: ${guard} % tego.`,
  shows: (unit) => `Miernik pokazuje, w ${unit}`,
  help: 'Wpisz albo niech wpisze miernik.',
  wrong: 'Wpisz liczbę, na przykład 10,02.',
  otherUnit: (unit) => `Miernik pokazuje co innego. Oczekiwana liczba w ${unit}.`,
  check: 'Sprawdź wartość',
  cannot: 'Zostaw bez pomiaru',
  rule: {
    title: 'Komponenty mierzone przed podawaniem',
    help: 'Jeden wiersz na klasę komponentów. Wartość pochodzi z listy komponentów albo z uwagi w setupie. Brak wiersza: bez sprawdzania.',
    begins: 'Indeksy zaczynają się od (puste: wszystkie z wartością)',
    add: 'Dodaj klasę komponentów',
    percent: 'Miernik: ± % odczytu',
    digits: 'Miernik: ± cyfry ostatniego miejsca',
    guard: 'Pasmo ochronne, % niepewności miernika',
    wrong: 'Wpisz dane miernika jako liczby, a każdą klasę raz.',
  },
};
