import type { words as english } from '../en/in-line.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Paneles en la línea',
  help: 'Donde cambia una bobina, estos paneles quedan en duda. Indique el máximo posible, contando los que esperan ante una máquina. Lo que nadie ha indicado se supone.',
  behind: (machine) => `${machine}: paneles hechos aquí y aún sin contar, como mucho`,
  before: (machine) => `${machine}: paneles contados antes de llegar, como mucho`,
  missed: 'Paneles que pasan sin contar, como mucho',
  guess: (most) => `Sin indicar: se suponen hasta ${most} (práctica habitual).`,
  save: 'Guardar paneles en la línea',
  saved: 'Guardado. Los rastreos lo usan desde ahora.',
  wrong: 'Indique números enteros de 0 a 500 y un porcentaje menor que 50 %.',
};
