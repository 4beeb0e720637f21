import type { words as english } from '../en/walks.ts';
import { formatCount, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  walksTitle: 'Tournées',
  walkSplices: (count) => plural(count, `${count} raccord`, `${count} raccords, une tournée`),
  walkMore: (count) => plural(count, `${count} tournée de plus ensuite`, `${count} tournées de plus ensuite`),
  crew: 'Personnes sur cette ligne',
  missTitle: 'Impossible à temps',
  miss: {
    windowTooShort: (moment) => `raccorder avant ${moment} : le temps est trop court pour cela`,
    closesTooSoon: (moment) => `raccorder avant ${moment} : personne ne peut y être à temps`,
    crowdedOut: (moment) => `raccorder avant ${moment} : tout le monde est pris par d’autres raccords`,
  },
  remedies: {
    cutEarly: (parts, moment) =>
      `Couper plus tôt l’ancienne bande, à ${moment} : ${plural(parts, `environ ${formatCount(parts)} composant est perdu`, `environ ${formatCount(parts)} composants sont perdus`)}`,
    secondPerson: (moment) => `Une deuxième personne y va avant ${moment}`,
    secondSlot: (moment) => `Charger le composant sur un second emplacement avant ${moment}`,
  },
  orRemedy: (remedy) => `ou : ${remedy}`,
  missMore: (count) => plural(count, `${count} de plus ensuite`, `${count} de plus ensuite`),
  noRemedy: 'La ligne va s’arrêter. Tenez prête la bobine suivante.',
};
