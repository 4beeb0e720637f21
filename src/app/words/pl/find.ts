import type { words as english } from '../en/find.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: 'Szukaj kamerą',
  sweep: 'Przegląd kamerą',
  title: 'Szukanie rolek',
  help: 'Przesuwaj tablet powoli wzdłuż etykiet.',
  sweepHelp: 'Trzymaj w kadrze etykietę slotu i etykietę jego rolki.',
  on: (slot) => `na ${slot}`,
  to: (slots) => `do ${slots}`,
  told: (wanted, barred, read) => `Potrzebne: ${wanted} · nie używać: ${barred} · odczytane: ${read}`,
  swept: (seen, all) => `Widziane: ${seen} z ${all}`,
  other: 'Teraz niepotrzebna',
  unknown: 'Nieznana',
  reading: 'Czytanie…',
  none: 'Jeszcze nic nie odczytano.',
  missing: 'Jeszcze niewidziane',
  several: (slot) => `${slot}: w pobliżu jest więcej rolek. Podejdź bliżej albo zeskanuj slot i rolkę.`,
  unsure: (slot) => `${slot}: etykieta nie pokazuje, która to rolka.`,
  check: 'Sprawdź ten slot',
  times: (count) => `${count} × w kadrze`,
  kept: (count) => `Widziane rolki: ${count}. Są w dzienniku.`,
  notKept: 'Tego, co widziano, nie ma w dzienniku. Najpierw się zaloguj.',
  barred: 'Nie używać',
};
