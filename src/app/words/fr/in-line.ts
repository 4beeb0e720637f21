import type { words as english } from '../en/in-line.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Flans dans la ligne',
  help: 'Là où une bobine change, ces flans sont incertains. Saisissez le plus qu’il puisse jamais y en avoir, y compris un flan à l’arrêt devant une machine. Une estimation remplace ce que personne n’a saisi.',
  behind: (machine) => `${machine} : flans faits ici et pas encore comptés, au plus`,
  before: (machine) => `${machine} : flans comptés avant d’y arriver, au plus`,
  missed: 'Flans qui passent sans être comptés, au plus',
  guess: (most) => `Non saisi : jusqu’à ${most} sont supposés (pratique courante).`,
  seen: (panels, most) =>
    plural(
      panels,
      `${panels} flan scanné aux deux endroits : jusqu’à ${most} se trouvaient entre les deux.`,
      `${panels} flans scannés aux deux endroits : jusqu’à ${most} se trouvaient entre les deux.`,
    ),
  takeSeen: 'Prendre ce qu’on a vu',
  takeHelp:
    'Ce qui a été vu n’est pas une limite : saisissez plus là où il peut y en avoir plus. Ce que les scans montrent au-delà l’élargit tout seul.',
  scansHere: 'Flans scannés à cette tablette',
  count: 'Sont comptés',
  goInto: (machine) => `Entrent dans ${machine}`,
  scansHelp:
    'Scannez quelques flans devant une machine, puis là où ils sont comptés : la ligne apprend ainsi combien se trouvent entre les deux.',
  save: 'Enregistrer les flans en ligne',
  saved: 'Enregistré. Les traçages s’y conforment désormais.',
  wrong: 'Saisissez des nombres entiers de 0 à 500, et une part inférieure à 50 %.',
  exitOpen: 'Ouvrir l’écran de sortie',
  exitTitle: 'Flans produits',
  exitHelp: 'Scannez chaque flan à la sortie de la ligne.',
  exitCounted: 'Compté :',
  exitBefore: 'Déjà scanné, rien d’ajouté :',
  exitOther: 'Ce n’est pas un flan, rien d’ajouté :',
  exitNoRun: 'Aucune production sur cette ligne. Lancez-la d’abord.',
  exitLost: 'Cette page a perdu le clavier. Touchez ici avant de scanner.',
  exitLeave: 'Quitter cet écran',
};
