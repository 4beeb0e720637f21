import type { words as english } from '../en/teach.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  fields: {
    part: 'Référence interne',
    supplierPart: 'Référence fournisseur',
    quantity: 'Quantité',
    lot: 'Lot',
    dateCode: 'Code date',
    expires: 'À utiliser avant',
    reel: 'ID de bobine',
    supplier: 'Fournisseur',
    country: 'Pays',
    msl: 'MSL',
    order: 'Commande',
  },
  problems: {
    'nothing-tapped': 'Touchez un morceau et dites ce que c’est',
    'tap-outside': 'Un morceau dépasse le code',
    'taps-overlap': 'Deux morceaux se chevauchent',
    'field-tapped-twice': 'Deux morceaux ont le même sens',
    'too-loose': 'Elle conviendrait à presque toute étiquette : nommez un morceau de plus',
    'too-long': 'L’étiquette est trop longue pour une règle',
  },
  listHelp: 'Scannez une étiquette pour voir comment elle est lue.',
  teach: 'Apprendre une étiquette',
  export: 'Enregistrer les règles',
  exported: (name) => `Enregistré sous ${name}.`,
  import: 'Importer des règles',
  importTitle: 'Règles dans ce fichier',
  importFailed: 'Ce fichier n’a pas été importé',
  importAgain:
    'Rien n’a changé. Corrigez le fichier, ou enregistrez à nouveau les règles là d’où elles viennent. Puis choisissez-le à nouveau.',
  importProblems: {
    'not-json': 'Le fichier n’est pas du JSON valide : il est coupé, ou c’est un autre type de fichier.',
    'no-list': 'Le fichier ne contient pas de liste de règles.',
    empty: 'La liste du fichier est vide.',
    'not-a-rule': (rule, at) =>
      `La règle « ${rule} » n’est pas une règle valide${at === '' ? '' : ` : voyez ${at}`}.`,
    twice: (rule) => `La règle « ${rule} » est deux fois dans le fichier : gardez-en une.`,
  },
  importStatus: {
    new: (version) => `+ nouvelle, version ${version}`,
    newer: (version, here) => `↑ version ${version} au lieu de ${here}`,
    same: (version) => `= identique ici, version ${version}`,
    older: (version, here) => `△ la version ${version} est plus ancienne que la ${here} ici : non importée`,
    differs: (version) =>
      `△ une autre règle est ici la version ${version} : non importée tant que le fichier ne lui donne pas une version plus haute`,
    fails: (version) => `✕ la version ${version} ne lit pas ses propres exemples : non importée`,
  },
  importNothing: 'Aucune règle de ce fichier n’est nouvelle ni plus récente.',
  importTake: (count) => plural(count, `Importer ${count} règle`, `Importer ${count} règles`),
  imported: (count) => plural(count, `${count} règle importée.`, `${count} règles importées.`),
  none: 'Aucune étiquette n’a encore été apprise.',
  noneHelp:
    'Les étiquettes normées ne demandent pas de règle. Scannez une étiquette qui n’est pas lue, puis apprenez-la une fois.',
  version: (version) => `version ${version}`,
  approvedBy: (name, when) => `approuvée par ${name}, ${when}`,
  needsAll: (count) =>
    `${plural(count, 'Son code doit', `Ses ${count} codes doivent`)} être dans une même image de la caméra, ou saisis ensemble.`,
  examples: (count) => plural(count, 'lit son exemple', `lit ses ${count} exemples`),
  examplesFail: (failed, count) =>
    plural(count, 'lit son exemple autrement', `lit autrement ${failed} de ses ${count} exemples`),
  again: 'Apprendre à nouveau',
  withdraw: 'Retirer',
  withdrawTitle: (rule) => `Retirer la règle « ${rule} »`,
  withdrawWhy: 'Pourquoi ?',
  withdrawn: (rule) => `Les étiquettes ne sont plus lues par « ${rule} ».`,
  pieces: {
    digits: (length) =>
      length === null ? 'chiffres' : plural(length, `${length} chiffre`, `${length} chiffres`),
    letters: (length) =>
      length === null ? 'lettres' : plural(length, `${length} lettre`, `${length} lettres`),
    alphanumeric: (length) =>
      length === null
        ? 'lettres ou chiffres'
        : plural(length, `${length} lettre ou chiffre`, `${length} lettres ou chiffres`),
    any: (length) =>
      length === null ? 'n’importe quoi' : plural(length, `${length} caractère`, `${length} caractères`),
  },
  skipped: 'sauté',
  scanned: 'Scanné à l’instant',
  readBy: (rule) => `lue par la règle « ${rule} »`,
  readByStandard: 'lue par une norme',
  notRead: 'Rien dessus n’est lu.',
  teachThis: 'Apprendre cette étiquette',
  lookAgain: 'Vider',
  codesTitle: 'L’étiquette',
  codesHelp: 'Scannez chaque code d’une étiquette ; chaque scan s’y ajoute.',
  waiting: 'En attente d’un scan…',
  addTyped: 'Saisir plutôt un code',
  remove: 'Enlever ce code',
  alreadyRead: 'Cette étiquette est déjà lue sans règle :',
  tapHelp: 'Touchez un morceau, puis dites ce que c’est. Touchez un second morceau pour prendre les deux.',
  what: 'Qu’est-ce que c’est ?',
  nothing: 'Rien',
  from: 'Commence',
  to: 'Finit',
  earlier: 'plus tôt',
  later: 'plus tard',
  ruleTitle: 'La règle',
  name: 'Nom de la règle',
  nameHelp: 'Par exemple à qui sont ces étiquettes.',
  nameMissing: 'Nommez la règle',
  replaces: (version) => `Remplace la version ${version}.`,
  datePrinted: (field) => `${field} : imprimé comme`,
  asPrinted: 'laisser comme imprimé',
  reads: 'Elle lit sur cette étiquette',
  pattern: 'Une étiquette convient si elle dit',
  tried: (count) =>
    plural(count, `Essayée sur ${count} étiquette du journal`, `Essayée sur ${count} étiquettes du journal`),
  trying: 'Essai sur le journal…',
  fitsNone: 'Elle ne convient à aucune : rien de ce qui est lu aujourd’hui ne change.',
  fits: (count) => `Elle convient à ${count} d’entre elles :`,
  contradicts: (count) =>
    plural(
      count,
      `${count} était lue autrement avant. Resserrez la règle.`,
      `${count} étaient lues autrement avant. Resserrez la règle.`,
    ),
  fitsAlso: (rule, count) => `La règle « ${rule} » convient aussi à ${count} d’entre elles.`,
  disagrees: (rule, count) =>
    plural(
      count,
      `La règle « ${rule} » convient aussi à ${count} d’entre elles et la lit autrement. Resserrez l’une des deux.`,
      `La règle « ${rule} » convient aussi à ${count} d’entre elles et les lit autrement. Resserrez l’une des deux.`,
    ),
  readsAnew: (count) => `En dit plus qu’avant : ${count}.`,
  variedTitle: 'Étiquettes formées à partir de celle-ci',
  variedNot: 'Non lue : ici chaque partie doit être aussi longue que sur l’étiquette apprise.',
  before: 'avant',
  now: 'avec cette règle',
  lostExamples: (count) =>
    plural(
      count,
      `${count} étiquette que lit la version actuelle n’est plus lue.`,
      `${count} étiquettes que lit la version actuelle ne sont plus lues.`,
    ),
  approve: 'Faire approuver par un chef',
  approveTitle: (rule) => `Approuver la règle « ${rule} »`,
  approveHelp: 'Chaque tablette lit alors les étiquettes de ce type par cette règle.',
  approved: (rule) => `Les étiquettes sont maintenant lues par « ${rule} ».`,
  doesNotRead: 'Elle ne lit pas l’étiquette comme touché',
};
