import type { words as english } from '../en/refusal.ts';
import { formatCount, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  inLog: (clock) => `${clock}, au journal`,
  nothingLoaded: 'Rien n’est chargé.',
  closest: 'le plus proche demandé',
  characters: (count) =>
    plural(count, `${formatCount(count)} caractère diffère.`, `${formatCount(count)} caractères diffèrent.`),
  belongsAt: 'Cette bobine va en',
  belongsNowhere: 'Aucun emplacement ici ne la demande.',
  lacksReel: 'Pas de bobine là maintenant.',
  hasReel: 'Une bobine s’y trouve maintenant.',
  onLine: (slot, line) => `${slot} sur ${line}`,
  rightReel: (slot) => `${slot} demande`,
  rightReelNone: 'D’après le journal, il n’y en a aucune bobine au magasin.',
  rightReelAt: (reel, more) =>
    more === 0
      ? reel
      : `${reel} et ${plural(more, `${formatCount(more)} autre`, `${formatCount(more)} autres`)}`,
  feederToFetch: 'Feeder à aller chercher',
  feederNone: 'Aucun feeder libre de cette taille n’est sur la liste.',
  anotherFeeder: 'Scanner un autre feeder',
  carryOn: (slot) => `Porter en ${slot}`,
  unload: (slot) => `Décharger ${slot}`,
  reachIn: 'Arrêtez la machine avant d’y mettre les mains.',
  runsHere: {
    title: 'Cette bobine tourne déjà ici',
    text: (slot) =>
      `Cette étiquette correspond à la bobine en ${slot}. Est-ce une deuxième bobine avec la même étiquette ?`,
    same: 'Non, c’est celle-là',
    second: 'Oui, une deuxième',
  },
  cameBefore: {
    title: 'Cette bobine a-t-elle déjà été sur la ligne ?',
    text: (lot, left) =>
      `Son étiquette n’a pas d’identifiant propre. Une bobine pareille${lot === null ? '' : `, lot ${lot},`} est sortie de la ligne avec ${left === null ? 'un compte inconnu' : plural(left, `${left} composant restant`, `${left} composants restants`)}.`,
    same: 'Oui, c’est celle-là',
    fresh: 'Non, une nouvelle',
  },
};
