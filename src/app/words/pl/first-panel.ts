import type { words as english } from '../en/first-panel.ts';
import { byNumber, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  intro: 'Zmierz krytyczne komponenty. Obejrzyj każdy komponent, który może być odwrotnie ułożony.',
  none: 'Ten setup nie podaje krytycznych komponentów, wartości ani polaryzacji.',
  other: 'Zmierz inny komponent',
  critical: 'Krytyczne komponenty i wartości',
  orientation: 'Orientacja',
  left: (open) =>
    byNumber(open, {
      one: `${open} jeszcze otwarty`,
      few: `${open} jeszcze otwarte`,
      other: `${open} jeszcze otwartych`,
    }),
  all: 'wszystko dobrze',
  states: { open: 'do zrobienia', accepted: 'dobrze', held: 'niejasne', refused: 'źle' },
  marks: { critical: 'krytyczny', perPanel: (count) => `${count} na panel` },
  measure: 'Zmierz',
  again: 'Zmierz ponownie',
  right: 'Dobrze',
  wrong: 'Źle',
  takeBack: 'Obejrzyj ponownie',
  title: (part) => `Zmierz ${part}`,
  wanted: 'Ile ma wynosić?',
  code: 'Wartość lub jej kod',
  codeHelp: 'Na przykład 4k7, 104K, 10 kΩ (IEC 60062). Potem wybierz właściwe odczytanie.',
  nominal: 'Wartość nominalna',
  unit: 'Jednostka',
  tolerance: 'Tolerancja ± %',
  reading: (unit) => `Miernik pokazuje, w ${unit}`,
  meter: 'Dokładność miernika',
  percent: '± % odczytu',
  fixed: (unit) => `± stałe, w ${unit}`,
  meterHelp: 'Zobacz kartę katalogową miernika. Ten tablet to zapamięta.',
  limits: (least, most, unit) => `Oczekiwane: ${least} do ${most} ${unit}`,
  result: (value, uncertainty, unit) => `Zmierzono: ${value} ± ${uncertainty} ${unit}`,
  why: {
    accepted: 'W granicach, nawet z błędem miernika.',
    held: 'Zbyt blisko granicy dla tego miernika. Użyj lepszego albo niech zdecyduje jakość.',
    refused: 'Poza granicami, nawet z błędem miernika. Wstrzymaj panel; sprawdź rolkę i slot.',
  },
  numbers: 'Wpisz liczby: wartość, tolerancję i odczyt.',
  keep: 'Zapisz pomiar',
  caution:
    'Panel poza linią i bez zasilania, kondensatory rozładowane. Komponenty obok zmieniają wskazanie miernika w układzie.',
  known: 'jak zmierzono wcześniej',
};
