import type { words as english } from '../en/begin.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  about:
    'D’une tablette vide à la première bonne bobine. Arrêtez-vous à n’importe quelle étape ; continuez ici ou sur une autre tablette.',
  language: 'Langue de cette tablette',
  done: 'fait',
  steps: {
    plant: {
      title: 'L’usine',
      text: 'Son nom et son fuseau horaire. Impressions et exports portent le nom.',
      act: 'Nommer l’usine',
    },
    engineer: {
      title: 'Premier ingénieur',
      text: 'Un nom, un badge et un PIN. L’ingénieur ajoute tous les autres.',
      act: 'Ajouter l’ingénieur',
    },
    line: {
      title: 'La ligne',
      text: 'Ses machines et ses bancs, avec les emplacements tels qu’ils sont écrits sur les machines.',
      act: 'Décrire la ligne',
    },
    people: {
      title: 'Personnes et badges',
      text: 'Opérateurs et chefs d’équipe. Les badges s’impriment ici.',
      act: 'Ajouter des personnes',
    },
    product: {
      title: 'Premier produit',
      text: 'Une feuille de chargement, ou le fichier de placement et la nomenclature de la carte.',
      act: 'Importer le produit',
    },
    labels: {
      title: 'Étiquettes d’emplacement',
      text: 'Chaque emplacement reçoit un code à scanner. Feeders et chariots s’impriment aussi là.',
      act: 'Imprimer des étiquettes',
    },
    scanner: {
      title: 'Le lecteur',
      text: 'Un test montre si cette tablette le lit bien.',
      act: 'Tester le lecteur',
    },
    label: {
      title: 'Une étiquette imprimée',
      text: 'Scannez l’étiquette d’un emplacement : elle doit être lue comme cet emplacement.',
      act: 'Tester une étiquette',
    },
    practice: {
      title: 'Un premier chargement, pour s’exercer',
      text: 'Sur une copie de la ligne. Là, rien ne compte.',
      act: 'Commencer l’exercice',
    },
    load: {
      title: 'La première bobine',
      text: 'Scannez emplacement, feeder et bobine. La tablette dit s’ils vont ensemble.',
      act: 'Charger la ligne',
    },
  },
  fromFile: 'Commencer avec le fichier d’une autre usine',
  badges: 'Imprimer des badges',
  more: 'Ouvrir',
  openOf: (step) => `Ouvrir : ${step}`,
};
