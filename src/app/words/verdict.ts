import type { ReasonWords } from './reason-words.ts';
import { plantReasonsEn, plantReasonsEs } from './verdict-plant.ts';
import { area, formatCount, plural } from './words.ts';

const reasonsEn: ReasonWords = {
  ...plantReasonsEn,
  'unknown-slot': {
    title: 'No such slot',
    say: (f) => `This line has no slot ${f['slot']}.`,
    act: 'Scan the slot’s code at the machine.',
  },
  'slot-not-in-setup': {
    title: 'Slot not used',
    say: (f) => `This setup wants nothing on ${f['slot']}.`,
    act: 'Leave it empty. Scan the right slot.',
  },
  'slot-loaded': {
    title: 'Slot already loaded',
    say: (f) => `${f['slot']} already has ${f['part']}${f['reel'] ? ` (reel ${f['reel']})` : ''}.`,
    act: 'Unload that reel first.',
  },
  'slot-empty': {
    title: 'Slot is empty',
    say: (f) => `Nothing is loaded on ${f['slot']}.`,
    act: 'Load a reel there instead.',
  },
  'no-part': {
    title: 'No part number',
    say: (f) => `No code on this label says which part it is. Wanted: ${f['wanted']}.`,
    act: 'Scan the whole label, or type the printed part number.',
  },
  'wrong-part': {
    title: 'Wrong part',
    say: (f) =>
      f['goesTo'] ? `This reel goes to ${f['goesTo']}.` : 'No slot of this setup wants this part.',
    act: 'Put it back. Scan another reel.',
  },
  'not-in-setup': {
    title: 'Not in this setup',
    say: (f) =>
      f['slot'] ? `No slot wants this reel. The closest is ${f['slot']}.` : 'No slot wants this reel.',
    act: 'Leave it on the cart, or put it back in the store.',
  },
  'bake-short': {
    title: 'Baked too short',
    say: (f) =>
      `Baked ${f['hours']} h${f['celsius'] ? ` at ${f['celsius']} °C` : ''}. ${f['wanted'] ? `The table asks for ${f['wanted']} h there` : 'The table has no row for that'}, so floor life is not restored: ${f['leftSeconds']} left. (Table from memory; an unknown body counts as the thickest.)`,
    act: 'A lead must decide.',
  },
  'same-label': {
    title: 'A second reel with the same label',
    say: () => 'A person confirmed it: the label matches the reel running here.',
    act: '',
  },
  'reel-elsewhere': {
    title: 'Reel is on another slot',
    say: (f) => `The log has reel ${f['reel']} on ${f['slot']}.`,
    act: 'If it is off that slot, unload it there first.',
  },
  'reel-on-cart': {
    title: 'Reel is on a cart',
    say: (f) => `The log has reel ${f['reel']} on cart ${f['cart']}, ready for ${f['slot']}.`,
    act: 'Take another reel, or first take it off the cart in Make ready.',
  },
  'slot-on-cart': {
    title: 'Slot is ready on a cart',
    say: (f) => `Cart ${f['cart']} already has a reel ready for ${f['slot']}.`,
    act: 'Scan another slot, or take that place off the cart first.',
  },
  'reel-here': {
    title: 'Reel is already here',
    say: (f) => `Reel ${f['reel']} is already on ${f['slot']}.`,
    act: 'Scan the next reel.',
  },
  'reel-blocked': {
    title: 'Reel is blocked',
    say: (f) => `Blocked: ${f['reason']}.`,
    act: 'Put it aside. Fetch the lead.',
  },
  'feeder-elsewhere': {
    title: 'Feeder is on another slot',
    say: (f) => `The log has feeder ${f['feeder']} on ${f['slot']}.`,
    act: 'Check the feeder’s code, or unload it there first.',
  },
  'feeder-on-cart': {
    title: 'Feeder is on a cart',
    say: (f) => `The log has feeder ${f['feeder']} on cart ${f['cart']}, ready for ${f['slot']}.`,
    act: 'Check the feeder’s code, or first take it off the cart in Make ready.',
  },
  'feeder-width': {
    title: 'Feeder does not fit the tape',
    say: (f) => `Feeder ${f['feeder']} is for ${f['found']} mm tape; this slot wants ${f['wanted']} mm.`,
    act: 'Take a feeder of the right width.',
  },
  'feeder-pitch': {
    title: 'Feeder pitch does not fit',
    say: (f) => `Feeder ${f['feeder']} advances ${f['found']} mm; this tape wants ${f['wanted']} mm.`,
    act: 'Set the pitch or take another feeder. A wrong pitch throws parts away unnoticed.',
  },
  'floor-life-over': {
    title: 'Floor life is over',
    say: () => 'This reel has been out of its dry bag for too long.',
    act: 'Do not use it. Send it for baking by your rules.',
  },
  'not-the-loaded-reel': {
    title: 'Not the reel in the log',
    say: (f) => `The log has ${f['loaded'] || 'another reel'} on ${f['slot']}.`,
    act: 'Find out who changed it. Then unload and load it again.',
  },
  'part-contradicts': {
    title: 'Label contradicts itself',
    say: (f) => `It says ${f['part']}, but ${f['supplierPart']} is approved for ${f['approvedFor']}.`,
    act: 'A lead must decide.',
  },
  'alternate-not-approved': {
    title: 'Alternate not approved here',
    say: (f) => `${f['found']} may replace ${f['wanted']} on ${f['approvedFor']}, but not on this product.`,
    act: 'A lead must decide.',
  },
  'supplier-part-not-approved': {
    title: 'Supplier part not known',
    say: (f) => `${f['supplierPart']} is not on the approved list. Wanted: ${f['wanted']}.`,
    act: 'A lead must decide.',
  },
  'no-quantity': {
    title: 'No quantity',
    say: () => 'The label gives no quantity, so the run-out is unknown.',
    act: 'Type the quantity, or let a lead decide.',
  },
  expired: {
    title: 'Past its date',
    say: (f) => `Use by ${f['expires']}.`,
    act: 'A lead must decide.',
  },
  'floor-life-short': {
    title: 'Floor life ends before the reel',
    say: (f) => `Its floor life ends in ${f['leftSeconds']}, the reel lasts ${f['neededSeconds']}.`,
    act: 'A lead must decide.',
  },
  'by-alternate': {
    title: 'Approved alternate',
    say: (f) => `${f['found']} is an approved alternate of ${f['wanted']}.`,
    act: '',
  },
  'by-supplier-part': {
    title: 'By the supplier’s number',
    say: (f) => `${f['supplierPart']} is approved for ${f['part']}.`,
    act: '',
  },
  'by-comparison': {
    title: 'Taken as the same number',
    say: (f) => `${f['found']} counts as ${f['wanted']} by the site’s rule on ${f['rule']}.`,
    act: '',
  },
  'mixed-lots': {
    title: 'Another lot',
    say: (f) => `Lot changes from ${f['from']} to ${f['to']}.`,
    act: '',
  },
  'quantity-corrected': {
    title: 'Not the label’s quantity',
    say: (f) =>
      f['label'] === ''
        ? `The label gives none; the log uses ${f['quantity']}.`
        : `The label says ${f['label']}; the log uses ${f['quantity']}.`,
    act: '',
  },
};

