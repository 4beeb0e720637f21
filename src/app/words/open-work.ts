import type { OpenKind } from '../../../shared/floor/checklist.ts';
import { area, plural } from './words.ts';

type Said = Readonly<Record<OpenKind, (count: number) => string>>;

const saidEn: Said = {
  misfit: () => 'The setup does not fit this line',
  move: (count) => plural(count, '1 feeder move left', `${count} feeder moves left`),
  'slot-empty': (count) => plural(count, '1 slot without its reel', `${count} slots without their reels`),
  'slot-other': (count) => plural(count, '1 slot has another part', `${count} slots have other parts`),
  'slot-held': (count) => plural(count, '1 reel waits for a lead', `${count} reels wait for a lead`),
  'measured-wrong': (count) => plural(count, '1 part measured wrong', `${count} parts measured wrong`),
  'looked-wrong': (count) => plural(count, '1 part looks wrong', `${count} parts look wrong`),
  'cannot-tell': (count) =>
    plural(count, '1 part too close for the meter', `${count} parts too close for the meter`),
  unchecked: (count) => plural(count, '1 part not checked yet', `${count} parts not checked yet`),
  step: (count) => plural(count, '1 checklist step', `${count} checklist steps`),
  'no-checklist': () => 'The checklist was never opened',
};
const saidEs: Said = {
  misfit: () => 'El montaje no cabe en esta línea',
  move: (count) => plural(count, 'queda 1 movimiento', `quedan ${count} movimientos`),
  'slot-empty': (count) => plural(count, '1 posición sin su bobina', `${count} posiciones sin su bobina`),
  'slot-other': (count) =>
    plural(count, '1 posición tiene otro componente', `${count} posiciones tienen otro componente`),
  'slot-held': (count) => plural(count, '1 bobina espera a un jefe', `${count} bobinas esperan a un jefe`),
  'measured-wrong': (count) => plural(count, '1 componente mide mal', `${count} componentes miden mal`),
  'looked-wrong': (count) => plural(count, '1 componente está mal', `${count} componentes están mal`),
  'cannot-tell': (count) =>
    plural(count, '1 componente con medida dudosa', `${count} componentes con medida dudosa`),
  unchecked: (count) => plural(count, '1 componente sin comprobar', `${count} componentes sin comprobar`),
  step: (count) => plural(count, '1 paso de la lista', `${count} pasos de la lista`),
  'no-checklist': () => 'No se abrió la lista',
};

/** What is open or wrong before a run is released. */
export const openWorkWords = area({
  en: {
    said: saidEn,
    on: (part: string, slot: string) => `${part} on ${slot}`,
    reelOn: (reel: string, slot: string) => `reel ${reel} on ${slot}`,
    reel: (reel: string) => `reel ${reel}`,
    more: (count: number) => plural(count, 'and 1 more', `and ${count} more`),
    isWrong: 'Wrong',
    isOpen: 'Still open',
    nothing: 'Nothing is open.',
  },
  es: {
    said: saidEs,
    on: (part, slot) => `${part} en ${slot}`,
    reelOn: (reel, slot) => `bobina ${reel} en ${slot}`,
    reel: (reel) => `bobina ${reel}`,
    more: (count) => plural(count, 'y 1 más', `y ${count} más`),
    isWrong: 'Mal',
    isOpen: 'Sigue abierto',
    nothing: 'No queda nada abierto.',
  },
});
