import type { words as english } from '../en/shell.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  nav: {
    line: 'Ligne',
    load: 'Charger',
    change: 'Changer',
    stock: 'Bobines',
    log: 'Journal',
    plant: 'Usine',
    search: 'Chercher',
    lines: 'Toutes les lignes',
    wall: 'Écran mural',
  },
  noLine: 'Pas encore de ligne',
  nowOn: (line: string) => `Maintenant sur ${line}`,
  noSetup: 'aucun plan choisi',
  side: { top: 'dessus', bottom: 'dessous' },
  revision: (revision) => `rév. ${revision}`,
  run: (done, wanted) => plural(wanted, `${done} sur ${wanted} flan`, `${done} sur ${wanted} flans`),
  signIn: 'S’identifier',
  signInFirst: 'Scannez d’abord votre badge',
  needsRole: (role) => `Requis : ${role}`,
  signInHelp: 'Scannez votre badge ou choisissez votre nom.',
  signedInAs: (name) => `Identifié : ${name}`,
  signOut: 'Se déconnecter',
  roles: { operator: 'Opérateur', lead: 'Chef d’équipe', engineer: 'Ingénieur' },
  offlineReady: 'Prêt à travailler hors ligne',
  gettingReady: 'Préparation du hors ligne…',
  toSend: (count) => `${count} à envoyer`,
  help: 'Aide',
  skipToDock: 'Aller à Saisir et Caméra',
  done: 'Terminé',
  cancel: 'Annuler',
  detailsOf: (what) => `Plus : ${what}`,
  lessOf: (what) => `Moins : ${what}`,
  close: 'Fermer',
  newVersion: 'Une nouvelle version est prête.',
  update: 'Mettre à jour',
  updateLater: 'Elle attend qu’aucune tâche ne soit ouverte.',
  languageLater:
    'Cette langue n’est pas encore sur la tablette. Connectez-la au réseau, puis choisissez à nouveau.',
  leftAlone: (name, minutes) =>
    plural(
      minutes,
      `Session de ${name} fermée : ${minutes} minute sans toucher l’écran. Le travail ouvert est gardé.`,
      `Session de ${name} fermée : ${minutes} minutes sans toucher l’écran. Le travail ouvert est gardé.`,
    ),
  shiftOver: (name) => `Session de ${name} fermée : un poste est passé. Le travail ouvert est gardé.`,
  notInPractice: 'Pas en exercice',
  fault: {
    'disk-full': {
      title: 'Cette tablette est pleine',
      text: 'Plus rien ne peut être écrit ni vérifié ici. Tout ce qui a été accepté est à l’abri. Travaillez sur une autre tablette. Libérez de la place sur celle-ci, puis réessayez.',
    },
    'closed-by-newer': {
      title: 'Une version plus récente est ouverte dans une autre fenêtre',
      text: 'Cette fenêtre est une version plus ancienne et s’est arrêtée. Tout ce qui a été accepté est à l’abri. Rechargez pour continuer.',
    },
    lost: {
      title: 'Le journal de cette tablette ne s’ouvre pas',
      text: 'Travaillez sur une autre tablette et appelez la personne qui s’occupe des tablettes. N’effacez pas les données du navigateur : les entrées non envoyées peuvent encore être sauvées.',
    },
    unknown: {
      title: 'Le journal n’a pas pu être écrit',
      text: 'Ce qui a été affiché comme fait est à l’abri. La dernière action n’a pas été écrite. Rechargez et regardez le journal avant de continuer.',
    },
  },
  reload: 'Recharger',
  tryAgain: 'Réessayer',
  muted: 'Son coupé tant que vous n’avez pas touché',
  storageLow: (megabytes) => `Plus que ${megabytes} Mo pour le journal sur cette tablette.`,
  storageEnds:
    'À ce rythme, la place pour le journal sur cette tablette sera pleine d’ici une semaine. Libérez de l’espace.',
};
