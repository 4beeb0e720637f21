import type { ReasonWords } from './reason-words.ts';

/** Reasons that come from the plant's own lists: types of feeders, makers of a product, ages, the store. */
type PlantReasons = Pick<
  ReasonWords,
  | 'feeder-unknown'
  | 'feeder-type'
  | 'feeder-drive'
  | 'feeder-height'
  | 'maker-not-listed'
  | 'date-code-old'
  | 'date-code-unknown'
  | 'older-in-store'
>;

export const plantReasonsEn: PlantReasons = {
  'feeder-unknown': {
    title: 'Feeder not known',
    say: (f) => `Feeder ${f['feeder']} is not on the plant’s list, so its width cannot be checked.`,
    act: 'A lead must decide.',
  },
  'feeder-type': {
    title: 'Wrong type of feeder',
    say: (f) => `Feeder ${f['feeder']} is a ${f['found']}; this slot wants a ${f['wanted']}.`,
    act: 'Take a feeder of that type.',
  },
  'feeder-drive': {
    title: 'Wrong drive',
    say: (f) => `Feeder ${f['feeder']} has ${f['found']} drive; this slot wants ${f['wanted']}.`,
    act: 'Take a feeder with the right drive.',
  },
  'feeder-height': {
    title: 'Pockets too deep for the feeder',
    say: (f) =>
      `The tape’s pockets are ${f['wanted']} mm deep; feeder ${f['feeder']} passes ${f['found']} mm.`,
    act: 'Take a feeder for deeper pockets.',
  },
  'maker-not-listed': {
    title: 'Maker not on this product’s list',
    say: (f) =>
      `${f['supplierPart']} is not approved for ${f['part']} on this product.${f['listed'] ? ` Approved: ${f['listed']}.` : ''}${f['approvedFor'] ? ` It is approved on ${f['approvedFor']}.` : ''}`,
    act: 'Take a reel of a listed maker, or let a lead decide.',
  },
  'date-code-old': {
    title: 'Too old by its date code',
    say: (f) => `Made ${f['made']}. The line’s age limit for this part ended on ${f['last']}.`,
    act: 'A lead must decide.',
  },
  'date-code-unknown': {
    title: 'Age not known',
    say: (f) =>
      f['dateCode']
        ? `Date code ${f['dateCode']} cannot be read for certain. The line limits the age of this part.`
        : `The label gives no date code. The line limits the age of this part.`,
    act: 'A lead must decide.',
  },
  'older-in-store': {
    title: 'An older reel is in the store',
    say: (f) =>
      f['by'] === 'expires'
        ? `Reel ${f['reel']} at ${f['place']} is to be used by ${f['expires']}, before this one.`
        : `Reel ${f['reel']} at ${f['place']} has date code ${f['dateCode']}, older than this one.`,
    act: '',
  },
};

export const plantReasonsEs: PlantReasons = {
  'feeder-unknown': {
    title: 'Alimentador desconocido',
    say: (f) =>
      `El alimentador ${f['feeder']} no está en la lista de la planta; no se puede comprobar su ancho.`,
    act: 'Debe decidir un jefe de turno.',
  },
  'feeder-type': {
    title: 'Tipo de alimentador equivocado',
    say: (f) => `El alimentador ${f['feeder']} es ${f['found']}; esta posición quiere ${f['wanted']}.`,
    act: 'Tome un alimentador de ese tipo.',
  },
  'feeder-drive': {
    title: 'Accionamiento equivocado',
    say: (f) =>
      `El alimentador ${f['feeder']} tiene accionamiento ${f['found']}; esta posición quiere ${f['wanted']}.`,
    act: 'Tome un alimentador con el accionamiento correcto.',
  },
  'feeder-height': {
    title: 'Alvéolos demasiado hondos',
    say: (f) =>
      `Los alvéolos de la cinta tienen ${f['wanted']} mm; el alimentador ${f['feeder']} admite ${f['found']} mm.`,
    act: 'Tome un alimentador para alvéolos más hondos.',
  },
  'maker-not-listed': {
    title: 'Fabricante fuera de la lista del producto',
    say: (f) =>
      `${f['supplierPart']} no está aprobada para ${f['part']} en este producto.${f['listed'] ? ` Aprobadas: ${f['listed']}.` : ''}${f['approvedFor'] ? ` Está aprobada en ${f['approvedFor']}.` : ''}`,
    act: 'Tome una bobina de un fabricante de la lista o que decida un jefe de turno.',
  },
  'date-code-old': {
    title: 'Demasiado antigua por su fecha',
    say: (f) =>
      `Fabricada en ${f['made']}. El límite de edad de la línea para este componente acabó el ${f['last']}.`,
    act: 'Debe decidir un jefe de turno.',
  },
  'date-code-unknown': {
    title: 'Edad desconocida',
    say: (f) =>
      f['dateCode']
        ? `La fecha ${f['dateCode']} no se lee con certeza. La línea limita la edad de este componente.`
        : `La etiqueta no da fecha de fabricación. La línea limita la edad de este componente.`,
    act: 'Debe decidir un jefe de turno.',
  },
  'older-in-store': {
    title: 'Hay una bobina más antigua en el almacén',
    say: (f) =>
      f['by'] === 'expires'
        ? `La bobina ${f['reel']} en ${f['place']} debe usarse hasta ${f['expires']}, antes que esta.`
        : `La bobina ${f['reel']} en ${f['place']} tiene fecha ${f['dateCode']}, anterior a esta.`,
    act: '',
  },
};
