import { area } from './words.ts';

/** Panels between the machines and the place of counting. */
export const inLineWords = area({
  en: {
    title: 'Panels in the line',
    help: 'Where a reel changes, these panels are in doubt. Enter the most there can ever be, a panel at rest before a machine too. A guess stands in for what nobody has entered.',
    behind: (machine: string) => `${machine}: panels done here and not yet counted, at most`,
    before: (machine: string) => `${machine}: panels counted before they reach it, at most`,
    missed: 'Panels that pass uncounted, at most',
    guess: (most: string) => `Not entered: up to ${most} are assumed (common practice).`,
    save: 'Save panels in the line',
    saved: 'Saved. Traces go by it from now on.',
    wrong: 'Enter whole numbers from 0 to 500, and a share below 50 %.',
  },
  es: {
    title: 'Paneles en la línea',
    help: 'Donde cambia una bobina, estos paneles quedan en duda. Indique el máximo posible, contando los que esperan ante una máquina. Lo que nadie ha indicado se supone.',
    behind: (machine) => `${machine}: paneles hechos aquí y aún sin contar, como mucho`,
    before: (machine) => `${machine}: paneles contados antes de llegar, como mucho`,
    missed: 'Paneles que pasan sin contar, como mucho',
    guess: (most) => `Sin indicar: se suponen hasta ${most} (práctica habitual).`,
    save: 'Guardar paneles en la línea',
    saved: 'Guardado. Los rastreos lo usan desde ahora.',
    wrong: 'Indique números enteros de 0 a 500 y un porcentaje menor que 50 %.',
  },
});
