import type { words as english } from '../en/first-panel.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  intro: 'Mesurez les composants critiques. Regardez chaque composant qui peut être posé à l’envers.',
  none: 'Ce plan ne liste ni composants critiques, ni valeurs, ni polarités.',
  other: 'Mesurer un autre composant',
  critical: 'Composants critiques et valeurs',
  orientation: 'Orientation',
  left: (open) => plural(open, `${open} encore ouvert`, `${open} encore ouverts`),
  all: 'tout est bon',
  states: { open: 'à faire', accepted: 'bon', held: 'pas clair', refused: 'mauvais' },
  marks: { critical: 'critique', perPanel: (count) => `${count} par flan` },
  measure: 'Mesurer',
  again: 'Mesurer à nouveau',
  right: 'Bon',
  wrong: 'Mauvais',
  takeBack: 'Regarder à nouveau',
  title: (part) => `Mesurer ${part}`,
  wanted: 'Quelle valeur attendre ?',
  code: 'Valeur ou son code',
  codeHelp: 'Par exemple 4k7, 104K, 10 kΩ (IEC 60062). Puis choisissez la bonne lecture.',
  nominal: 'Valeur nominale',
  unit: 'Unité',
  tolerance: 'Tolérance ± %',
  reading: (unit) => `L’appareil affiche, en ${unit}`,
  meter: 'Précision de l’appareil',
  percent: '± % de la lecture',
  fixed: (unit) => `± fixe, en ${unit}`,
  meterHelp: 'Voir la fiche de l’appareil. Cette tablette la retient.',
  limits: (least, most, unit) => `Attendu : ${least} à ${most} ${unit}`,
  result: (value, uncertainty, unit) => `Mesuré : ${value} ± ${uncertainty} ${unit}`,
  why: {
    accepted: 'Dans les limites, même avec l’erreur de l’appareil.',
    held: 'Trop près d’une limite pour cet appareil. Prenez-en un meilleur, ou laissez décider la qualité.',
    refused:
      'Hors limites, même avec l’erreur de l’appareil. Retenez le flan ; vérifiez bobine et emplacement.',
  },
  numbers: 'Saisissez des nombres pour la valeur, la tolérance et la lecture.',
  keep: 'Enregistrer la mesure',
  caution:
    'Flan hors de la ligne et hors tension, condensateurs déchargés. Les composants voisins changent ce qu’affiche un appareil dans le circuit.',
  known: 'comme mesuré avant',
};
