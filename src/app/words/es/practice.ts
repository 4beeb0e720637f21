import type { words as english } from '../en/practice.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  word: 'PRÁCTICA',
  tells: 'Aquí nada cuenta. La línea de verdad sigue.',
  end: 'Terminar la práctica',
  real: (slot, told) => `En la línea de verdad: ${slot} ${told}`,
  title: 'Practicar sin tocar la línea',
  about:
    'Recibe una copia de esta línea tal como está ahora. Escanee, empalme, cambie, equivóquese: nada llega a la línea de verdad, ni a su registro ni a sus cuentas. La copia se borra al terminar la práctica, o a las doce horas.',
  aboutNew:
    'Esta planta aún no tiene línea: recibe una pequeña, inventada. Escanee, cargue, empalme, equivóquese. Se borra al terminar la práctica, o a las doce horas.',
  warns: 'Los avisos de la línea de verdad siguen saliendo.',
  start: 'Empezar la práctica',
  taken: 'La práctica está abierta en otra ventana de esta tableta. Termínela allí primero.',
  notSaved: (name) => `Práctica: no se guarda ningún archivo. En la línea real sería ${name}.`,
  labels: 'Etiquetas para practicar',
  labelsHelp: 'Toque una etiqueta en vez de escanear: la posición, su alimentador si se pide, su bobina.',
  print: 'Imprimir las etiquetas',
  groups: {
    load: 'Para cargar',
    splice: 'Para empalmar ahora',
    wrong: 'Para rechazar o retener',
    panels: 'Paneles',
  },
  slot: (slot) => `Posición ${slot}`,
  wants: (part) => `quiere ${part}`,
  right: (slot) => `bobina correcta para ${slot}`,
  wrong: (slot, asked) => `va en ${slot}; pruébela en ${asked}`,
  foreign: (asked) => `ninguna posición la quiere; pruébela en ${asked}`,
  bare: (slot) => `sin cantidad en la etiqueta; para ${slot}`,
  free: (slot) => `alimentador libre para ${slot}`,
  panel: 'cuenta un panel',
  nothing: 'Elija antes un montaje. Sus etiquetas saldrán aquí.',
  names: {
    line: 'Línea de práctica',
    machine: 'primera máquina',
    bank: 'frente',
    product: 'Placa de práctica',
  },
};
