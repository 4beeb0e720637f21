import type { words as english } from '../en/help.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: (screen) => `Aide : ${screen}`,
  practise: 'S’exercer avec un guide',
  lines: {
    line: [
      'Une bande s’arrête là où sa bobine se vide. Raccordez entre les crochets.',
      'Le bandeau du haut nomme la prochaine tournée. Touchez-le en partant.',
      'La barre au-dessus lance, arrête et compte la série.',
    ],
    load: [
      'Touchez un banc pour voir ses emplacements. La ligne montre ce qui reste à charger.',
      'Scannez l’emplacement, puis la bobine.',
      'Rond : acceptée. Octogone : refusée. Losange : retenue pour le chef d’équipe.',
    ],
    change: [
      'Choisissez le produit suivant. Chaque geste figure alors dans une liste.',
      'Faites un geste à la fois et scannez ce que vous mettez.',
      'Terminez la check-list et contrôlez le premier flan. Puis libérez la série.',
    ],
    stock: [
      'Voyez quelles bobines apporter, et pour quand.',
      'Ouvrez une bobine pour la compter, la ranger ou la bloquer.',
      'Une bobine qui doit rester sèche montre sa durée hors sachet.',
    ],
    log: [
      'Chaque acte est ici avec l’heure et la personne. Rien n’est jamais retiré.',
      'Du lot à ses flans, ou du flan à ses bobines.',
      'Voyez le poste, transmettez-le et exportez le journal.',
    ],
    plant: [
      'Importez un plan et choisissez quoi produire.',
      'Ajoutez les personnes, les étiquettes et les règles de la ligne.',
      'Exercez-vous sur une copie de la ligne. Rien n’y compte.',
    ],
    search: [
      'Scannez ou saisissez un code, un nom ou un numéro.',
      'Les résultats sont triés par genre.',
      'Touchez un résultat pour l’ouvrir.',
    ],
    lines: [
      'Chaque rangée est une ligne, avec sa série et sa prochaine tournée.',
      'Cloche : une alerte attend. Losange : une bobine est retenue.',
      'Touchez une rangée pour travailler sur cette ligne.',
    ],
  },
};
