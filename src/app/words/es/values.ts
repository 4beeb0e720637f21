import type { words as english } from '../en/values.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: (part) => `Medir ${part}`,
  ask: 'Ponga un componente de esta bobina en el medidor antes de que alimente.',
  which: 'El código puede significar varios valores. Elija el correcto.',
  wanted: (nominal, least, most, unit) => `Se pide: ${nominal} ${unit}, de ${least} a ${most} ${unit}`,
  meter: (percent, digits, guard) =>
    `Medidor: ± ${percent} % y ± ${digits} en la última cifra. Banda de guarda: ${guard} % de eso.`,
  shows: (unit) => `El medidor marca, en ${unit}`,
  help: 'Tecléelo, o deje que lo teclee el medidor.',
  wrong: 'Ponga una cifra, por ejemplo 10,02.',
  otherUnit: (unit) => `El medidor marca otra cosa. Se pide una cifra en ${unit}.`,
  check: 'Comprobar el valor',
  cannot: 'Dejar sin medir',
  rule: {
    title: 'Componentes que se miden antes de alimentar',
    help: 'Una fila por clase de componentes. El valor viene de la lista de componentes o de la nota del montaje. Sin fila no se comprueba.',
    begins: 'Las referencias empiezan por (vacío: todas con valor)',
    add: 'Añadir una clase de componentes',
    percent: 'Medidor: ± % de la lectura',
    digits: 'Medidor: ± dígitos de la última cifra',
    guard: 'Banda de guarda, % de la incertidumbre del medidor',
    wrong: 'Ponga las cifras del medidor como números y cada clase una vez.',
  },
};
