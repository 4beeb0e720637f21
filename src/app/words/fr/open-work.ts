import type { words as english } from '../en/open-work.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  said: {
    misfit: () => 'Le plan ne tient pas sur cette ligne',
    move: (count) => plural(count, `${count} geste de feeder restant`, `${count} gestes de feeder restants`),
    'slot-empty': (count) =>
      plural(count, `${count} emplacement sans sa bobine`, `${count} emplacements sans leur bobine`),
    'slot-other': (count) =>
      plural(
        count,
        `${count} emplacement a un autre composant`,
        `${count} emplacements ont un autre composant`,
      ),
    'slot-held': (count) =>
      plural(count, `${count} bobine attend un chef d’équipe`, `${count} bobines attendent un chef d’équipe`),
    'measured-wrong': (count) =>
      plural(count, `${count} composant mesuré mauvais`, `${count} composants mesurés mauvais`),
    'looked-wrong': (count) =>
      plural(count, `${count} composant semble mauvais`, `${count} composants semblent mauvais`),
    'cannot-tell': (count) =>
      plural(
        count,
        `${count} composant trop juste pour l’appareil`,
        `${count} composants trop justes pour l’appareil`,
      ),
    unchecked: (count) =>
      plural(count, `${count} composant pas encore vérifié`, `${count} composants pas encore vérifiés`),
    step: (count) => plural(count, `${count} étape de la liste`, `${count} étapes de la liste`),
    'no-checklist': () => 'La liste de contrôle n’a jamais été ouverte',
  },
  on: (part, slot) => `${part} en ${slot}`,
  reelOn: (reel, slot) => `bobine ${reel} en ${slot}`,
  reel: (reel) => `bobine ${reel}`,
  more: (count) => plural(count, `et ${count} autre`, `et ${count} autres`),
  isWrong: 'Mauvais',
  isOpen: 'Encore ouvert',
  nothing: 'Rien n’est ouvert.',
};
