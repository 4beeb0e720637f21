import type { RuleField } from '../../../../shared/labels/rules.ts';
import type { words as english } from '../en/teach.ts';
import type { Problems } from '../teach.ts';
import { plural, type Sentences } from '../words.ts';

const fieldsEs: Readonly<Record<RuleField, string>> = {
  part: 'Referencia propia',
  supplierPart: 'Referencia del proveedor',
  quantity: 'Cantidad',
  lot: 'Lote',
  dateCode: 'Código de fecha',
  expires: 'Usar antes de',
  reel: 'Id de bobina',
  supplier: 'Proveedor',
  country: 'País',
  msl: 'MSL',
  order: 'Pedido',
};

const problemsEs: Problems = {
  'nothing-tapped': 'Toque un trozo y diga qué es',
  'tap-outside': 'Un trozo sale del código',
  'taps-overlap': 'Dos trozos se pisan',
  'field-tapped-twice': 'Dos trozos tienen el mismo significado',
  'too-loose': 'Valdría para casi cualquier etiqueta: nombre otro trozo',
  'too-long': 'La etiqueta es demasiado larga para una regla',
};

export const words: Sentences<typeof english> = {
  fields: fieldsEs,
  problems: problemsEs,
  listHelp: 'Escanee cualquier etiqueta para ver cómo se lee.',
  teach: 'Enseñar una etiqueta',
  export: 'Guardar las reglas en un archivo',
  exported: (name) => `Guardado como ${name}.`,
  import: 'Importar reglas de un archivo',
  importTitle: 'Reglas de este archivo',
  importFailed: 'Este archivo no se ha importado',
  importAgain:
    'No se ha cambiado nada. Corrija el archivo o guarde de nuevo las reglas en su origen. Luego elíjalo otra vez.',
  importProblems: {
    'not-json': 'El archivo no se puede leer como JSON: está cortado o es de otro tipo.',
    'no-list': 'El archivo no contiene una lista de reglas.',
    empty: 'La lista del archivo está vacía.',
    'not-a-rule': (rule, at) => `La regla «${rule}» no es válida${at === '' ? '' : `: mire en ${at}`}.`,
    twice: (rule) => `La regla «${rule}» está dos veces en el archivo: deje una.`,
  },
  importStatus: {
    new: (version) => `+ nueva, versión ${version}`,
    newer: (version, here) => `↑ la versión ${version} sustituye a la ${here}`,
    same: (version) => `= igual aquí, versión ${version}`,
    older: (version, here) => `△ la versión ${version} es anterior a la ${here} de aquí: no se importa`,
    differs: (version) =>
      `△ otra regla es aquí la versión ${version}: no se importa hasta que el archivo le dé una versión mayor`,
    fails: (version) => `✕ la versión ${version} no lee sus propios ejemplos: no se importa`,
  },
  importNothing: 'Ninguna regla de este archivo es nueva ni posterior.',
  importTake: (count) => plural(count, 'Importar 1 regla', `Importar ${count} reglas`),
  imported: (count) => plural(count, '1 regla importada.', `${count} reglas importadas.`),
  none: 'Aún no se ha enseñado ninguna etiqueta.',
  noneHelp: 'Las etiquetas estándar no necesitan regla. Escanee una que no se lea y enséñela una vez.',
  version: (version) => `versión ${version}`,
  approvedBy: (name, when) => `aprobada por ${name}, ${when}`,
  needsAll: (count) =>
    `${plural(count, 'Su código debe', `Sus ${count} códigos deben`)} estar en una misma imagen de la cámara o teclearse juntos.`,
  examples: (count) => plural(count, 'lee su ejemplo', `lee sus ${count} ejemplos`),
  examplesFail: (failed, count) =>
    plural(count, 'lee de otro modo su ejemplo', `lee de otro modo ${failed} de sus ${count} ejemplos`),
  again: 'Enseñar otra vez',
  withdraw: 'Retirar',
  withdrawTitle: (rule) => `Retirar la regla «${rule}»`,
  withdrawWhy: '¿Por qué?',
  withdrawn: (rule) => `Ya no se lee por «${rule}».`,
  pieces: {
    digits: (length) => (length === null ? 'cifras' : plural(length, '1 cifra', `${length} cifras`)),
    letters: (length) => (length === null ? 'letras' : plural(length, '1 letra', `${length} letras`)),
    alphanumeric: (length) =>
      length === null ? 'letras o cifras' : plural(length, '1 letra o cifra', `${length} letras o cifras`),
    any: (length) => (length === null ? 'lo que sea' : plural(length, '1 carácter', `${length} caracteres`)),
  },
  skipped: 'se omite',
  scanned: 'Recién escaneado',
  readBy: (rule) => `leída por la regla «${rule}»`,
  readByStandard: 'leída por una norma',
  notRead: 'No se lee nada de ella.',
  teachThis: 'Enseñar esta etiqueta',
  lookAgain: 'Vaciar',
  codesTitle: 'La etiqueta',
  codesHelp: 'Escanee cada código de una etiqueta; cada escaneo se añade.',
  waiting: 'Esperando un escaneo…',
  addTyped: 'Teclear un código',
  remove: 'Quitar este código',
  alreadyRead: 'Esta etiqueta ya se lee sin regla:',
  tapHelp: 'Toque un trozo y diga qué es. Toque otro para abarcar ambos.',
  what: '¿Qué es?',
  nothing: 'Nada',
  from: 'Empieza',
  to: 'Acaba',
  earlier: 'antes',
  later: 'después',
  ruleTitle: 'La regla',
  name: 'Nombre de la regla',
  nameHelp: 'Por ejemplo, de quién son las etiquetas.',
  nameMissing: 'Nombre la regla',
  replaces: (version) => `Sustituye a la versión ${version}.`,
  datePrinted: (field) => `${field}: impreso como`,
  asPrinted: 'dejar como está impreso',
  reads: 'De esta etiqueta lee',
  pattern: 'Una etiqueta encaja si dice',
  tried: (count) =>
    plural(count, 'Probada con 1 etiqueta del registro', `Probada con ${count} etiquetas del registro`),
  trying: 'Probándola con el registro…',
  fitsNone: 'No encaja en ninguna, así que no cambia nada de lo que se lee ahora.',
  fits: (count) => plural(count, 'Encaja en 1:', `Encaja en ${count}:`),
  contradicts: (count) =>
    plural(
      count,
      '1 se leyó antes de otro modo. Haga la regla más estrecha.',
      `${count} se leyeron antes de otro modo. Haga la regla más estrecha.`,
    ),
  fitsAlso: (rule, count) =>
    plural(
      count,
      `La regla «${rule}» también encaja en 1 de ellas.`,
      `La regla «${rule}» también encaja en ${count} de ellas.`,
    ),
  disagrees: (rule, count) =>
    plural(
      count,
      `La regla «${rule}» también encaja en 1 de ellas y la lee de otro modo. Haga una de las dos más estrecha.`,
      `La regla «${rule}» también encaja en ${count} de ellas y las lee de otro modo. Haga una de las dos más estrecha.`,
    ),
  readsAnew: (count) => `Dice más que antes de: ${count}.`,
  variedTitle: 'Etiquetas inventadas a partir de esta',
  variedNot: 'No se lee: aquí cada pieza debe ser tan larga como en la etiqueta enseñada.',
  before: 'antes',
  now: 'con esta regla',
  lostExamples: (count) =>
    plural(
      count,
      '1 etiqueta que lee la versión actual ya no se lee.',
      `${count} etiquetas que lee la versión actual ya no se leen.`,
    ),
  approve: 'Pedir aprobación de un jefe de turno',
  approveTitle: (rule) => `Aprobar la regla «${rule}»`,
  approveHelp: 'Todas las tabletas leerán así las etiquetas de esta clase.',
  approved: (rule) => `Ahora se lee por «${rule}».`,
  doesNotRead: 'No lee la etiqueta como se tocó',
};
