import type { words as english } from '../en/verdict.ts';
import { type ReasonWords, restsOn } from '../reason-words.ts';
import { formatCount, plural, type Sentences } from '../words.ts';
import { moistureReasonsEs, tableEs } from './verdict-moisture.ts';
import { plantReasonsEs } from './verdict-plant.ts';

const reasonsEs: ReasonWords = {
  ...moistureReasonsEs,
  ...plantReasonsEs,
  'unknown-slot': {
    title: 'No existe esa posición',
    say: (f) => `Esta línea no tiene la posición ${f['slot']}.`,
    act: 'Escanee el código de la posición en la máquina.',
  },
  'slot-not-in-setup': {
    title: 'Posición sin uso',
    say: (f) => `Este montaje no quiere nada en ${f['slot']}.`,
    act: 'Déjela vacía. Escanee la posición correcta.',
  },
  'slot-loaded': {
    title: 'Posición ya cargada',
    say: (f) => `${f['slot']} ya tiene ${f['part']}${f['reel'] ? ` (bobina ${f['reel']})` : ''}.`,
    act: 'Descargue primero esa bobina.',
  },
  'slot-empty': {
    title: 'Posición vacía',
    say: (f) => `No hay nada cargado en ${f['slot']}.`,
    act: 'Cargue una bobina ahí.',
  },
  'no-part': {
    title: 'Sin referencia',
    say: (f) => `Ningún código de la etiqueta dice qué componente es. Se pide: ${f['wanted']}.`,
    act: 'Escanee la etiqueta entera o teclee la referencia impresa.',
  },
  'wrong-part': {
    title: 'Componente equivocado',
    say: (f) =>
      f['goesTo']
        ? `Esta bobina va en ${f['goesTo']}.`
        : 'Ninguna posición de este montaje quiere este componente.',
    act: 'Devuélvala. Escanee otra bobina.',
  },
  'wrong-for-lane': {
    title: 'Errónea para el otro carril',
    say: (f) => `${f['lane']} toma ${f['wanted']} de esta posición.`,
    act: 'Devuélvala. Escanee una bobina que sirva a ambos carriles.',
  },
  'kept-for-lane': {
    title: 'Se queda para el otro carril',
    say: (f) => `${f['slot']} tiene ${f['part']} para ${f['lane']}.`,
    act: 'Deje allí esa bobina. Para empalmarle otra, elija antes el otro carril.',
  },
  'not-in-setup': {
    title: 'No es de este montaje',
    say: (f) =>
      f['slot']
        ? `Ninguna posición quiere esta bobina. La más parecida es ${f['slot']}.`
        : 'Ninguna posición quiere esta bobina.',
    act: 'Déjela en el carro o devuélvala al almacén.',
  },
  'bake-short': {
    title: 'Horneado demasiado corto',
    say: (f) =>
      `Horneada ${f['hours']} h${f['celsius'] ? ` a ${f['celsius']} °C` : ''}. ${f['wanted'] ? `La tabla pide ${f['wanted']} h` : 'La tabla no tiene fila para eso'}: no recuperó vida en planta, quedan ${f['leftSeconds']}. (${restsOn(f, tableEs)}Un encapsulado desconocido cuenta como el peor.)`,
    act: 'Debe decidir un jefe de turno.',
  },
  'same-label': {
    title: 'Otra bobina con la misma etiqueta',
    say: () => 'Lo confirmó una persona: la etiqueta coincide con la de la bobina que trabaja aquí.',
    act: '',
  },
  'reel-elsewhere': {
    title: 'La bobina está en otra posición',
    say: (f) => `El registro tiene la bobina ${f['reel']} en ${f['slot']}.`,
    act: 'Si ya no está allí, descárguela primero allí.',
  },
  'reel-on-cart': {
    title: 'La bobina está en un carro',
    say: (f) => `El registro tiene la bobina ${f['reel']} en el carro ${f['cart']}, lista para ${f['slot']}.`,
    act: 'Tome otra bobina o quítela antes del carro en Preparar.',
  },
  'slot-on-cart': {
    title: 'La posición está lista en un carro',
    say: (f) => `El carro ${f['cart']} ya tiene una bobina lista para ${f['slot']}.`,
    act: 'Escanee otra posición o quite antes ese lugar del carro.',
  },
  'reel-here': {
    title: 'La bobina ya está aquí',
    say: (f) => `La bobina ${f['reel']} ya está en ${f['slot']}.`,
    act: 'Escanee la bobina siguiente.',
  },
  'reel-blocked': {
    title: 'Bobina bloqueada',
    say: (f) => `Bloqueada: ${f['reason']}.`,
    act: 'Apártela y avise al jefe de turno.',
  },
  'feeder-elsewhere': {
    title: 'El alimentador está en otra posición',
    say: (f) => `El registro tiene el alimentador ${f['feeder']} en ${f['slot']}.`,
    act: 'Compruebe el código o descárguelo allí primero.',
  },
  'feeder-aside': {
    title: 'Alimentador apartado',
    say: (f) => `El alimentador ${f['feeder']} no se debe usar: ${f['why']}.`,
    act: 'Tome otro alimentador. Cuando se revise, indíquelo en el alimentador.',
  },
  'feeder-lanes': {
    title: 'El alimentador no tiene más carriles',
    say: (f) =>
      `Carriles del alimentador ${f['feeder']}: ${f['lanes']}. El registro ya lo tiene en ${f['slots']}.`,
    act: 'Compruebe el código o corrija el número de carriles de su tipo.',
  },
  'feeder-on-cart': {
    title: 'El alimentador está en un carro',
    say: (f) =>
      `El registro tiene el alimentador ${f['feeder']} en el carro ${f['cart']}, listo para ${f['slot']}.`,
    act: 'Compruebe el código o quítelo antes del carro en Preparar.',
  },
  'feeder-width': {
    title: 'El alimentador no admite la cinta',
    say: (f) =>
      `El alimentador ${f['feeder']} es para cinta de ${f['found']} mm; esta posición quiere ${f['wanted']} mm.`,
    act: 'Tome un alimentador del ancho correcto.',
  },
  'feeder-pitch': {
    title: 'El paso no coincide',
    say: (f) => `El alimentador ${f['feeder']} avanza ${f['found']} mm; esta cinta quiere ${f['wanted']} mm.`,
    act: 'Ajuste el paso o tome otro. Un paso erróneo tira componentes sin que se note.',
  },
  'floor-life-over': {
    title: 'Vida en planta agotada',
    say: () => 'Esta bobina ha estado demasiado tiempo fuera de su bolsa seca.',
    act: 'No la use. Envíela a hornear según sus reglas.',
  },
  'not-the-loaded-reel': {
    title: 'No es la bobina del registro',
    say: (f) => `El registro tiene ${f['loaded'] || 'otra bobina'} en ${f['slot']}.`,
    act: 'Averigüe quién la cambió. Luego descargue y cargue otra vez.',
  },
  'part-contradicts': {
    title: 'La etiqueta se contradice',
    say: (f) => `Dice ${f['part']}, pero ${f['supplierPart']} está aprobada para ${f['approvedFor']}.`,
    act: 'Debe decidir un jefe de turno.',
  },
  'alternate-not-approved': {
    title: 'Alternativa no aprobada aquí',
    say: (f) =>
      `${f['found']} puede sustituir a ${f['wanted']} en ${f['approvedFor']}, pero no en este producto.`,
    act: 'Debe decidir un jefe de turno.',
  },
  'supplier-part-not-approved': {
    title: 'Referencia de proveedor desconocida',
    say: (f) => `${f['supplierPart']} no está en la lista aprobada. Se pide: ${f['wanted']}.`,
    act: 'Debe decidir un jefe de turno.',
  },
  'no-quantity': {
    title: 'Sin cantidad',
    say: () => 'La etiqueta no da la cantidad: no se sabe cuándo se acaba.',
    act: 'Teclee la cantidad o que decida un jefe de turno.',
  },
  expired: {
    title: 'Fuera de fecha',
    say: (f) => `Usar hasta ${f['expires']}.`,
    act: 'Debe decidir un jefe de turno.',
  },
  'by-alternate': {
    title: 'Alternativa aprobada',
    say: (f) => `${f['found']} es alternativa aprobada de ${f['wanted']}.`,
    act: '',
  },
  'by-supplier-part': {
    title: 'Por la referencia del proveedor',
    say: (f) => `${f['supplierPart']} está aprobada para ${f['part']}.`,
    act: '',
  },
  'by-comparison': {
    title: 'Tomada por la misma referencia',
    say: (f) => `${f['found']} cuenta como ${f['wanted']} por la regla propia sobre ${f['rule']}.`,
    act: '',
  },
  'mixed-lots': {
    title: 'Otro lote',
    say: (f) => `El lote cambia de ${f['from']} a ${f['to']}.`,
    act: '',
  },
  'quantity-corrected': {
    title: 'No es la cantidad de la etiqueta',
    say: (f) =>
      f['label'] === ''
        ? `La etiqueta no da ninguna; el registro usa ${f['quantity']}.`
        : `La etiqueta dice ${f['label']}; el registro usa ${f['quantity']}.`,
    act: '',
  },
};

