import type { words as english } from '../en/values.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: (part) => `Mérés: ${part}`,
  ask: 'Adagolás előtt mérjen meg egy alkatrészt erről a tekercsről.',
  which: 'A kód több értéket is jelenthet. Válassza ki a jót.',
  wanted: (nominal, least, most, unit) => `Elvárt: ${nominal} ${unit}, ${least} – ${most} ${unit}`,
  meter: (percent, digits, guard) =>
    `Műszer: ± ${percent} % és ± ${digits} digit. Védősáv: ennek ${guard} %-a.`,
  shows: (unit) => `A műszer kijelzése, ${unit}`,
  help: 'Írja be, vagy hagyja, hogy a műszer írja be.',
  wrong: 'Írjon be számot, például 10,02.',
  otherUnit: (unit) => `A műszer mást mutat. Elvárt: szám ebben: ${unit}.`,
  check: 'Érték ellenőrzése',
  cannot: 'Mérés nélkül hagyás',
  rule: {
    title: 'Adagolás előtt mérendő alkatrészek',
    help: 'Egy sor egy alkatrészosztály. Az érték az alkatrészlistából vagy a setup megjegyzéséből jön. Ha nincs sor: nincs ellenőrzés.',
    begins: 'A cikkszámok eleje (üres: mind, amelynek van értéke)',
    add: 'Alkatrészosztály hozzáadása',
    percent: 'Műszer: ± % a mért értékből',
    digits: 'Műszer: ± digit az utolsó helyen',
    guard: 'Védősáv, a műszer bizonytalanságának %-a',
    wrong: 'A műszer adatait számként írja be, és minden osztályt egyszer.',
  },
};
