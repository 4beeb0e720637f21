import type { words as english } from '../en/week.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Quand la ligne travaille',
  help: 'L’image montre une semaine. Touchez un poste en dessous pour le modifier.',
  roundTheClock: 'Aucun poste n’est saisi : la ligne compte comme travaillant jour et nuit.',
  earlier: 'Semaine d’avant',
  later: 'Semaine d’après',
  weekOf: (date) => `Semaine du ${date}`,
  pattern: (name) => `Semaine ${name}`,
  patterns: ['A', 'B'],
  alternate: 'Deux semaines alternent',
  thisIs: (name) => `C’est une semaine ${name}`,
  days: ['Lu', 'Ma', 'Me', 'Je', 'Ve', 'Sa', 'Di'],
  holiday: 'Jour férié',
  kinds: {
    shift: 'Poste',
    break: 'Pause',
    overtime: 'Heures supplémentaires',
    stop: 'Arrêt prévu',
  },
  span: (from, to) => `${from} à ${to}`,
  addShift: 'Ajouter un poste',
  shift: (from, to) => `Poste ${from} à ${to}`,
  daysOfShift: 'Commence le',
  from: 'De',
  to: 'À',
  breaks: 'Pauses de ce poste',
  breakDays: 'Dans les postes qui commencent le',
  addBreak: 'Ajouter une pause',
  removeShift: 'Enlever le poste',
  remove: 'Enlever',
  done: 'Fermer',
  lists: {
    holidays: 'Jours fériés',
    overtime: 'Heures supplémentaires',
    stops: 'Arrêts prévus',
  },
  listHelp: {
    holidays: 'Aucun poste ne commence ces jours-là.',
    overtime: 'La ligne travaille alors, les jours fériés aussi.',
    stops: 'La ligne est arrêtée alors : maintenance, réunions.',
  },
  add: {
    holidays: 'Ajouter un jour férié',
    overtime: 'Ajouter des heures',
    stops: 'Ajouter un arrêt',
  },
  note: 'Note',
  faults: {
    'no-days': (span) =>
      `Le poste ${span} n’a pas de jour. Choisissez ses jours ou enlevez-le.`,
    'break-outside': (span) => `La pause ${span} n’est pas dans son poste. Corrigez ses heures.`,
    'ends-early': (span) => `Corrigez ${span} : cela finit avant de commencer.`,
    'not-filled': () =>
      'Une heure ou une date manque dans les horaires. Saisissez-la ou enlevez la rangée.',
  },
};
