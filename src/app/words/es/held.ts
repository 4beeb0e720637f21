import type { words as english } from '../en/held.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  causes: {
    'wrong-reel': 'Bobina equivocada hallada tarde',
    cleared: 'Retención liberada por error',
    blocked: 'Material bloqueado',
    'floor-life': 'Vida en planta agotada',
  },
  hold: 'Retener estos paneles',
  holdTitle: (panels) => `¿Retener ${plural(panels, '1 panel', `${panels} paneles`)}?`,
  holdHelp:
    'Se retienen todos los paneles que quizá lo lleven, también los que siguen en la línea, hasta que un jefe de turno los firme.',
  goesOn: 'Sigue en una posición. Quítelo primero: los paneles por venir no se retienen.',
  cause: '¿Por qué se retienen?',
  lifeHelp: 'Se retienen los paneles desde el momento en que terminó su vida en planta.',
  noLifeOver: 'Según el registro, su vida en planta nunca terminó mientras se hacían paneles.',
  reason: '¿Qué se halló?',
  codes: (codes) => plural(codes, 'Se conoce 1 código de panel.', `Se conocen ${codes} códigos de panel.`),
  sure: (panels) =>
    panels === 0
      ? 'Ninguno lo lleva seguro.'
      : plural(panels, '1 lo lleva seguro.', `${panels} lo llevan seguro.`),
  done: (panels) => plural(panels, '1 panel retenido.', `${panels} paneles retenidos.`),
  none: 'No hay paneles retenidos.',
  span: (first, last) => `Paneles ${first} a ${last}`,
  still: (held, all) => `Sin firmar: ${held} de ${all}`,
  noCodes: 'Sin códigos de panel. Búsquelos por su número.',
  signed: (who, when) => `Firmado por ${who}, ${when}`,
  sign: 'Firmar',
  signAll: 'Firmar todos',
  signTitle: '¿Qué se hizo con estos paneles?',
  signHelp: 'Elija paneles sueltos, o fírmelos todos.',
  signWhy: '¿Qué se hizo? P. ej. retrabajados, desechados, estaban bien.',
  signDone: 'Firmado.',
  save: 'Guardar los códigos como CSV',
  which: '¿Qué paneles?',
};
