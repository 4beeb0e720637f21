import type { words as english } from '../en/teach.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  fields: {
    part: 'Eigene Teilenummer',
    supplierPart: 'Teilenummer des Lieferanten',
    quantity: 'Menge',
    lot: 'Charge',
    dateCode: 'Datumscode',
    expires: 'Verwendbar bis',
    reel: 'Rollen-ID',
    supplier: 'Lieferant',
    country: 'Land',
    msl: 'MSL',
    order: 'Bestellung',
  },
  problems: {
    'nothing-tapped': 'Tippen Sie ein Stück an und sagen Sie, was es ist',
    'tap-outside': 'Ein Stück reicht über den Code hinaus',
    'taps-overlap': 'Zwei Stücke überlappen sich',
    'field-tapped-twice': 'Zwei Stücke haben dieselbe Bedeutung',
    'too-loose': 'Die Regel würde auf fast jedes Etikett passen: Benennen Sie ein weiteres Stück',
    'too-long': 'Das Etikett ist zu lang für eine Regel',
  },
  listHelp: 'Scannen Sie ein Etikett, um zu sehen, wie es gelesen wird.',
  teach: 'Etikett anlernen',
  export: 'Regeln als Datei speichern',
  exported: (name) => `Gespeichert als ${name}.`,
  import: 'Regeln aus Datei importieren',
  importTitle: 'Regeln in dieser Datei',
  importFailed: 'Diese Datei wurde nicht importiert',
  importAgain:
    'Nichts wurde geändert. Berichtigen Sie die Datei, oder speichern Sie die Regeln dort neu, wo sie herkommen. Dann wählen Sie sie wieder.',
  importProblems: {
    'not-json': 'Die Datei ist kein gültiges JSON: Sie ist abgeschnitten oder eine andere Art Datei.',
    'no-list': 'Die Datei enthält keine Liste von Regeln.',
    empty: 'Die Liste in der Datei ist leer.',
    'not-a-rule': (rule, at) =>
      `Regel „${rule}“ ist keine gültige Regel${at === '' ? '' : `: Sehen Sie ${at} an`}.`,
    twice: (rule) => `Regel „${rule}“ steht zweimal in der Datei: Behalten Sie eine.`,
  },
  importStatus: {
    new: (version) => `+ neu, Version ${version}`,
    newer: (version, here) => `↑ Version ${version} statt ${here}`,
    same: (version) => `= hier gleich, Version ${version}`,
    older: (version, here) => `△ Version ${version} ist älter als ${here} hier: nicht importiert`,
    differs: (version) =>
      `△ eine andere Regel ist hier Version ${version}: nicht importiert, bis die Datei ihr eine höhere Version gibt`,
    fails: (version) => `✕ Version ${version} liest ihre eigenen Beispiele nicht: nicht importiert`,
  },
  importNothing: 'Keine Regel in dieser Datei ist neu oder neuer.',
  importTake: (count) => plural(count, '1 Regel importieren', `${count} Regeln importieren`),
  imported: (count) => plural(count, '1 Regel importiert.', `${count} Regeln importiert.`),
  none: 'Noch wurde kein Etikett angelernt.',
  noneHelp:
    'Normetiketten brauchen keine Regel. Scannen Sie ein Etikett, das nicht gelesen wird, und lernen Sie es einmal an.',
  version: (version) => `Version ${version}`,
  approvedBy: (name, when) => `freigegeben von ${name}, ${when}`,
  needsAll: (count) =>
    `${plural(count, 'Sein Code muss', `Seine ${count} Codes müssen`)} in einem Kamerabild sein oder zusammen getippt werden.`,
  examples: (count) => plural(count, 'liest ihr Beispiel', `liest ihre ${count} Beispiele`),
  examplesFail: (failed, count) =>
    plural(count, 'liest ihr Beispiel anders', `liest ${failed} ihrer ${count} Beispiele anders`),
  again: 'Neu anlernen',
  withdraw: 'Zurückziehen',
  withdrawTitle: (rule) => `Regel „${rule}“ zurückziehen`,
  withdrawWhy: 'Warum?',
  withdrawn: (rule) => `Etiketten werden nicht mehr nach „${rule}“ gelesen.`,
  pieces: {
    digits: (length) => (length === null ? 'Ziffern' : plural(length, '1 Ziffer', `${length} Ziffern`)),
    letters: (length) =>
      length === null ? 'Buchstaben' : plural(length, '1 Buchstabe', `${length} Buchstaben`),
    alphanumeric: (length) =>
      length === null
        ? 'Buchstaben oder Ziffern'
        : plural(length, '1 Buchstabe oder Ziffer', `${length} Buchstaben oder Ziffern`),
    any: (length) => (length === null ? 'beliebig' : `${length} Zeichen`),
  },
  skipped: 'übersprungen',
  scanned: 'Gerade gescannt',
  readBy: (rule) => `gelesen nach der Regel „${rule}“`,
  readByStandard: 'gelesen nach einer Norm',
  notRead: 'Nichts darauf wird gelesen.',
  teachThis: 'Dieses Etikett anlernen',
  lookAgain: 'Leeren',
  codesTitle: 'Das Etikett',
  codesHelp: 'Scannen Sie jeden Code eines Etiketts; jeder Scan kommt dazu.',
  waiting: 'Wartet auf einen Scan…',
  addTyped: 'Stattdessen Code tippen',
  remove: 'Diesen Code entfernen',
  alreadyRead: 'Dieses Etikett wird schon ohne Regel gelesen:',
  tapHelp:
    'Tippen Sie ein Stück an, dann sagen Sie, was es ist. Tippen Sie ein zweites an, um beide zu umfassen.',
  what: 'Was ist es?',
  nothing: 'Nichts',
  from: 'Beginnt',
  to: 'Endet',
  earlier: 'früher',
  later: 'später',
  ruleTitle: 'Die Regel',
  name: 'Name der Regel',
  nameHelp: 'Zum Beispiel, wessen Etiketten es sind.',
  nameMissing: 'Der Regel einen Namen geben',
  replaces: (version) => `Ersetzt Version ${version}.`,
  datePrinted: (field) => `${field}: gedruckt als`,
  asPrinted: 'lassen wie gedruckt',
  reads: 'Sie liest aus diesem Etikett',
  pattern: 'Ein Etikett passt, wenn darauf steht',
  tried: (count) =>
    plural(count, 'An 1 Etikett im Protokoll ausprobiert', `An ${count} Etiketten im Protokoll ausprobiert`),
  trying: 'Wird am Protokoll ausprobiert…',
  fitsNone: 'Sie passt auf keines davon, also ändert sich nichts, was jetzt gelesen wird.',
  fits: (count) => plural(count, 'Sie passt auf 1 davon:', `Sie passt auf ${count} davon:`),
  contradicts: (count) =>
    plural(
      count,
      '1 wurde vorher anders gelesen. Machen Sie die Regel enger.',
      `${count} wurden vorher anders gelesen. Machen Sie die Regel enger.`,
    ),
  fitsAlso: (rule, count) => `Die Regel „${rule}“ passt auch auf ${count} davon.`,
  disagrees: (rule, count) =>
    plural(
      count,
      `Die Regel „${rule}“ passt auch auf 1 davon und liest es anders. Machen Sie eine der beiden enger.`,
      `Die Regel „${rule}“ passt auch auf ${count} davon und liest sie anders. Machen Sie eine der beiden enger.`,
    ),
  readsAnew: (count) => `Sagt mehr als vorher: ${count}.`,
  variedTitle: 'Etiketten, die aus diesem gebildet sind',
  variedNot: 'Wird nicht gelesen: Hier muss jedes Stück so lang sein wie auf dem angelernten Etikett.',
  before: 'vorher',
  now: 'mit dieser Regel',
  lostExamples: (count) =>
    plural(
      count,
      '1 Etikett, das die jetzige Version liest, wird nicht mehr gelesen.',
      `${count} Etiketten, die die jetzige Version liest, werden nicht mehr gelesen.`,
    ),
  approve: 'Schichtleiter gibt frei',
  approveTitle: (rule) => `Regel „${rule}“ freigeben`,
  approveHelp: 'Jedes Tablet liest dann Etiketten dieser Art nach dieser Regel.',
  approved: (rule) => `Etiketten werden jetzt nach „${rule}“ gelesen.`,
  doesNotRead: 'Sie liest das Etikett nicht wie angetippt',
};
