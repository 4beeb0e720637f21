import type { words as english } from '../en/pictures.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  rule: 'Images d’étiquettes',
  ruleHelp: 'Garde l’image de chaque étiquette lue par la caméra à un chargement ou un raccord.',
  keep: 'Garder les images',
  days: 'Jours de garde',
  megabytes: 'Place sur chaque tablette, Mo',
  fault: 'Les images demandent 1 à 3650 jours et 1 à 10000 Mo.',
  shown: 'Image de l’étiquette',
  notHere: 'L’image n’est pas sur cette tablette. Voyez celle qui a lu l’étiquette.',
  none: 'Aucune image trouvée.',
  broken: 'Cette image n’est pas celle qui a été gardée. Prévenez un chef d’équipe.',
  failed: 'L’image de l’étiquette n’a pas été gardée. Le verdict reste valable.',
  exported: 'Enregistrer aussi les images d’étiquettes',
  saved: (name) => `Enregistré sous ${name}.`,
};
