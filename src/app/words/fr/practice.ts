import type { words as english } from '../en/practice.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  word: 'EXERCICE',
  tells: 'Rien ne compte ici. La vraie ligne continue.',
  end: 'Finir l’exercice',
  real: (slot, told) => `Sur la vraie ligne : ${slot} ${told}`,
  title: 'S’exercer sans toucher à la ligne',
  about:
    'Vous recevez une copie de cette ligne telle qu’elle est. Scannez, raccordez, changez de série, trompez-vous : rien n’atteint la vraie ligne, son journal ni ses comptes. La copie est effacée quand vous finissez l’exercice, ou après douze heures.',
  aboutNew:
    'Cette usine n’a pas encore de ligne : vous en recevez une petite, inventée. Scannez, chargez, raccordez, trompez-vous. Elle est effacée quand vous finissez l’exercice, ou après douze heures.',
  warns: 'Les alertes de la vraie ligne s’affichent toujours.',
  start: 'Commencer l’exercice',
  taken: 'L’exercice est ouvert dans une autre fenêtre de cette tablette. Finissez-le d’abord là-bas.',
  notSaved: (name) => `Exercice : aucun fichier n’est enregistré. Sur la vraie ligne, ce serait ${name}.`,
  labels: 'Étiquettes pour s’exercer',
  labelsHelp:
    'Touchez une étiquette au lieu de scanner : l’emplacement, son feeder s’il est demandé, sa bobine.',
  print: 'Imprimer les étiquettes',
  groups: {
    load: 'À charger',
    splice: 'À raccorder ensuite',
    wrong: 'À refuser ou à retenir',
    panels: 'Flans',
  },
  slot: (slot) => `Emplacement ${slot}`,
  wants: (part) => `demande ${part}`,
  right: (slot) => `bonne bobine pour ${slot}`,
  wrong: (slot, asked) => `va en ${slot} ; essayez-la en ${asked}`,
  foreign: (asked) => `aucun emplacement ne la demande ; essayez-la en ${asked}`,
  bare: (slot) => `pas de quantité sur l’étiquette ; pour ${slot}`,
  free: (slot) => `feeder libre pour ${slot}`,
  panel: 'compte un flan',
  nothing: 'Choisissez d’abord un plan. Ses étiquettes s’affichent alors ici.',
  names: {
    line: 'Ligne d’exercice',
    machine: 'première machine',
    bank: 'avant',
    product: 'Carte d’exercice',
  },
};
