import type { words as english } from '../en/held.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  causes: {
    'wrong-reel': 'Falsche Rolle spät gefunden',
    cleared: 'Irrtümlich freigegeben',
    blocked: 'Gesperrtes Material',
    'floor-life': 'Offenzeit war abgelaufen',
  },
  hold: 'Diese Nutzen zurückhalten',
  holdTitle: (panels) => `${panels} Nutzen zurückhalten?`,
  holdHelp:
    'Alle Nutzen, die es tragen können, werden zurückgehalten, auch die noch in der Linie. Sie bleiben es, bis ein Schichtleiter sie unterschreibt.',
  goesOn:
    'Es steht noch auf einem Platz. Nehmen Sie es zuerst herunter, sonst werden kommende Nutzen nicht zurückgehalten.',
  cause: 'Warum werden sie zurückgehalten?',
  lifeHelp: 'Zurückgehalten werden die Nutzen ab dem Moment, in dem seine Offenzeit endete.',
  noLifeOver: 'Laut Protokoll war seine Offenzeit nie abgelaufen, während Nutzen gebaut wurden.',
  reason: 'Was wurde gefunden?',
  codes: (codes) => plural(codes, '1 Nutzencode ist bekannt.', `${codes} Nutzencodes sind bekannt.`),
  sure: (panels) =>
    panels === 0
      ? 'Keiner trägt es sicher.'
      : plural(panels, '1 trägt es sicher.', `${panels} tragen es sicher.`),
  done: (panels) => plural(panels, '1 Nutzen ist zurückgehalten.', `${panels} Nutzen sind zurückgehalten.`),
  none: 'Keine Nutzen sind zurückgehalten.',
  span: (first, last) => `Nutzen ${first} bis ${last}`,
  still: (held, all) => `Noch nicht unterschrieben: ${held} von ${all}`,
  noCodes: 'Keine Nutzencodes. Finden Sie diese Nutzen über ihre Nummern.',
  signed: (who, when) => `Unterschrieben von ${who}, ${when}`,
  sign: 'Unterschreiben',
  signAll: 'Alle unterschreiben',
  signTitle: 'Was wurde mit diesen Nutzen getan?',
  signHelp: 'Wählen Sie einzelne Nutzen, oder unterschreiben Sie alle.',
  signWhy: 'Was wurde getan? Z. B. nachgearbeitet, verschrottet, für richtig befunden.',
  signDone: 'Unterschrieben.',
  save: 'Codes als CSV speichern',
  which: 'Welche Nutzen?',
};
