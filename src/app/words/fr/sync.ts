import type { words as english } from '../en/sync.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  live: 'Synchronisé',
  syncing: 'Synchronisation…',
  toSend: (count) => `${count} à envoyer`,
  unreached: (span) => (span === null ? 'Serveur non atteint' : `Serveur non atteint depuis ${span}`),
  waits: 'Le serveur demande d’attendre',
  refused: 'Refusé par le serveur',
  quarantined: (count) => plural(count, `${count} entrée mise à l’écart`, `${count} entrées mises à l’écart`),
  rolledBack: 'Le journal du serveur a peut-être reculé',
  headFault: 'Le journal du serveur est douteux',
  clocksOff: (count) =>
    plural(count, `${count} tablette a une horloge fausse`, `${count} tablettes ont une horloge fausse`),
  history: (share) => `Chargement de l’historique : ${share}`,
  historyChecked: 'Vérification de l’historique',
  historyTitle: 'Historique',
  stillMissing: (missing, of) =>
    plural(
      of,
      `${missing} entrée ancienne sur ${of} n’est pas encore ici.`,
      `${missing} entrées anciennes sur ${of} ne sont pas encore ici.`,
    ),
  checkedHelp: 'Toutes les entrées sont ici. Cette tablette recalcule maintenant tout elle-même et compare.',
  historyHelp:
    'Cette tablette est partie de ce qu’une autre tablette avait calculé. Charger et vérifier marchent comme d’habitude. Le journal, ses exports et ses traçages sont incomplets ici jusqu’à l’arrivée du reste.',
  notWhole: (missing) =>
    `${plural(missing, `${missing} entrée ancienne arrive`, `${missing} entrées anciennes arrivent`)} encore : la réponse serait incomplète. Le serveur les a toutes.`,
};
