import type { words as english } from '../en/pictures.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  rule: 'Címkék képei',
  ruleHelp: 'Megőrzi minden címke képét, amelyet a kamera felrakáskor vagy toldáskor olvas le.',
  keep: 'Képek megőrzése',
  days: 'Megőrzés napokban',
  megabytes: 'Hely minden tableten, MB',
  fault: 'A képekhez 1–3650 nap és 1–10000 MB kell.',
  shown: 'A címke képe',
  notHere: 'A kép nincs ezen a tableten. Nézze meg azon, amelyik a címkét leolvasta.',
  none: 'Nincs ilyen kép.',
  broken: 'Ez nem a megőrzött kép. Szóljon a műszakvezetőnek.',
  failed: 'A címke képe nem lett megőrizve. Az eredmény érvényes.',
  exported: 'A címkék képeinek mentése is',
  saved: (name) => `Mentve: ${name}.`,
};
