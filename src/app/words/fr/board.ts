import type { words as english } from '../en/board.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  way: 'Fichier de placement et nomenclature',
  wayHelp:
    'Pas de feuille avec des emplacements ? Commencez par le fichier de placement de la carte. Une nomenclature peut suivre ; des emplacements sont alors proposés pour votre ligne.',
  choosePlacements: 'Choisir un fichier de placement',
  isPlacements: 'Ce fichier ne nomme aucun emplacement : il est lu comme fichier de placement.',
  isBill: 'C’est une nomenclature. Choisissez maintenant le fichier de placement de la même carte.',
  readAsSheet: 'Lire comme feuille de chargement',
  billColumnsTitle: 'Colonnes de la nomenclature',
  putAway: 'Ranger',
  correctColumns: 'Corriger les colonnes',
  variant: 'Variante fabriquée',
  variantNone: 'non choisie',
  variantHelp: 'La nomenclature diffère selon la variante.',
  sidesOf: (top, bottom) => `Placements : dessus ${top}, dessous ${bottom}.`,
  notPlacedTitle: (count) =>
    `Non posés : ${plural(count, `${count} repère`, `${count} repères`)}. Listés, non comptés.`,
  left: {
    notFitted: 'Non montés',
    fiducial: 'Mires',
    testPoint: 'Points de test',
    hole: 'Trous',
    mark: 'Marques',
    throughHole: 'Traversants',
    noPart: 'Sans composant',
    doubled: 'Listés deux fois',
  },
  leftByBill: 'Non montés selon la nomenclature, ou pas dans les deux fichiers',
  noSide: 'Choisissez d’abord la face. Chaque face est un plan à part.',
  noParts: 'Aucun composant sur cette face.',
  namedByValue: (count) =>
    `${plural(count, `${count} composant n’a pas de référence et est appelé par sa valeur`, `${count} composants n’ont pas de référence et sont appelés par leur valeur`)}. Les bobines sont vérifiées sur ce nom. Ajoutez une nomenclature avec références.`,
  filesWrong: (count) =>
    `Corrigez d’abord ${plural(count, 'l’erreur', `les ${count} erreurs`)} dans les fichiers`,
  filesHelp:
    'Corrigez une colonne ci-dessus, ou corrigez le fichier et choisissez-le à nouveau. Les avertissements ne bloquent pas.',
  noLine: 'Aucune ligne avec machines et emplacements n’est encore connue.',
  noLineHelp:
    'Des emplacements ne peuvent être proposés que pour une ligne connue. Importez d’abord une feuille de chargement de la ligne ; elle dit quelles machines et quels emplacements existent. Vous pourrez ensuite choisir à nouveau vos fichiers.',
  toSheet: 'Importer d’abord une feuille',
  chooseLine: 'Choisir la ligne',
  slotsTitle: 'Emplacements',
  isProposal:
    'Ceci est une proposition pour les feeders, pas un programme de pose. Elle ne dit pas quelle tête pose quoi ni quand ; accordez les emplacements et votre programme.',
  proposalHelp:
    'Les composants restent où ils sont sur la ligne ou dans ses autres plans. Les nouveaux reçoivent des emplacements libres.',
  propose: 'Proposer des emplacements',
  proposeAgain: 'Proposer à nouveau',
  proposing: 'Recherche d’emplacements…',
  stopProposing: 'Arrêter',
  proposeFailed: 'Aucune proposition possible. Réessayez, ou choisissez les emplacements à la main.',
  toPutIn: (count) => plural(count, `${count} feeder à mettre`, `${count} feeders à mettre`),
  difference: (fresh, moves, stays) =>
    `${plural(fresh, `${fresh} nouveau`, `${fresh} nouveaux`)}, ${moves} depuis un autre emplacement de la ligne. ${plural(stays, `${stays} feeder reste`, `${stays} feeders restent`)}.`,
  comeOut: (count) =>
    plural(
      count,
      `${count} autre feeder gêne et doit sortir.`,
      `${count} autres feeders gênent et doivent sortir.`,
    ),
  openTitle: (count) =>
    plural(count, `${count} composant sans emplacement`, `${count} composants sans emplacement`),
  leftTitle: (count) =>
    plural(
      count,
      `${count} composant que cette ligne ne pose pas`,
      `${count} composants que cette ligne ne pose pas`,
    ),
  reasons: {
    'too-wide': 'Son feeder est plus large que tout banc de la ligne.',
    'no-room': 'Il ne reste pas de place sur la ligne.',
  },
  noneYet: 'Aucun emplacement n’a encore été proposé.',
  ownPlaces: 'Emplacements à part',
  perPanel: (count) => `${count} par flan`,
  stays: 'reste',
  moves: (from) => `depuis ${from}`,
  fresh: 'nouveau',
  inFile: (part) => `${part} dans le fichier`,
  said: 'choisi par vous',
  asIn: (product) => `comme dans ${product}`,
  width: {
    tray: 'sur plateaux',
    maybeTray: 'sur plateaux ?',
    said: (mm) => `${mm} mm`,
    setup: (mm) => `${mm} mm`,
    usual: (mm) => `${mm} mm ?`,
    none: 'largeur inconnue',
  },
  faults: {
    'on-trays': 'Ici il y a des plateaux, pas de feeders.',
    'no-tray': 'Elle vient sur plateaux ; ici il y a des feeders.',
    'look-alike': (part, slot) => `Facile à confondre avec ${part}, à côté en ${slot}.`,
    overlap: (part, slot) => `Gêne ${part} en ${slot}.`,
    'over-end': (positions) =>
      `Son feeder prend ${plural(positions, `${positions} position`, `${positions} positions`)} et dépasse le bout du banc.`,
    'off-line': 'La ligne n’a pas cet emplacement.',
    'lane-wide': (positions) =>
      `Son feeder prend ${plural(positions, `${positions} position`, `${positions} positions`)} ; une voie n’a de place que pour une.`,
    'lane-width': (part) =>
      `La voie d’à côté amène ${part} sur une autre largeur de bande. Vérifiez le feeder.`,
  },
  addBoard: 'Proposer avec une autre carte',
  together: (boards) => `Proposé avec : ${boards}. Ainsi le moins de feeders sont posés sur l’ensemble.`,
  heldTitle: 'Cartes en attente',
  goOnWith: (board) => `Continuer avec ${board}`,
  dragHelp: 'Faites glisser une pièce par sa poignée vers un autre emplacement, ou touchez-la.',
  freeOne: (slot) => `Libre : ${slot}`,
  freeRange: (first, last) => `Libres : de ${first} à ${last}`,
  bankOfTrays: (bank) => `${bank} : plateaux`,
  change: (part) => `${part} : changer d’emplacement`,
  tapeWidth: 'Largeur de bande',
  widthUnknown: 'inconnue',
  widthFrom: {
    said: 'Indiquée par vous.',
    setup: 'Du plan le plus récent avec ce composant.',
    list: 'De la liste des composants.',
    usual:
      'Usuelle pour son boîtier. Compte pour la place seulement ; les feeders ne sont pas vérifiés dessus.',
    none: 'Son feeder compte pour une position tant que vous ne saisissez pas la largeur.',
  },
  widthsUnknown: (count) =>
    `${plural(count, `${count} composant n’a pas`, `${count} composants n’ont pas`)} de largeur de bande connue. Chaque feeder compte pour une position : touchez le composant et dites la largeur de sa bande.`,
  bank: 'Machine et banc',
  legend: '■ dans ce plan · □ un feeder s’y trouve maintenant',
  free: (slot) => `${slot} est libre.`,
  here: (slot) => `Il est déjà en ${slot}.`,
  swaps: (slot, other, back) => `${other} est en ${slot}. Il passe en ${back}.`,
  pushes: (slot, other) => `${other} est en ${slot}. Il n’a alors plus d’emplacement.`,
  takesOut: (slot, part) => `${part} s’y trouve maintenant sur la ligne. Il doit sortir de ${slot}.`,
  moveHere: (slot) => `Prendre ${slot}`,
  chooseSlot: 'Choisissez d’abord un emplacement',
  leaveOut: 'Cette ligne ne le pose pas',
  takeBack: 'Cette ligne le pose',
  close: 'Fermer',
  paper: {
    title: 'Fiche de chargement',
    print: 'Imprimer la fiche',
    perPanel: 'Par flan',
    feeder: 'Feeder',
  },
  noSlots: 'Proposez d’abord des emplacements',
  slotsOpen: (count) =>
    `${plural(count, `${count} composant n’a pas`, `${count} composants n’ont pas`)} d’emplacement : donnez-en un, ou dites que cette ligne ne le pose pas`,
  slotsFaulty: (count) =>
    `${plural(count, `${count} emplacement en gêne un autre ou est trop petit`, `${count} emplacements en gênent un autre ou sont trop petits`)} : choisissez-en un autre`,
};
