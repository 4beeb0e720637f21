import type { words as english } from '../en/search.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  field: 'Saisissez ou scannez n’importe quoi',
  help: 'Bobine, composant, lot, flan, emplacement, feeder, personne ou produit. Un scan ici est cherché, pas chargé.',
  kinds: {
    reel: 'Bobines',
    slot: 'Emplacements',
    part: 'Composants',
    'supplier-part': 'Références fournisseur',
    lot: 'Lots',
    panel: 'Flans',
    feeder: 'Feeders',
    person: 'Personnes',
    setup: 'Plans',
    entry: 'Entrées du journal',
  },
  more: (count) => `En voir ${count} de plus`,
  nothing: (text) => `Rien ici ne contient « ${text} ».`,
  alike: (codes) => `Pas les mêmes : ${codes}. Vérifiez chaque caractère.`,
  onLabel: 'Aussi sur cette étiquette :',
  left: (count) => `reste ${count}`,
  slotIs: {
    right: 'correct',
    empty: 'rien de chargé',
    held: 'attend le chef d’équipe',
    'other-part': 'mauvais composant',
    'wrong-feeder': 'mauvais feeder',
    blocked: 'bloqué',
  },
  notWanted: 'pas dans ce plan',
  chosen: 'choisi',
  reading: (entries) =>
    `Lecture du journal : ${plural(entries, `${entries} entrée`, `${entries} entrées`)} jusqu’ici.`,
  searchedAll: (entries) =>
    `Parcouru : ${plural(entries, `${entries} entrée du journal`, `les ${entries} entrées du journal`)} de cette tablette.`,
  searchedSince: (day) =>
    `Parcouru : les entrées du journal depuis ${day}. Les plus anciennes sont dans le journal.`,
  askServer: 'Demander au serveur',
  asking: 'Demande au serveur…',
  noServer: 'Le serveur ne répond pas : ce que lui seul sait n’est pas cherché.',
  serverNothing: (text) => `Le serveur n’a rien sur « ${text} ».`,
  serverHas: (kind, count) => `${kind} : ${count} au serveur`,
};
