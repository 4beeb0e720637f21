import type { words as english } from '../en/guide.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Exercice guidé',
  about: 'Une étape à la fois. Partez s’il le faut : il reprend à la même étape.',
  guides: {
    operator: 'Trois bobines, dont une mauvaise. Un raccord. Une alerte.',
    lead: 'Une bobine retenue à décider. Un export.',
    engineer: 'Un plan à importer.',
  },
  start: 'Lancer le guide',
  goOn: (at, of) => `Reprendre à l’étape ${at} sur ${of}`,
  again: 'Recommencer à l’étape 1',
  step: (at, of) => `Étape ${at} sur ${of}`,
  leave: 'Quitter le guide',
  go: 'Montrer où',
  skip: 'Passer cette étape',
  still: 'C’était autre chose. L’étape reste ouverte.',
  over: 'Toutes les étapes sont faites. Continuez à votre gré, ou terminez l’exercice.',
  noLead: 'Cette usine n’a pas encore de chef d’équipe. Ajoutez-en un d’abord.',
  example: 'Utiliser la feuille d’exemple',
  steps: {
    first: {
      ask: 'Touchez une étiquette d’emplacement, puis sa bonne bobine.',
      seen: (slot) => `${slot} : acceptée.`,
    },
    wrong: {
      ask: (group) => `Touchez une étiquette d’emplacement, puis une mauvaise bobine. Voir « ${group} ».`,
      seen: (slot) => `${slot} : refusée. Cette bobine ne doit pas y aller.`,
    },
    second: {
      ask: 'Touchez un autre emplacement, puis sa bonne bobine.',
      seen: (slot) => `${slot} : acceptée.`,
    },
    splice: {
      ask: (group) => `Raccord : sous « ${group} », touchez un emplacement, puis sa bobine.`,
      seen: (slot) => `${slot} : raccordée.`,
    },
    run: {
      ask: 'Lancez la série sur la ligne.',
      seen: 'La série a commencé.',
    },
    warning: {
      ask: 'Comptez des flans sur la ligne jusqu’à une alerte.',
      seen: (slot) => `${slot} : alerte.`,
    },
    answer: {
      ask: (act) => `Touchez « ${act} » près de l’alerte, ou raccordez cet emplacement.`,
      seen: 'L’alerte a sa réponse.',
    },
    hold: {
      ask: 'Touchez une étiquette d’emplacement, puis la bobine sans quantité.',
      seen: (slot) => `${slot} : retenue. Un chef d’équipe doit décider.`,
    },
    clear: {
      ask: 'Décidez en chef d’équipe : badge, PIN, raison.',
      seen: 'Décidé, avec votre nom dans le journal.',
    },
    export: {
      ask: (act) =>
        `Dans le journal, touchez « ${act} », puis CSV. En exercice, aucun fichier n’est enregistré.`,
      seen: 'Export demandé. Aucun fichier n’a été enregistré.',
    },
    open: {
      ask: (page) => `Ouvrez « ${page} ».`,
      seen: (page) => `« ${page} » est ouvert.`,
    },
    take: {
      ask: (example, act) => `Touchez « ${example} ». Regardez ce qui change, puis touchez « ${act} ».`,
      seen: (product) => `${product} : importé.`,
    },
    look: {
      ask: (page) => `Trouvez-le sous « ${page} ».`,
      seen: 'Il est dans la liste.',
    },
  },
};
