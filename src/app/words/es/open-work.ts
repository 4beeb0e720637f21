import type { words as english } from '../en/open-work.ts';
import type { Said } from '../open-work.ts';
import { plural, type Sentences } from '../words.ts';

const saidEs: Said = {
  misfit: () => 'El montaje no cabe en esta línea',
  move: (count) => plural(count, 'queda 1 movimiento', `quedan ${count} movimientos`),
  'slot-empty': (count) => plural(count, '1 posición sin su bobina', `${count} posiciones sin su bobina`),
  'slot-other': (count) =>
    plural(count, '1 posición tiene otro componente', `${count} posiciones tienen otro componente`),
  'slot-held': (count) =>
    plural(count, '1 bobina espera a un jefe de turno', `${count} bobinas esperan a un jefe de turno`),
  'measured-wrong': (count) => plural(count, '1 componente mide mal', `${count} componentes miden mal`),
  'looked-wrong': (count) => plural(count, '1 componente está mal', `${count} componentes están mal`),
  'cannot-tell': (count) =>
    plural(count, '1 componente con medida dudosa', `${count} componentes con medida dudosa`),
  unchecked: (count) => plural(count, '1 componente sin comprobar', `${count} componentes sin comprobar`),
  step: (count) => plural(count, '1 paso de la lista', `${count} pasos de la lista`),
  'no-checklist': () => 'No se abrió la lista',
};

export const words: Sentences<typeof english> = {
  said: saidEs,
  on: (part, slot) => `${part} en ${slot}`,
  reelOn: (reel, slot) => `bobina ${reel} en ${slot}`,
  reel: (reel) => `bobina ${reel}`,
  more: (count) => plural(count, 'y 1 más', `y ${count} más`),
  isWrong: 'Mal',
  isOpen: 'Sigue abierto',
  nothing: 'No queda nada abierto.',
};