export const words: Sentences<typeof english> = {
  accepted: {
    exchange: 'Correcto para el cambio',
    refill: 'Correcto para rellenar',
    load: 'Bobina correcta',
    splice: 'Bobina correcta para empalmar',
    sweep: 'Vista',
  },
  refused: 'Rechazada',
  held: 'Retenida para el jefe de turno',
  wants: (slot) => `${slot} pide`,
  says: 'la bobina dice',
  also: 'Además',
  goOn: 'Seguir',
  nextIs: (slot) => `Siguiente: ${slot}`,
  another: 'Escanear otra bobina',
  callLead: 'Que decida el jefe de turno',
  typeQuantity: 'Teclear la cantidad',
  takeBack: 'Deshacer',
  parts: (count) => plural(count, '1 pieza', `${formatCount(count)} piezas`),
  lot: (lot) => `lote ${lot}`,
  reel: (reel) => `bobina ${reel}`,
  practice: 'escaneo de práctica',
  allLoaded: 'Todas las posiciones están cargadas.',
  spliceCaution:
    'Empalme con la máquina parada, o con el alimentador fuera de la zona protegida como dice su manual. Corte lejos de los dedos. Las reglas locales van primero.',
  loadCaution: 'Pare la máquina y espere al cabezal antes de meter la mano. Las reglas locales van primero.',
  reasons: reasonsEs,
};
