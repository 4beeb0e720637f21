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
    import: 'Take rules from a file',
    importTitle: 'Rules in this file',
    importFailed: 'This file was not taken in',
    importAgain:
      'Nothing was changed. Correct the file, or save the rules anew where they come from, and choose it again.',
    importProblems: {
      'not-json': 'The file is not readable as JSON: it is cut off, or it is another kind of file.',
      'no-list': 'The file holds no list of rules.',
      empty: 'The list in the file is empty.',
      'not-a-rule': (rule: string, at: string) =>
        `Rule “${rule}” is not as a rule must be${at === '' ? '' : `: look at ${at}`}.`,
      twice: (rule: string) => `Rule “${rule}” is in the file twice: keep one.`,
    },
    importStatus: {
      new: (version: number, _here: number) => `+ new, version ${version}`,
      newer: (version: number, here: number) => `↑ version ${version} takes the place of ${here}`,
      same: (version: number, _here: number) => `= the same here, version ${version}`,
      older: (version: number, here: number) => `△ version ${version} is older than ${here} here: stays out`,
      differs: (version: number, _here: number) =>
        `△ another rule is version ${version} here: stays out until the file gives it a higher version`,
      fails: (version: number, _here: number) =>
        `✕ version ${version} does not read its own examples: stays out`,
    },
    importNothing: 'No rule in this file is new or newer.',
    importTake: (count: number) => (count === 1 ? 'Take in 1 rule' : `Take in ${count} rules`),
    imported: (count: number) => (count === 1 ? '1 rule taken in.' : `${count} rules taken in.`),
    none: 'No label has been taught yet.',
    noneHelp:
      'Labels by the usual standards are read without any rule. Scan one that is not, then teach it once.',
    version: (version: number) => `version ${version}`,
    approvedBy: (name: string, when: string) => `approved by ${name}, ${when}`,
    needsAll: (count: number) =>
      `${plural(count, 'Its code', `Its ${count} codes`)} must come in one look of the camera, or be typed together.`,
    examples: (count: number) => plural(count, 'reads its example', `reads its ${count} examples`),
    examplesFail: (failed: number, count: number) =>
      plural(count, 'reads its example otherwise', `reads ${failed} of its ${count} examples otherwise`),
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
    remove: 'Take this code off',
    alreadyRead: 'This label is read already without a rule:',
    tapHelp: 'Tap a piece, then say what it is. Tap a second piece to stretch over both.',
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
    replaces: (version: number) => `Takes the place of version ${version}.`,
    datePrinted: (field: string) => `${field}: printed as`,
    asPrinted: 'leave as printed',
    reads: 'It reads from this label',
    pattern: 'A label fits when it says',
    tried: (count: string) =>
      plural(count, 'Tried against 1 label in the log', `Tried against ${count} labels in the log`),
    trying: 'Trying it against the log…',
    fitsNone: 'It fits none of them, so nothing that is read now changes.',
    fits: (count: number) => plural(count, 'It fits 1 of them:', `It fits ${count} of them:`),
    contradicts: (count: number) =>
      plural(
        count,
        '1 was read otherwise before. Make the rule tighter.',
        `${count} were read otherwise before. Make the rule tighter.`,
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
        '1 label that the present version reads is not read any more.',
        `${count} labels that the present version reads are not read any more.`,
      ),
    approve: 'A lead approves it',
    approveTitle: (rule: string) => `Approve the rule “${rule}”`,
    approveHelp: 'From now on every tablet reads labels of this kind by it.',
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
    import: 'Tomar reglas de un archivo',
    importTitle: 'Reglas de este archivo',
    importFailed: 'Este archivo no se ha tomado',
    importAgain:
      'No se ha cambiado nada. Corrija el archivo, o guarde de nuevo las reglas donde vienen, y elíjalo otra vez.',
    importProblems: {
      'not-json': 'El archivo no se puede leer como JSON: está cortado o es de otro tipo.',
      'no-list': 'El archivo no contiene una lista de reglas.',
      empty: 'La lista del archivo está vacía.',
      'not-a-rule': (rule, at) =>
        `La regla «${rule}» no es como debe ser una regla${at === '' ? '' : `: mire en ${at}`}.`,
      twice: (rule) => `La regla «${rule}» está dos veces en el archivo: deje una.`,
    },
    importStatus: {
      new: (version) => `+ nueva, versión ${version}`,
      newer: (version, here) => `↑ la versión ${version} sustituye a la ${here}`,
      same: (version) => `= igual aquí, versión ${version}`,
      older: (version, here) => `△ la versión ${version} es anterior a la ${here} de aquí: queda fuera`,
      differs: (version) =>
        `△ otra regla es aquí la versión ${version}: queda fuera hasta que el archivo le dé una versión mayor`,
      fails: (version) => `✕ la versión ${version} no lee sus propios ejemplos: queda fuera`,
    },
    importNothing: 'Ninguna regla de este archivo es nueva ni posterior.',
    importTake: (count) => (count === 1 ? 'Tomar 1 regla' : `Tomar ${count} reglas`),
    imported: (count) => (count === 1 ? '1 regla tomada.' : `${count} reglas tomadas.`),
    none: 'Aún no se ha enseñado ninguna etiqueta.',
    noneHelp:
      'Las etiquetas según las normas usuales se leen sin regla. Escanee una que no lo sea y enséñela una vez.',
    version: (version) => `versión ${version}`,
    approvedBy: (name, when) => `aprobada por ${name}, ${when}`,
    needsAll: (count) =>
      `${plural(count, 'Su código debe', `Sus ${count} códigos deben`)} llegar en una misma mirada de la cámara o tecleados juntos.`,
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
    approve: 'Un jefe la aprueba',
    approveTitle: (rule) => `Aprobar la regla «${rule}»`,
    approveHelp: 'Desde ahora todas las tabletas leen así las etiquetas de esta clase.',
    approved: (rule) => `Ahora se lee por «${rule}».`,
    doesNotRead: 'No lee la etiqueta como se tocó',
  },
});
