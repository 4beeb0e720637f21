// What is said of the reasons about bakes, labels of level 6 and reels without an id.

import type { MoistureReasons, TableWords } from '../reason-words.ts';

/** On what a bake's hours rest. */
export const tableEs: TableWords = {
  own: 'Tabla: la copia propia de la planta. ',
  copy: 'Tabla: comparada con una copia publicada. ',
  memory: 'Tabla: de memoria. ',
};

export const moistureReasonsEs: MoistureReasons = {
  'bake-hours-over': {
    title: 'Horneada demasiado en total',
    say: (f) =>
      `${f['hours']} h por encima de 90 °C hasta ahora; el límite es ${f['most']} h. Sus patillas pueden soldar mal.`,
    act: 'Debe decidir un jefe de turno. Pregunte al fabricante.',
  },
  'label-time-missing': {
    title: 'Nivel 6: ¿tiempo de la etiqueta?',
    say: () =>
      'Tras hornearla, una bobina de nivel 6 dura lo que dice la etiqueta de su bolsa. Nadie lo ha puesto.',
    act: 'Hornéela, ponga las horas en Bolsa / horno y escanee otra vez.',
  },
  'reel-unnamed': {
    title: 'Sin identificador; puede estar ya abierta',
    say: (f) =>
      `Una bobina de este componente${f['lot'] ? `, lote ${f['lot']},` : ''} salió antes de la línea${f['left'] ? ` con ${f['left']} piezas` : ''}. Sin identificador no se distinguen, y no se conoce ${f['floorLife'] === 'true' ? 'la vida en planta' : 'la cuenta'}.`,
    act: 'Ponga un identificador a la bobina o que decida un jefe de turno.',
  },
  'reel-gone': {
    title: 'Gastada hace tiempo, según el registro',
    say: (f) =>
      `Según el registro, la bobina ${f['reel']} o parte de lo que lleva se gastó hace tiempo. Esta tableta no sabe cuánto tiempo estuvo fuera de su bolsa.`,
    act: 'Busque su lote en Rastreo. Debe decidir un jefe de turno.',
  },
  'floor-life-short': {
    title: 'La vida en planta acaba antes que la bobina',
    say: (f) => `Su vida en planta acaba en ${f['leftSeconds']}; la bobina dura ${f['neededSeconds']}.`,
    act: 'Debe decidir un jefe de turno.',
  },
};
