import type { RuleField } from '../../../shared/labels/rules.ts';
import type { TeachProblem } from '../../../shared/labels/teach.ts';
import { area, plural } from './words.ts';

const fieldsEn: Readonly<Record<RuleField, string>> = {
  part: 'Site part number',
  supplierPart: 'Supplier part number',
  quantity: 'Quantity',
  lot: 'Lot',
  dateCode: 'Date code',
  expires: 'Use before',
  reel: 'Reel id',
  supplier: 'Supplier',
  country: 'Country',
  msl: 'MSL',
  order: 'Order',
};

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

type Problems = Readonly<Record<TeachProblem['code'], string>>;

const problemsEn: Problems = {
  'nothing-tapped': 'Tap a piece and say what it is',
  'tap-outside': 'A piece reaches beyond the code',
  'taps-overlap': 'Two pieces overlap',
  'field-tapped-twice': 'Two pieces have the same meaning',
  'too-loose': 'It would fit almost any label: name one more piece',
  'too-long': 'The label is too long for a rule',
};

const problemsEs: Problems = {
  'nothing-tapped': 'Toque una pieza y diga qué es',
  'tap-outside': 'Una pieza sale del código',
  'taps-overlap': 'Dos piezas se pisan',
  'field-tapped-twice': 'Dos piezas tienen el mismo significado',
  'too-loose': 'Valdría para casi cualquier etiqueta: nombre otra pieza',
  'too-long': 'La etiqueta es demasiado larga para una regla',
};

