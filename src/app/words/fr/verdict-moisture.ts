// What is said of the reasons about bakes, labels of level 6 and reels without an id.

import type { MoistureReasons, TableWords } from '../reason-words.ts';

/** On what a bake's hours rest. */
export const tableFr: TableWords = {
  own: 'Table : l’exemplaire de l’usine. ',
  copy: 'Table : comparée à un exemplaire publié. ',
  memory: 'Table : de mémoire. ',
};

export const moistureReasonsFr: MoistureReasons = {
  'bake-hours-over': {
    title: 'Étuvée trop longtemps en tout',
    say: (f) =>
      `${f['hours']} h au-dessus de 90 °C jusqu’ici ; la limite est de ${f['most']} h. Ses broches peuvent mal se braser.`,
    act: 'Un chef d’équipe doit décider. Demandez au fabricant du composant.',
  },
  'label-time-missing': {
    title: 'Niveau 6 : durée sur l’étiquette ?',
    say: () =>
      'Après son étuvage, une bobine de niveau 6 dure ce que dit l’étiquette de son sachet. Personne ne l’a saisi.',
    act: 'Étuvez-la, saisissez les heures dans Sachet / étuve, puis scannez à nouveau.',
  },
  'reel-unnamed': {
    title: 'Sans identifiant, et peut-être déjà ouverte',
    say: (f) =>
      `Une bobine de ce composant${f['lot'] ? `, lot ${f['lot']},` : ''} est déjà sortie de la ligne${f['left'] ? ` avec ${f['left']} restants` : ''}. Sans identifiant, on ne peut pas les distinguer : ${f['floorLife'] === 'true' ? 'la durée hors sachet n’est pas connue' : 'le compte n’est pas connu'}.`,
    act: 'Donnez un identifiant à la bobine, ou laissez décider un chef d’équipe.',
  },
  'reel-gone': {
    title: 'Épuisée depuis longtemps, dit le journal',
    say: (f) =>
      `Selon le journal, la bobine ${f['reel']}, ou une partie de son contenu, est épuisée depuis longtemps. Cette tablette ne sait pas combien de temps elle est restée hors sachet.`,
    act: 'Cherchez son lot dans Traçage. Un chef d’équipe doit décider.',
  },
  'floor-life-short': {
    title: 'La durée hors sachet finit avant la bobine',
    say: (f) => `Sa durée hors sachet finit dans ${f['leftSeconds']}, la bobine dure ${f['neededSeconds']}.`,
    act: 'Un chef d’équipe doit décider.',
  },
};
