// What is said of the reasons that come from the plant's own lists: types of feeders, makers of a product, ages, the store.

import type { PlantReasons, ReasonFacts } from '../reason-words.ts';

/** What was measured, what is wanted, and what the guard band leaves. */
const measured = (f: ReasonFacts) =>
  `Medido: ${f['quantity']} ± ${f['uncertainty']} ${f['unit']}. Se pide: ${f['nominal']} ${f['unit']}, de ${f['least']} a ${f['most']}. Con la banda de guarda de ${f['guard']}: de ${f['from']} a ${f['to']}.`;

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
        ? `El código de fecha ${f['dateCode']} no se lee con certeza. La línea limita la edad de este componente.`
        : `La etiqueta no da código de fecha. La línea limita la edad de este componente.`,
    act: 'Debe decidir un jefe de turno.',
  },
  'value-outside': {
    title: 'Valor equivocado',
    say: measured,
    act: 'No la cargue. Aparte la bobina y escanee otra.',
  },
  'value-unsure': {
    title: 'Valor no claro',
    say: (f) => `${measured(f)} Demasiado cerca de un límite para este medidor.`,
    act: 'Escanee la bobina otra vez para medir de nuevo, o que decida un jefe de turno.',
  },
  'value-unmeasured': {
    title: 'Valor sin medir',
    say: (f) => `La línea pide medir un componente de ${f['part']} antes de que la bobina alimente.`,
    act: 'Escanee la bobina otra vez para medirlo, o que decida un jefe de turno.',
  },
  'value-unknown': {
    title: 'Sin valor que comprobar',
    say: (f) =>
      f['lack'] === 'tolerance'
        ? `La lista de componentes da a ${f['part']} un valor sin tolerancia.`
        : `La lista de componentes no da valor para ${f['part']}.`,
    act: 'Debe decidir un jefe de turno. Ponga el valor en Componentes.',
  },
  'value-within': { title: 'Valor comprobado', say: measured, act: '' },
  'feeder-care': {
    title: 'Toca revisar el alimentador',
    say: (f) =>
      `El alimentador ${f['feeder']} ha colocado cerca de ${f['placed']} piezas; la planta dice revisarlo cada ${f['after']}. Llévelo a revisar cuando salga.`,
    act: '',
  },
  'older-in-store': {
    title: 'Hay una bobina más antigua en el almacén',
    say: (f) =>
      f['by'] === 'expires'
        ? `La bobina ${f['reel']} en ${f['place']} debe usarse hasta ${f['expires']}, antes que esta.`
        : `La bobina ${f['reel']} en ${f['place']} tiene el código de fecha ${f['dateCode']}, anterior a esta.`,
    act: '',
  },
};
