import type { words as english } from '../en/week.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Wann die Linie arbeitet',
  help: 'Das Bild zeigt eine Woche. Tippen Sie darunter auf eine Schicht, um sie zu ändern.',
  roundTheClock: 'Keine Schicht ist eingegeben: Die Linie zählt als rund um die Uhr arbeitend.',
  earlier: 'Woche davor',
  later: 'Woche danach',
  weekOf: (date) => `Woche vom ${date}`,
  pattern: (name) => `Woche ${name}`,
  patterns: ['A', 'B'],
  alternate: 'Zwei Wochen wechseln sich ab',
  thisIs: (name) => `Das ist eine Woche ${name}`,
  days: ['Mo', 'Di', 'Mi', 'Do', 'Fr', 'Sa', 'So'],
  holiday: 'Feiertag',
  kinds: { shift: 'Schicht', break: 'Pause', overtime: 'Überstunden', stop: 'Geplanter Halt' },
  span: (from, to) => `${from} bis ${to}`,
  addShift: 'Schicht hinzufügen',
  shift: (from, to) => `Schicht ${from} bis ${to}`,
  daysOfShift: 'Beginnt am',
  from: 'Von',
  to: 'Bis',
  breaks: 'Pausen dieser Schicht',
  breakDays: 'In Schichten, die beginnen am',
  addBreak: 'Pause hinzufügen',
  removeShift: 'Schicht entfernen',
  remove: 'Entfernen',
  done: 'Schließen',
  lists: { holidays: 'Feiertage', overtime: 'Überstunden', stops: 'Geplante Halte' },
  listHelp: {
    holidays: 'An diesen Tagen beginnt keine Schicht.',
    overtime: 'Dann arbeitet die Linie, auch an Feiertagen.',
    stops: 'Dann steht die Linie: Wartung, Besprechungen.',
  },
  add: {
    holidays: 'Feiertag hinzufügen',
    overtime: 'Überstunden hinzufügen',
    stops: 'Halt hinzufügen',
  },
  note: 'Notiz',
  faults: {
    'no-days': (span) => `Schicht ${span} hat keinen Tag. Wählen Sie ihre Tage oder entfernen Sie sie.`,
    'break-outside': (span) => `Pause ${span} liegt nicht in ihrer Schicht. Berichtigen Sie ihre Zeiten.`,
    'ends-early': (span) => `Berichtigen Sie ${span}: Es endet, bevor es beginnt.`,
    'not-filled': () =>
      'In den Arbeitszeiten fehlt eine Zeit oder ein Datum. Geben Sie es ein oder entfernen Sie die Zeile.',
  },
};
