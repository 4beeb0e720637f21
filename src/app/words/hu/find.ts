import type { words as english } from '../en/find.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: 'Keresés kamerával',
  sweep: 'Bejárás kamerával',
  title: 'Tekercsek keresése',
  help: 'Vigye végig lassan a tabletet a címkéken.',
  sweepHelp: 'Tartsa a képen a hely címkéjét és a tekercsének címkéjét.',
  on: (slot) => `itt: ${slot}`,
  to: (slots) => `ide: ${slots}`,
  told: (wanted, barred, read) => `Kell: ${wanted} · ne használja: ${barred} · leolvasva: ${read}`,
  swept: (seen, all) => `Látva: ${seen} / ${all}`,
  other: 'Most nem kell',
  unknown: 'Ismeretlen',
  reading: 'Olvasás…',
  none: 'Még nincs leolvasva semmi.',
  missing: 'Még nem látott helyek',
  several: (slot) =>
    `${slot}: több tekercs van a közelében. Menjen közelebb, vagy olvassa be a helyet és a tekercset.`,
  unsure: (slot) => `${slot}: a címkéből nem derül ki, melyik tekercs az.`,
  check: 'Ellenőrizze ezt a helyet',
  times: (count) => `${count} × a képen`,
  kept: (count) => `Látott tekercsek: ${count}. Bekerültek a naplóba.`,
  notKept: 'A látottak nincsenek a naplóban. Előbb jelentkezzen be.',
  barred: 'Ne használja',
};
