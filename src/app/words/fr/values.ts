import type { words as english } from '../en/values.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: (part) => `Mesurer ${part}`,
  ask: 'Mettez un composant de cette bobine sur l’appareil avant qu’elle n’alimente.',
  which: 'Le code peut signifier plusieurs valeurs. Choisissez la bonne.',
  wanted: (nominal, least, most, unit) => `Attendu : ${nominal} ${unit}, de ${least} à ${most} ${unit}`,
  meter: (percent, digits, guard) =>
    `Appareil : ± ${percent} % et ± ${digits} au dernier rang. Bande de garde : ${guard} % de cela.`,
  shows: (unit) => `L’appareil affiche, en ${unit}`,
  help: 'Tapez-le, ou laissez l’appareil le taper.',
  wrong: 'Saisissez un nombre, par exemple 10,02.',
  otherUnit: (unit) => `L’appareil affiche autre chose. Attendu : un nombre en ${unit}.`,
  check: 'Contrôler la valeur',
  cannot: 'Laisser sans mesure',
  rule: {
    title: 'Composants mesurés avant d’alimenter',
    help: 'Une rangée par classe de composants. La valeur vient de la liste des composants ou de la note du plan. Aucune rangée : pas de contrôle.',
    begins: 'Références commençant par (vide : toutes avec une valeur)',
    add: 'Ajouter une classe de composants',
    percent: 'Appareil : ± % de la lecture',
    digits: 'Appareil : ± digits du dernier rang',
    guard: 'Bande de garde, % de l’incertitude de l’appareil',
    wrong: 'Saisissez les chiffres de l’appareil en nombres, et chaque classe une seule fois.',
  },
};
