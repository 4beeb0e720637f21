import type { words as english } from '../en/this-plant.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  name: 'Nom de l’usine',
  nameHelp: 'Figure sur les fiches de chargement, les badges et les exports.',
  zoneHelp: 'Les nouvelles lignes commencent avec lui.',
  nameMissing: 'Saisissez le nom de l’usine.',
  zoneUnknown: 'Choisissez un fuseau horaire dans la liste.',
  same: 'Rien n’a changé.',
  save: 'Enregistrer le nom',
  saved: (name) => `${name} : enregistré.`,
  fileTitle: 'Un fichier pour une deuxième usine',
  fileHelp:
    'Il contient lignes, machines, bancs, règles, règles de composants, listes de contrôle et règles d’étiquettes. Il ne contient ni personnes, ni bobines, ni plans, ni historique.',
  noLine: 'Il n’y a pas encore de ligne.',
  fileSave: 'Enregistrer le fichier',
  fileSaved: (name) => `${name} : enregistré.`,
  beginTitle: 'Commencer avec le fichier d’une autre usine',
  beginHelp: 'Il a été enregistré à l’autre usine, sur cette page ou par « reelward plant ».',
  notEmpty: 'Cette usine a déjà des lignes. Un fichier ne sert qu’à une usine qui n’en a aucune.',
  begun: 'Lignes et règles sont là. Continuez avec l’étape suivante.',
  choose: 'Choisir le fichier',
  brings: 'Il apporte :',
  bringsOf: (name) => `De ${name}, il apporte :`,
  counts: {
    lines: 'Lignes',
    slots: 'Emplacements',
    parts: 'Règles de composants',
    checklists: 'Listes de contrôle',
    labelRules: 'Règles d’étiquettes',
  },
  begin: 'Utiliser ce fichier',
  toSteps: 'Premiers pas',
  faults: {
    'not-json': 'Ce n’est pas le fichier d’une usine. Choisissez celui que l’autre usine a enregistré.',
    'not-a-plant': 'C’est un fichier d’une autre sorte. Choisissez celui que l’autre usine a enregistré.',
    newer: 'Une version plus récente a écrit ce fichier. Mettez d’abord cette tablette à jour.',
    'no-lines': 'Il n’y a pas de ligne dans ce fichier. Enregistrez-le de nouveau à l’autre usine.',
    kind: (at, what) =>
      `L’entrée ${at} (${what}) n’a pas sa place dans un tel fichier. Enregistrez-le de nouveau à l’autre usine.`,
    payload: (at, what) =>
      `L’entrée ${at} (${what}) est abîmée. Enregistrez le fichier de nouveau à l’autre usine.`,
  },
};
