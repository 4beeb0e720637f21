// What is said of the reasons about bakes, labels of level 6 and reels without an id.

import type { ReasonFacts, ReasonWords } from './reason-words.ts';

type MoistureReasons = Pick<
  ReasonWords,
  'bake-hours-over' | 'label-time-missing' | 'reel-unnamed' | 'floor-life-short'
>;

/** On what a bake's hours rest. */
export const tableEn = {
  own: 'Table: the plant’s own copy. ',
  copy: 'Table: compared with a published copy. ',
  memory: 'Table: from memory. ',
} as const;
/** The same in Spanish. */
export const tableEs = {
  own: 'Tabla: la copia propia de la planta. ',
  copy: 'Tabla: comparada con una copia publicada. ',
  memory: 'Tabla: de memoria. ',
} as const;

/** On what the table's hours rest; older entries do not say, and then they were from memory. */
export function restsOn(facts: ReasonFacts, table: typeof tableEn | typeof tableEs): string {
  const { source } = facts;
  if (facts['wanted'] === undefined || facts['wanted'] === '') return '';
  return source === 'own' || source === 'copy' ? table[source] : table.memory;
}

/** In English. */
export const moistureReasonsEn: MoistureReasons = {
  'bake-hours-over': {
    title: 'Baked too long in all',
    say: (f) =>
      `${f['hours']} h above 90 °C so far; the limit is ${f['most']} h. Its leads may not solder well.`,
    act: 'A lead must decide. Ask the part’s maker.',
  },
  'label-time-missing': {
    title: 'Level 6: time on the label?',
    say: () =>
      'After its bake a level 6 reel lasts as long as its bag’s label says. Nobody has entered that.',
    act: 'Bake it, enter the hours under Bag / oven, then scan again.',
  },
  'reel-unnamed': {
    title: 'No id, and it may be an opened reel',
    say: (f) =>
      `A reel of this part${f['lot'] ? `, lot ${f['lot']},` : ''} came off the line before${f['left'] ? ` with ${f['left']} left` : ''}. Without an id the two cannot be told apart, so ${f['floorLife'] === 'true' ? 'floor life' : 'the count'} is not known.`,
    act: 'Give the reel an id, or let a lead decide.',
  },
  'floor-life-short': {
    title: 'Floor life ends before the reel',
    say: (f) => `Its floor life ends in ${f['leftSeconds']}, the reel lasts ${f['neededSeconds']}.`,
    act: 'A lead must decide.',
  },
};

/** In Spanish. */
export const moistureReasonsEs: MoistureReasons = {
  'bake-hours-over': {
    title: 'Horneada demasiado en total',
    say: (f) =>
      `${f['hours']} h por encima de 90 °C hasta ahora; el límite es ${f['most']} h. Sus patillas pueden soldar mal.`,
    act: 'Debe decidir un jefe. Pregunte al fabricante.',
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
    act: 'Ponga un identificador a la bobina o que decida un jefe.',
  },
  'floor-life-short': {
    title: 'La vida en planta acaba antes que la bobina',
    say: (f) => `Su vida en planta acaba en ${f['leftSeconds']}; la bobina dura ${f['neededSeconds']}.`,
    act: 'Debe decidir un jefe de turno.',
  },
};