/** Teaching labels that follow no standard. */
export const teachWords = area({
  en: {
    fields: fieldsEn,
    problems: problemsEn,
    listHelp: 'Scan any label to see how it is read.',
    teach: 'Teach a label',
    export: 'Save the rules as a file',
    exported: (name: string) => `Saved as ${name}.`,
    import: 'Import rules from a file',
    importTitle: 'Rules in this file',
    importFailed: 'This file was not imported',
    importAgain:
      'Nothing was changed. Correct the file, or save the rules again where they come from. Then choose it again.',
    importProblems: {
      'not-json': 'The file is not valid JSON: it is cut off, or another kind of file.',
      'no-list': 'The file holds no list of rules.',
      empty: 'The list in the file is empty.',
      'not-a-rule': (rule: string, at: string) =>
        `Rule “${rule}” is not a valid rule${at === '' ? '' : `: look at ${at}`}.`,
      twice: (rule: string) => `Rule “${rule}” is in the file twice: keep one.`,
    },
    importStatus: {
      new: (version: number, _here: number) => `+ new, version ${version}`,
      newer: (version: number, here: number) => `↑ version ${version} instead of ${here}`,
      same: (version: number, _here: number) => `= the same here, version ${version}`,
      older: (version: number, here: number) =>
        `△ version ${version} is older than ${here} here: not imported`,
      differs: (version: number, _here: number) =>
        `△ another rule is version ${version} here: not imported until the file gives it a higher version`,
      fails: (version: number, _here: number) =>
        `✕ version ${version} does not read its own examples: not imported`,
    },
    importNothing: 'No rule in this file is new or newer.',
    importTake: (count: number) => plural(count, 'Import 1 rule', `Import ${count} rules`),
    imported: (count: number) => plural(count, '1 rule imported.', `${count} rules imported.`),
    none: 'No label has been taught yet.',
    noneHelp: 'Standard labels need no rule. Scan a label that is not read, then teach it once.',
    version: (version: number) => `version ${version}`,
    approvedBy: (name: string, when: string) => `approved by ${name}, ${when}`,
    needsAll: (count: number) =>
      `${plural(count, 'Its code', `Its ${count} codes`)} must be in one camera picture, or typed together.`,
    examples: (count: number) => plural(count, 'reads its example', `reads its ${count} examples`),
    examplesFail: (failed: number, count: number) =>
      plural(count, 'reads its example differently', `reads ${failed} of its ${count} examples differently`),
    again: 'Teach again',
    withdraw: 'Withdraw',
    withdrawTitle: (rule: string) => `Withdraw the rule “${rule}”`,
    withdrawWhy: 'Why?',
    withdrawn: (rule: string) => `Labels are no longer read by “${rule}”.`,
    pieces: {
      digits: (length: number | null) =>
        length === null ? 'digits' : plural(length, '1 digit', `${length} digits`),
      letters: (length: number | null) =>
        length === null ? 'letters' : plural(length, '1 letter', `${length} letters`),
      alphanumeric: (length: number | null) =>
        length === null
          ? 'letters or digits'
          : plural(length, '1 letter or digit', `${length} letters or digits`),
      any: (length: number | null) =>
        length === null ? 'anything' : plural(length, '1 character', `${length} characters`),
    },
    skipped: 'skipped',
    scanned: 'Scanned just now',
    readBy: (rule: string) => `read by the rule “${rule}”`,
    readByStandard: 'read by a standard',
    notRead: 'Nothing on it is read.',
    teachThis: 'Teach this label',
    lookAgain: 'Clear',
    codesTitle: 'The label',
    codesHelp: 'Scan every code on one label; each scan adds to it.',
    waiting: 'Waiting for a scan…',
    addTyped: 'Type a code instead',
    remove: 'Remove this code',
    alreadyRead: 'This label is already read without a rule:',
    tapHelp: 'Tap a piece, then say what it is. Tap a second piece to cover both.',
    what: 'What is it?',
    nothing: 'Nothing',
    from: 'Begins',
    to: 'Ends',
    earlier: 'earlier',
    later: 'later',
    ruleTitle: 'The rule',
    name: 'Name of the rule',
    nameHelp: 'For instance whose labels they are.',
    nameMissing: 'Name the rule',
    replaces: (version: number) => `Replaces version ${version}.`,
    datePrinted: (field: string) => `${field}: printed as`,
    asPrinted: 'leave as printed',
    reads: 'It reads from this label',
    pattern: 'A label fits if it says',
    tried: (count: string) =>
      plural(count, 'Tried against 1 label in the log', `Tried against ${count} labels in the log`),
    trying: 'Trying it against the log…',
    fitsNone: 'It fits none of them, so nothing that is read now changes.',
    fits: (count: number) => plural(count, 'It fits 1 of them:', `It fits ${count} of them:`),
    contradicts: (count: number) =>
      plural(
        count,
        '1 was read differently before. Make the rule tighter.',
        `${count} were read differently before. Make the rule tighter.`,
      ),
    fitsAlso: (rule: string, count: number) =>
      plural(
        count,
        `The rule “${rule}” fits 1 of them too.`,
        `The rule “${rule}” fits ${count} of them too.`,
      ),
    disagrees: (rule: string, count: number) =>
      plural(
        count,
        `The rule “${rule}” fits 1 of them too and reads it differently. Make one of the two tighter.`,
        `The rule “${rule}” fits ${count} of them too and reads them differently. Make one of the two tighter.`,
      ),
    before: 'before',
    now: 'with this rule',
    lostExamples: (count: number) =>
      plural(
        count,
        '1 label that the current version reads is no longer read.',
        `${count} labels that the current version reads are no longer read.`,
      ),
    approve: 'Let a lead approve it',
    approveTitle: (rule: string) => `Approve the rule “${rule}”`,
    approveHelp: 'Every tablet then reads labels of this kind by this rule.',
    approved: (rule: string) => `Labels are now read by “${rule}”.`,
    doesNotRead: 'It does not read the label as tapped',
  },
  es: {
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
      any: (length) =>
        length === null ? 'lo que sea' : plural(length, '1 carácter', `${length} caracteres`),
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
    tapHelp: 'Toque una pieza y diga qué es. Toque otra para abarcar ambas.',
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
    before: 'antes',
    now: 'con esta regla',
    lostExamples: (count) =>
      plural(
        count,
        '1 etiqueta que lee la versión actual ya no se lee.',
        `${count} etiquetas que lee la versión actual ya no se leen.`,
      ),
    approve: 'Pedir aprobación de un jefe',
    approveTitle: (rule) => `Aprobar la regla «${rule}»`,
    approveHelp: 'Todas las tabletas leerán así las etiquetas de esta clase.',
    approved: (rule) => `Ahora se lee por «${rule}».`,
    doesNotRead: 'No lee la etiqueta como se tocó',
  },
});
