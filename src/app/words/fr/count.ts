import type { words as english } from '../en/count.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: (what) => `Combien de composants : ${what}`,
  ways: { typed: 'Saisi', machine: 'Compteur ou machine', weighed: 'Pesé', measured: 'Mesuré' },
  wayHelp: {
    typed: 'Le nombre sur l’étiquette, ou votre propre comptage.',
    machine: 'Ce qu’affiche un compteur de bobines ou la machine.',
    weighed: 'Pesez cette bobine. Les poids plein et vide du composant sont enregistrés.',
    measured: 'Mesurez la bande enroulée, pas le flasque.',
  },
  fields: {
    parts: 'Composants',
    massG: 'Cette bobine, g',
    emptyG: 'Bobine vide, g',
    fullMassG: 'Bobine pleine, g',
    outerMm: 'Bande enroulée D, mm',
    hubMm: 'Moyeu d, mm',
    fullOuterMm: 'D d’une bobine pleine, mm',
    thicknessMm: 'ou épaisseur de bande, mm',
    pitchMm: 'Pas, mm',
    fullParts: 'Composants, bobine pleine',
  },
  wrong: {
    missing: 'manque encore',
    notNumber: 'pas un nombre',
    tooSmall: 'trop petit pour les autres valeurs',
    tooLarge: 'plus grand qu’une bobine pleine',
  },
  picture:
    'Une bobine de côté : D mesure la bande enroulée, d le moyeu. Le flasque est plus large que la bande.',
  flange: 'flasque',
  wound: 'bande enroulée',
  hub: 'moyeu',
  remembered: (parts) => `D’après une bobine pleine de ${parts}, mesurée auparavant.`,
  result: (parts, sd) => plural(parts, `${parts} ± ${sd} composant`, `${parts} ± ${sd} composants`),
  before: (parts, sd, basis) => `Le journal dit ${parts} ± ${sd} (${basis}).`,
  beforeUnknown: 'Le journal n’a pas encore de compte.',
  printed: (share, least, isEntered) =>
    `Les nombres imprimés ou saisis valent ± ${share}${isEntered ? ' (règles de la ligne)' : ' (pratique courante)'}, au moins ± ${least} (pratique courante).`,
  agree: 'Les deux comptages concordent. Ensemble :',
  contradicts: 'Les deux comptages ne concordent pas. Vérifiez la bobine, puis choisissez.',
  takeNew: 'Prendre le nouveau',
  takeBoth: 'Prendre les deux',
  take: 'Prendre ce compte',
  bases: {
    'one-by-one': 'comptées une à une',
    label: 'étiquette',
    typed: 'saisi',
    machine: 'compteur',
    weighed: 'pesé',
    measured: 'mesuré',
    'counted-down': 'décompté',
    combined: 'plusieurs comptages',
  },
  saved: (slot, parts, sd) =>
    `${slot} : maintenant ${plural(parts, `${parts} ± ${sd} composant`, `${parts} ± ${sd} composants`)}.`,
  leftTitle: (slot) => `Décharger ${slot} : que reste-t-il ?`,
  leftHelp:
    'Le reste montre ce que le feeder a perdu. Comptez-le maintenant, ou laissez le magasin le compter plus tard.',
  offLanes: {
    ask: 'Qu’est-ce qui est retiré ?',
    one: (slot) => `Seulement la bobine en ${slot}`,
    all: (slots) => `Tout le feeder, avec ${slots}`,
  },
  leftEmpty: 'Rien : elle est vide',
  leftCount: 'Compter',
  leftUnknown: (parts) => `Non compté : environ ${parts}`,
  leftUnknownPlain: 'Non compté',
  lost: (feeder, lost, picks, share) =>
    `${feeder} a perdu ${plural(picks, `${lost} prise sur ${picks}`, `${lost} prises sur ${picks}`)} (${share}).`,
  moreThanGone:
    'Il a été posé plus qu’il n’est parti : un comptage est faux. La perte reste ce qu’elle était.',
  unlikely: (feeder, share, bound) =>
    `${feeder} aurait perdu ${share}. C’est improbable (plus de ${bound}) : vérifiez les comptages. La perte reste ce qu’elle était.`,
  leftOut: (count, bound) =>
    `Non utilisés : ${count}. Plus de ${bound} de perte est improbable (0,1–3 % est courant ; la limite est la nôtre).`,
  lossTitle: 'Pertes à la prise',
  lossNone:
    'Aucune bobine au compte connu n’est encore finie. D’ici là, la perte supposée de la ligne est utilisée.',
  lossRow: (share, low, high) => `${share} (${low} à ${high})`,
  skipsUnknown: (reels) =>
    plural(
      reels,
      `Cartes sautées inconnues pour ${reels} bobine : elle a peut-être perdu plus.`,
      `Cartes sautées inconnues pour ${reels} bobines : elles ont peut-être perdu plus.`,
    ),
  skipsUnknownReel: 'cartes sautées inconnues',
  lossEvidence: (reels, lost, picks) =>
    `${plural(reels, `${reels} finie`, `${reels} finies`)}, ${plural(picks, `${lost} prise perdue sur ${picks}`, `${lost} prises perdues sur ${picks}`)}`,
  rising: (feeder, share, others) => `Le feeder ${feeder} rejette ${share}, les autres ${others}.`,
  risingAlone: (feeder, share) => `Le feeder ${feeder} rejette ${share}, plus qu’avant.`,
  pickFaults: (times, since) =>
    plural(
      times,
      `La machine a signalé ${times} défaut de prise depuis ${since}.`,
      `La machine a signalé ${times} défauts de prise depuis ${since}.`,
    ),
  pickFaultsTitle: 'Défauts de prise sans perte connue encore',
  risingAct: 'Au prochain arrêt, vérifiez la buse, le chemin de bande et la hauteur de prise.',
  feeder: 'Feeder',
  slot: 'Emplacement',
  loss: 'Perte',
  evidence: 'D’après',
  told: { count: 'compté', splice: 'raccordé', machine: 'dit par la machine' },
  evidenceLine: (from, to, placed) => `${from} au début, ${to} restants, ${placed} posés`,
  showEvidence: 'Voir les bobines',
  hideEvidence: 'Masquer les bobines',
  spliceDiffers: 'Le raccord et le comptage se contredisent : le compte de l’ancienne bobine était faux.',
};
