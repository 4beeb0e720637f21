import type { words as english } from '../en/load.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Charger',
  of: (verified, all) =>
    plural(
      all,
      `${verified} emplacement chargé sur ${all}`,
      `${verified} emplacements chargés sur ${all}`,
    ),
  next: 'Ensuite sur votre chemin',
  allDone: 'Chaque emplacement a sa bobine.',
  perPanel: (count) => (count === '0' ? 'pas posé sur ce produit' : `${count} par flan`),
  inTurn: (turn) => `utilisé tour à tour, numéro ${turn}`,
  tape: (width) => `bande de ${width} mm`,
  pitch: (pitch) => `pas ${pitch} mm`,
  feederFor: (width) => `feeder pour bande de ${width} mm`,
  ready: (feeder, cart) => `le feeder ${feeder} est prêt sur le chariot ${cart}`,
  overview: 'Toute la ligne : choisissez un banc',
  loadedOf: (verified, all) => `${verified} sur ${all}`,
  toDo: {
    missing: (count) => plural(count, `${count} manquant`, `${count} manquants`),
    held: (count) =>
      plural(count, `${count} attend le chef d’équipe`, `${count} attendent le chef d’équipe`),
    other: (count) => `${count} à sortir`,
  },
  alternates: (parts) => `ou ${parts}`,
  legend: {
    verified: 'chargé',
    missing: 'manquant',
    held: 'attend le chef d’équipe',
    other: 'à sortir',
    next: 'suivant',
    seen: 'vu dans cette ronde',
    spare: 'pas demandé, peut rester',
  },
  banks: (machine, bank) => `${machine} · ${bank}`,
  front: 'avant',
  rear: 'arrière',
  holds: 'En attente d’un chef d’équipe',
  decide: 'Décider',
  conflicts: 'Deux tablettes se contredisent',
  sweep: 'Faire la ronde',
  sweepHelp:
    'Scannez une fois chaque bobine chargée, à la prise de poste. Les bobines non vues sont listées à la fin.',
  sweepRunning: (seen, all) => `Ronde : ${seen} vues sur ${all}`,
  sweepEnd: 'Finir la ronde',
  sweepResume: 'Continuer la ronde ici',
  sweepMissing: (count) => plural(count, `${count} non vue`, `${count} non vues`),
  sweepAll: 'Chaque bobine chargée a été vue.',
  unwanted: 'Pas dans ce plan',
  takeOut: 'Décharger',
  unloaded: (slot) => `${slot} déchargé.`,
  undo: 'Défaire',
  choose: 'Choisir un plan',
  caution:
    'Arrêtez la machine et attendez la tête avant d’y mettre les mains. Attention au coupe-bande. Les règles locales passent d’abord.',
  slotDetail: 'Emplacement',
  emptySlot: 'Rien de chargé.',
  loadThis: 'Charger cet emplacement',
  spliceThis: 'Raccorder ici',
  since: (time, who) => `depuis ${time}${who ? `, ${who}` : ''}`,
  left: (count) => `environ ${count} restants`,
  unknownCount: 'compte inconnu',
  lossIs: (share, reels) =>
    reels === 0
      ? `perte ${share}, supposée`
      : `perte ${share}, d’après ${plural(reels, `${reels} bobine`, `${reels} bobines`)}`,
  correctCount: 'Compter',
  counted: (slot, count) => `${slot} : le compte est maintenant ${count}.`,
  mapName: 'Les emplacements de la ligne : déplacez-vous avec les flèches',
  list: 'Liste',
  map: 'Carte',
  print: 'Imprimer la liste',
};
