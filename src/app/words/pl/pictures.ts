import type { words as english } from '../en/pictures.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  rule: 'Zdjęcia etykiet',
  ruleHelp: 'Przechowuje zdjęcie każdej etykiety odczytanej kamerą przy ładowaniu lub łączeniu.',
  keep: 'Przechowuj zdjęcia',
  days: 'Dni przechowywania',
  megabytes: 'Miejsce na każdym tablecie, MB',
  fault: 'Zdjęcia: od 1 do 3650 dni i od 1 do 10000 MB.',
  shown: 'Zdjęcie etykiety',
  notHere: 'Zdjęcia nie ma na tym tablecie. Sprawdź na tym, który odczytał etykietę.',
  none: 'Nie znaleziono zdjęcia.',
  broken: 'To nie jest przechowane zdjęcie. Powiedz liderowi.',
  failed: 'Zdjęcia etykiety nie zachowano. Werdykt obowiązuje.',
  exported: 'Zapisz też zdjęcia etykiet',
  saved: (name) => `Zapisano jako ${name}.`,
};
