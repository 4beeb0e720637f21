import type { words as english } from '../en/all-lines.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  tile: 'Où en est chaque ligne, et l’écran mural.',
  states: {
    running: 'En marche',
    stopped: 'Arrêtée',
    silent: 'Aucun compte',
    changing: 'Changement de série',
    loading: 'Chargement',
    ready: 'Prête',
    idle: 'Aucun plan',
  },
  since: (span) => `depuis ${span}`,
  loaded: 'emplacements chargés',
  ends: (clock) => `finie vers ${clock}`,
  now: 'Maintenant',
  nextWalk: (when, count, slots) =>
    plural(count, `${when} : ${count} raccord, ${slots}`, `${when} : ${count} raccords, ${slots}`),
  noWalk: 'Aucun raccord à faire.',
  missed: (slot, clock) => `Personne n’atteint ${slot} avant ${clock}.`,
  looking: 'Calcul en cours…',
  warnings: (count) => plural(count, `${count} alerte`, `${count} alertes`),
  holds: (count) => plural(count, `${count} pour le chef d’équipe`, `${count} pour le chef d’équipe`),
  blocked: (count) => plural(count, `${count} bobine bloquée`, `${count} bobines bloquées`),
  byHand: 'Comptée à la main',
  byStation: (name) => `Comptée par ${name}`,
  silentStation: (name) => `${name} est muette`,
  lastPanel: (span) => `dernier flan il y a ${span}`,
  lastAct: (who, span) => `${who}, il y a ${span}`,
  heard: (span) => `dernière entrée il y a ${span}`,
  notHeard: 'aucune entrée reçue',
  here: 'cette tablette',
  caution:
    'Les autres lignes sont montrées d’après le dernier envoi de leurs tablettes. Regardez la ligne avant d’agir.',
  quiet: (tablets) => `Rien d’écrit par : ${tablets}`,
  quietFor: (name, span) => `${name} depuis ${span}`,
  toWall: 'Afficher au mur',
  wallHelp: 'Personne n’est identifié ici, et les scans ne font rien.',
  stay: 'Toujours démarrer ici',
  stayNoMore: 'Ne plus démarrer ici',
  leave: 'Quitter l’écran mural',
};
