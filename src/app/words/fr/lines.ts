import type { words as english } from '../en/lines.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  add: 'Ajouter une ligne',
  edit: 'Modifier',
  editOf: (name) => `Modifier ${name}`,
  machines: (count) => plural(count, `${count} machine`, `${count} machines`),
  slots: (count) => plural(count, `${count} emplacement`, `${count} emplacements`),
  fromSheets:
    'Certains emplacements ne sont connus que par des feuilles de chargement. Ouvrez la ligne et nommez-les tels qu’ils sont écrits.',
  newTitle: 'Une nouvelle ligne',
  newName: (number) => `Ligne ${number}`,
  name: 'Nom',
  zone: 'Fuseau horaire',
  zoneHelp: 'Là où se trouve la ligne, par exemple Europe/Paris.',
  help: 'Pour chaque banc, saisissez le premier et le dernier emplacement tels qu’ils sont écrits sur la machine.',
  bankOf: (number) => `Banc ${number}`,
  removeOf: (number) => `Enlever le banc ${number}`,
  first: 'Premier emplacement',
  last: 'Dernier emplacement',
  addAcross: (slot) => `Ajouter l’autre côté : ${slot}`,
  addMachine: (slot) => `Ajouter la machine suivante : ${slot}`,
  addBank: 'Ajouter un banc',
  holdsTrays: 'Plateaux, pas de feeders',
  trays: 'plateaux',
  lanes: {
    title: 'Voies',
    help: 'Un convoyeur peut porter deux produits à la fois. Chaque voie a sa propre série ; toutes prennent aux mêmes emplacements.',
    add: 'Ajouter une voie',
    name: (number) => `Nom de la voie ${number}`,
    called: (line, number) => `${line}, voie ${number}`,
    removeOf: (number) => `Retirer la voie ${number}`,
    held: {
      runs: (lane) => `${lane} est en production. Terminez d’abord sa série.`,
      reels: (slots) => `Retirez d’abord ce dont seule cette voie a besoin : ${slots}.`,
      open: 'Encore ouvert pour cette voie : bobine retenue, relève, changement de série, liste, ronde, pâte, poste de comptage, feeder prêt, chariot. Terminez cela d’abord.',
    },
  },
  picture: 'À quoi ressemble la ligne',
  save: 'Enregistrer la ligne',
  saved: (name) => `${name} : enregistré.`,
  faults: {
    'no-number': 'Les deux doivent finir par un nombre : M1-F-001 et M1-F-025.',
    differs: 'Seul le nombre à la fin peut différer.',
    'not-from-one': 'Le premier emplacement doit porter le numéro 1.',
    backwards: 'Le dernier nombre est inférieur au premier.',
    'too-many': 'Un banc a 500 emplacements au plus.',
    twice: 'Ce banc y est déjà.',
  },
  obstacles: {
    ranges: (count) =>
      plural(count, 'Corrigez le banc marqué plus haut.', `Corrigez les ${count} bancs marqués plus haut.`),
    'name-missing': 'Saisissez un nom.',
    'lanes-alike': 'Donnez à chaque voie son propre nom.',
    'zone-unknown': 'Choisissez un fuseau horaire dans la liste.',
    'no-banks': 'Saisissez d’abord les emplacements d’un banc.',
    lost: (slots, count) =>
      plural(
        count,
        `L’emplacement ${slots} est utilisé. Gardez-le.`,
        `${count} emplacements utilisés disparaîtraient : ${slots}. Gardez-les.`,
      ),
  },
};
