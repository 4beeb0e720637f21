import type { words as english } from '../en/find.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: 'Buscar con la cámara',
  sweep: 'Repasar con la cámara',
  title: 'Buscar bobinas',
  help: 'Mueva la tableta despacio a lo largo de las etiquetas.',
  sweepHelp: 'Mantenga en la imagen la etiqueta de la posición y la de su bobina.',
  on: (slot) => `en ${slot}`,
  to: (slots) => `a ${slots}`,
  told: (wanted, barred, read) => `Hacen falta: ${wanted} · no usar: ${barred} · leídas: ${read}`,
  swept: (seen, all) => `Vistas: ${seen} de ${all}`,
  other: 'No hace falta ahora',
  unknown: 'Desconocida',
  reading: 'Leyendo…',
  none: 'Aún no se ha leído nada.',
  missing: 'Aún no vistas',
  several: (slot) => `${slot}: hay más de una bobina cerca. Acérquese o escanee posición y bobina.`,
  unsure: (slot) => `${slot}: la etiqueta no muestra qué bobina es.`,
  check: 'Comprobar esta posición',
  times: (count) => `${count} × a la vista`,
  kept: (count) => `Bobinas vistas: ${count}. Están en el registro.`,
  notKept: 'Lo visto no está en el registro. Identifíquese primero.',
  barred: 'No usar',
};
