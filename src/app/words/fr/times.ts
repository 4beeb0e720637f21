import type { words as english } from '../en/times.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  loading: 'Lecture du journal…',
  running: 'La ligne tourne. Le temps compte à partir du dernier bon flan.',
  stopped: 'La ligne est arrêtée. L’arrêt compte une fois le dernier bon flan confirmé.',
  madeReady: (span) => `${span} de préparation avant`,
  standing: 'Arrêt de ligne',
  external: 'Préparé ligne en marche',
  paused: (span) => `${span} de pauses et d’arrêts prévus sont laissés de côté.`,
  before: 'Comparé aux changements de série précédents du même genre',
  noneBefore: 'Aucun changement de série précédent entre ces deux produits n’est au journal.',
  thisOne: 'celui-ci',
  people: 'Par personne',
  nobody: 'personne d’identifié',
  marks: (count) => plural(count, `${count} action`, `${count} actions`),
  steps: 'Actions les plus longues',
  kinds: {
    step: 'liste de contrôle',
    skip: 'sauté',
    load: 'mis',
    unload: 'sorti',
    measure: 'mesuré',
    look: 'regardé',
  },
  none: 'Rien n’est encore coché ni scanné dans ce changement de série.',
  where: 'Où sont passées les minutes',
  axis: 'min',
  legend: { act: 'action', outside: 'possible avant', stop: 'pause ou arrêt prévu' },
  median: (count, span) =>
    plural(count, `Le précédent a pris ${span}.`, `La médiane de ${count} précédents est ${span}.`),
  longer: (span) => `Celui-ci : ${span} d’arrêt de plus.`,
  shorter: (span) => `Celui-ci : ${span} d’arrêt de moins.`,
  asMedian: 'Celui-ci : à peu près le même arrêt.',
  medianMark: (span) => `médiane des précédents, ${span}`,
  saved: (steps, span) =>
    plural(
      steps,
      `${steps} étape était possible avant le dernier flan. La ligne aurait été arrêtée jusqu’à ${span} de moins.`,
      `${steps} étapes étaient possibles avant le dernier flan. La ligne aurait été arrêtée jusqu’à ${span} de moins.`,
    ),
  outside: 'Possible ligne en marche',
  late: 'prévu ligne en marche, fait pendant l’arrêt',
  candidate: 'sans y mettre les mains : décidez si c’est possible avant',
  noneOutside: 'Chaque action faite pendant l’arrêt demande cet arrêt.',
  how: 'Chaque temps compte à partir de l’action précédente de la même personne.',
};
