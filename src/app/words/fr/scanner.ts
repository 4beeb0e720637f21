import type { words as english } from '../en/scanner.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  layouts: {
    us: 'anglais (États-Unis)',
    uk: 'anglais (Royaume-Uni)',
    german: 'allemand',
    'swiss-german': 'suisse allemand',
    french: 'français',
    spanish: 'espagnol',
    italian: 'italien',
    swedish: 'suédois',
  },
  title: 'Scannez ce code avec le lecteur',
  help: 'Depuis cet écran, un autre, ou la feuille imprimée. Tant que cette page est ouverte, les scans ne vont nulle part ailleurs.',
  codeLabel: 'Code d’étalonnage',
  striped: 'Un lecteur qui ne lit que les codes-barres',
  stripedLabel: 'Code-barres d’étalonnage',
  stripedHelp:
    'Trop large pour un petit écran : là, imprimez la feuille. Les codes-barres portent un seul séparateur, donc seul celui-ci est testé.',
  stripedSheet: 'Pour un lecteur qui ne lit que les codes-barres :',
  print: 'Imprimer la feuille',
  waiting: 'En attente d’un scan…',
  right: 'Ce lecteur est bien réglé.',
  rightText: 'Lettres, signes et séparateurs arrivent comme imprimés.',
  plainOnly: 'Les codes simples sont lus ; les étiquettes avec séparateurs non.',
  plainOnlyText: 'Ces étiquettes sont refusées jusqu’à ce que le lecteur soit réglé comme ci-dessous.',
  wrong: 'On ne peut pas encore se fier à ce lecteur.',
  wrongText: 'Ce qu’il scanne n’arrive pas comme imprimé.',
  findings: {
    'all-equal': 'Chaque caractère est arrivé comme imprimé.',
    'half-arrived': (found, wanted) =>
      `Seulement ${plural(wanted, `${found} caractère sur ${wanted} est arrivé`, `${found} caractères sur ${wanted} sont arrivés`)} : le scan a été coupé. Mettez le délai entre caractères à zéro, ou rapprochez le lecteur de sa base.`,
    'layout-differs': (scanner, tablet) =>
      `Le lecteur tape pour un clavier ${scanner}, la tablette attend ${tablet}. Réglez le clavier du lecteur sur ${tablet}, ou la disposition de la tablette sur ${scanner}.`,
    'characters-differ':
      'Des caractères arrivent changés, et aucune disposition de clavier connue ici ne l’explique. Réglez le clavier du lecteur sur la disposition de la tablette et scannez à nouveau.',
    'case-inverted':
      'Majuscules et minuscules arrivent inversées. Désactivez Verr. Maj. et réglez le lecteur pour laisser les lettres comme imprimées.',
    'separators-lost': (names) =>
      `Des séparateurs n’arrivent pas (${names}). Réglez le lecteur pour envoyer les caractères de contrôle, en Ctrl avec une touche ou en Alt avec le pavé numérique.`,
    'separator-replaced': (name, by) =>
      `Le séparateur ${name} arrive comme « ${by} ». Réglez le lecteur pour envoyer les caractères de contrôle tels quels.`,
    'terminator-missing':
      'Pas d’Entrée à la fin : la fin d’un scan est devinée. Réglez le suffixe du lecteur sur Entrée.',
    'unknown-key': (key) =>
      `La touche « ${key} » est venue au milieu du scan. Enlevez ces touches des réglages du lecteur.`,
    slow: (pace) => `${pace} ms entre deux caractères, c’est lent. Mettez le délai entre caractères à zéro.`,
    'symbology-id-sent': (id) =>
      `Le lecteur envoie d’abord le type de code (${id}). C’est compris et peut rester.`,
  },
  wanted: 'imprimé',
  found: 'arrivé',
  label: {
    title: 'Scannez une étiquette imprimée',
    help: 'D’un emplacement, d’un feeder, d’un badge ou d’une bobine.',
    read: 'Cette étiquette est lue.',
    unknown: 'Cette tablette ne connaît pas cette étiquette.',
    unknownHelp:
      'Scannez-la encore. Si cela n’aide pas, imprimez-la plus grande ou ajoutez-la d’abord à l’usine.',
  },
  arrived: 'Ce qui est arrivé',
  none: 'Rien encore. Scannez : cela s’affiche ici, caractères de contrôle compris.',
  characters: (count) => plural(count, `${count} caractère`, `${count} caractères`),
  pace: (ms) => `${ms} ms chacun`,
  endedBy: { Enter: 'puis Entrée', Tab: 'puis Tab', silence: 'pas d’Entrée' },
  reads: 'lu comme',
  readsNothing: 'aucune étiquette connue',
  settingsTitle: 'Comment régler un lecteur',
  settings: [
    'Fonctionne comme un clavier (HID).',
    'Pays du clavier : le même que celui de la tablette.',
    'Envoie les caractères de contrôle, en Ctrl avec une touche ou en Alt avec le pavé numérique.',
    'Suffixe : Entrée. Pas de préfixe.',
    'Lettres comme imprimées : pas de changement de casse.',
    'Pas de délai entre caractères.',
  ],
  keep: 'Enregistrer le rythme de ce lecteur sur cette tablette',
  keptNow: 'Enregistré. Cette tablette distingue les scans de la saisie par ce rythme.',
  isKept: 'Cette tablette a enregistré le rythme de son lecteur.',
  forget: 'Prendre le rythme usuel',
  sheetTitle: 'Étalonnage du lecteur',
  sheetText: 'Ouvrez Usine, Lecteur sur la tablette, puis scannez ce code.',
  sheetHolds: 'Le code contient :',
  fields: {
    part: 'composant',
    supplierPart: 'référence fournisseur',
    quantity: 'quantité',
    lot: 'lot',
    dateCode: 'code date',
    reel: 'bobine',
  },
};
