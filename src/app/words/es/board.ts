import type { words as english } from '../en/board.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  way: 'Archivo de colocación y lista de materiales',
  wayHelp:
    '¿No tiene hoja con posiciones? Empiece con el archivo de colocación de la placa. Después puede añadir la lista de materiales; se le proponen posiciones en su línea.',
  choosePlacements: 'Elegir archivo de colocación',
  isPlacements: 'Este archivo no nombra posiciones, así que se lee como archivo de colocación.',
  isBill: 'Esto es una lista de materiales. Elija ahora el archivo de colocación de la misma placa.',
  readAsSheet: 'Leerlo como hoja de montaje',
  billColumnsTitle: 'Columnas de la lista de materiales',
  putAway: 'Dejarlo',
  correctColumns: 'Corregir columnas',
  variant: 'Variante que se fabrica',
  variantNone: 'sin elegir',
  variantHelp: 'La lista cambia según la variante.',
  sidesOf: (top, bottom) => `Colocaciones: superior ${top}, inferior ${bottom}.`,
  notPlacedTitle: (count) =>
    `Sin colocar: ${plural(count, '1 designador', `${count} designadores`)}. Se listan, no se cuentan.`,
  left: {
    notFitted: 'No montados',
    fiducial: 'Fiduciales',
    testPoint: 'Puntos de prueba',
    hole: 'Taladros',
    mark: 'Marcas',
    throughHole: 'De inserción',
    noPart: 'Sin componente',
    doubled: 'Dos veces en el archivo',
  },
  leftByBill: 'No montados según la lista, o no están en ambos archivos',
  noSide: 'Elija primero la cara. Cada cara es un montaje propio.',
  noParts: 'No hay componentes en esta cara.',
  namedByValue: (count) =>
    `${plural(count, '1 componente no tiene número y se llama', `${count} componentes no tienen número y se llaman`)} por su valor. Las bobinas se comprueban con ese nombre. Añada una lista con números.`,
  filesWrong: (count) =>
    `Corrija primero ${plural(count, 'el error', `los ${count} errores`)} de los archivos`,
  filesHelp: 'Corrija arriba una columna, o corrija el archivo y elíjalo otra vez. Los avisos no bloquean.',
  noLine: 'Todavía no se conoce ninguna línea con máquinas y posiciones.',
  noLineHelp:
    'Solo se proponen posiciones para una línea conocida. Importe antes una hoja de montaje de la línea: dice qué máquinas y posiciones hay. Después elija de nuevo sus archivos.',
  toSheet: 'Importar antes una hoja',
  chooseLine: 'Elija la línea',
  slotsTitle: 'Posiciones',
  isProposal:
    'Es una propuesta para alimentadores, no un programa de colocación. No dice qué cabezal coloca qué ni cuándo; haga que las posiciones y su programa coincidan.',
  proposalHelp:
    'Los componentes siguen donde están en la línea o en otros montajes. Los nuevos reciben posiciones libres.',
  propose: 'Proponer posiciones',
  proposeAgain: 'Proponer otra vez',
  proposing: 'Buscando posiciones…',
  stopProposing: 'Parar',
  proposeFailed: 'No se pudo hacer una propuesta. Inténtelo de nuevo o elija posiciones a mano.',
  toPutIn: (count) => plural(count, '1 alimentador por poner', `${count} alimentadores por poner`),
  difference: (fresh, moves, stays) =>
    `${plural(fresh, '1 nuevo', `${fresh} nuevos`)}, ${moves} de otra posición de la línea. ${plural(stays, '1 alimentador se queda', `${stays} alimentadores se quedan`)}.`,
  comeOut: (count) =>
    `${plural(count, 'Otro alimentador estorba y debe salir', `Otros ${count} alimentadores estorban y deben salir`)}.`,
  openTitle: (count) => plural(count, '1 componente sin posición', `${count} componentes sin posición`),
  leftTitle: (count) =>
    plural(count, '1 componente que esta línea no coloca', `${count} componentes que esta línea no coloca`),
  reasons: {
    'too-wide': 'Su alimentador es más ancho que cualquier banco de la línea.',
    'no-room': 'No queda sitio en la línea.',
  },
  noneYet: 'Aún no se ha propuesto posición.',
  ownPlaces: 'Sitios propios',
  perPanel: (count) => `${count} por panel`,
  stays: 'se queda',
  moves: (from) => `desde ${from}`,
  fresh: 'nuevo',
  inFile: (part) => `${part} en el archivo`,
  said: 'elegida por usted',
  asIn: (product) => `como en ${product}`,
  width: {
    tray: 'en bandejas',
    maybeTray: '¿en bandejas?',
    said: (mm) => `${mm} mm`,
    setup: (mm) => `${mm} mm`,
    usual: (mm) => `¿${mm} mm?`,
    none: 'ancho desconocido',
  },
  faults: {
    'on-trays': 'Aquí hay bandejas, no alimentadores.',
    'no-tray': 'Viene en bandejas; aquí hay alimentadores.',
    'look-alike': (part, slot) => `Fácil de confundir con ${part}, al lado en ${slot}.`,
    overlap: (part, slot) => `Estorba a ${part} en ${slot}.`,
    'over-end': (positions) =>
      `Su alimentador ocupa ${plural(positions, '1 posición', `${positions} posiciones`)} y pasa del final del banco.`,
    'off-line': 'La línea no tiene esa posición.',
    'lane-wide': (positions) =>
      `Su alimentador ocupa ${plural(positions, '1 posición', `${positions} posiciones`)}; en un carril solo cabe una.`,
    'lane-width': (part) =>
      `El carril de al lado lleva ${part} con otro ancho de cinta. Compruebe el alimentador.`,
  },
  addBoard: 'Proponer con otra placa',
  together: (boards) => `Se propone junto con: ${boards}. Así se ponen los menos alimentadores entre todas.`,
  heldTitle: 'Placas que esperan',
  goOnWith: (board) => `Seguir con ${board}`,
  dragHelp: 'Arrastre una pieza por su asa a otra posición, o tóquela.',
  freeOne: (slot) => `Libre: ${slot}`,
  freeRange: (first, last) => `Libres: de ${first} a ${last}`,
  bankOfTrays: (bank) => `${bank}: bandejas`,
  change: (part) => `${part}: cambiar la posición`,
  tapeWidth: 'Ancho de cinta',
  widthUnknown: 'desconocido',
  widthFrom: {
    said: 'Lo dijo usted.',
    setup: 'Del montaje más nuevo con este componente.',
    list: 'De la lista de componentes.',
    usual:
      'Habitual en su encapsulado. Solo cuenta para el sitio; los alimentadores no se comprueban con él.',
    none: 'Su alimentador cuenta como una posición hasta que diga más.',
  },
  widthsUnknown: (count) =>
    `${plural(count, '1 componente no tiene', `${count} componentes no tienen`)} un ancho de cinta conocido. Cada alimentador cuenta como una posición: toque el componente y diga el ancho de su cinta.`,
  bank: 'Máquina y banco',
  legend: '■ en este montaje · □ ahora hay un alimentador',
  free: (slot) => `${slot} está libre.`,
  here: (slot) => `Ya está en ${slot}.`,
  swaps: (slot, other, back) => `${other} está en ${slot}. Pasa a ${back}.`,
  pushes: (slot, other) => `${other} está en ${slot}. Se queda sin posición.`,
  takesOut: (slot, part) => `${part} está ahora ahí en la línea. Hay que sacarlo de ${slot}.`,
  moveHere: (slot) => `Usar ${slot}`,
  chooseSlot: 'Elija antes una posición',
  leaveOut: 'Esta línea no lo coloca',
  takeBack: 'Esta línea lo coloca',
  close: 'Cerrar',
  paper: {
    title: 'Hoja de carga',
    print: 'Imprimir la hoja de carga',
    perPanel: 'Por panel',
    feeder: 'Alimentador',
  },
  noSlots: 'Proponga antes las posiciones',
  slotsOpen: (count) =>
    `${plural(count, '1 componente no tiene', `${count} componentes no tienen`)} posición: dele una o diga que esta línea no lo coloca`,
  slotsFaulty: (count) =>
    `${plural(count, '1 posición estorba', `${count} posiciones estorban`)} a otra o no tiene sitio: elija otra`,
};