const reasonsEs: ReasonWords = {
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
      `Horneada ${f['hours']} h${f['celsius'] ? ` a ${f['celsius']} °C` : ''}. ${f['wanted'] ? `La tabla pide ${f['wanted']} h` : 'La tabla no tiene fila para eso'}: no recuperó vida en planta, quedan ${f['leftSeconds']}. (Tabla de memoria; un cuerpo desconocido cuenta como el más grueso.)`,
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
    act: 'Escanee otra posición o quite antes ese sitio del carro.',
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
  'floor-life-short': {
    title: 'La vida en planta acaba antes que la bobina',
    say: (f) => `Su vida en planta acaba en ${f['leftSeconds']}; la bobina dura ${f['neededSeconds']}.`,
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

/** The verdict screen. */
export const verdictWords = area({
  en: {
    accepted: { load: 'Right reel', splice: 'Right reel to splice', sweep: 'Seen' },
    refused: 'Refused',
    held: 'Held for the lead',
    wants: (slot: string) => `${slot} wants`,
    says: 'the reel says',
    also: 'Also',
    goOn: 'Go on',
    nextIs: (slot: string) => `Next: ${slot}`,
    another: 'Scan another reel',
    callLead: 'Let a lead decide',
    typeQuantity: 'Type the quantity',
    takeBack: 'Take back',
    parts: (count: number) => plural(count, '1 part', `${formatCount(count)} parts`),
    lot: (lot: string) => `lot ${lot}`,
    reel: (reel: string) => `reel ${reel}`,
    practice: 'practice scan',
    allLoaded: 'Every slot is loaded.',
    spliceCaution:
      'Join the tapes with the machine stopped, or with the feeder outside the guarded zone as its manual says. Cut away from your fingers. Local rules come first.',
    loadCaution: 'Stop the machine and wait for the head before reaching in. Local rules come first.',
    reasons: reasonsEn,
  },
  es: {
    accepted: { load: 'Bobina correcta', splice: 'Bobina correcta para empalmar', sweep: 'Vista' },
    refused: 'Rechazada',
    held: 'Retenida para el jefe',
    wants: (slot) => `${slot} pide`,
    says: 'la bobina dice',
    also: 'Además',
    goOn: 'Seguir',
    nextIs: (slot) => `Siguiente: ${slot}`,
    another: 'Escanear otra bobina',
    callLead: 'Que decida el jefe',
    typeQuantity: 'Teclear la cantidad',
    takeBack: 'Deshacer',
    parts: (count) => plural(count, '1 componente', `${formatCount(count)} componentes`),
    lot: (lot) => `lote ${lot}`,
    reel: (reel) => `bobina ${reel}`,
    practice: 'escaneo de práctica',
    allLoaded: 'Todas las posiciones están cargadas.',
    spliceCaution:
      'Empalme con la máquina parada, o con el alimentador fuera de la zona protegida como dice su manual. Corte lejos de los dedos. Las reglas locales van primero.',
    loadCaution:
      'Pare la máquina y espere al cabezal antes de meter la mano. Las reglas locales van primero.',
    reasons: reasonsEs,
  },
});
