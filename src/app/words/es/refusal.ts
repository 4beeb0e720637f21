import type { words as english } from '../en/refusal.ts';
import { formatCount, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  inLog: (clock) => `${clock}, en el registro`,
  nothingLoaded: 'No se cargó nada.',
  closest: 'la más parecida',
  characters: (count) => plural(count, 'Difiere 1 carácter.', `Difieren ${formatCount(count)} caracteres.`),
  belongsAt: 'Esta bobina va en',
  belongsNowhere: 'Aquí no la pide ninguna posición.',
  lacksReel: 'Ahora no hay bobina.',
  hasReel: 'Ahora hay una bobina.',
  onLine: (slot, line) => `${slot} en ${line}`,
  rightReel: (slot) => `${slot} necesita`,
  rightReelNone: 'El registro no tiene ninguna en el almacén.',
  rightReelAt: (reel, more) =>
    more === 0 ? reel : `${reel} y ${plural(more, '1 más', `${formatCount(more)} más`)}`,
  feederToFetch: 'Alimentador que traer',
  feederNone: 'No hay en la lista ninguno libre de ese tamaño.',
  anotherFeeder: 'Escanear otro alimentador',
  carryOn: (slot) => `Llevarla a ${slot}`,
  unload: (slot) => `Descargar ${slot}`,
  reachIn: 'Pare la máquina antes de meter la mano.',
  runsHere: {
    title: 'Esa bobina ya trabaja aquí',
    text: (slot) =>
      `La etiqueta coincide con la de la bobina de ${slot}. ¿Es otra bobina con la misma etiqueta?`,
    same: 'No, es esa bobina',
    second: 'Sí, otra bobina',
  },
  cameBefore: {
    title: '¿Estuvo ya esta bobina en la línea?',
    text: (lot, left) =>
      `Su etiqueta no tiene identificador propio. Una bobina igual${lot === null ? '' : `, lote ${lot},`} salió de la línea ${left === null ? 'sin contar' : plural(left, 'con 1 pieza', `con ${left} piezas`)}.`,
    same: 'Sí, es esa bobina',
    fresh: 'No, es nueva',
  },
};
