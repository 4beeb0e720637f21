import type { words as english } from '../en/sync.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  live: 'Abgeglichen',
  syncing: 'Gleicht ab…',
  toSend: (count) => `${count} zu senden`,
  unreached: (span) => (span === null ? 'Server nicht erreicht' : `Server seit ${span} nicht erreicht`),
  waits: 'Der Server bittet zu warten',
  refused: 'Vom Server abgelehnt',
  quarantined: (count) => plural(count, '1 Eintrag ausgesondert', `${count} Einträge ausgesondert`),
  rolledBack: 'Das Protokoll des Servers ging womöglich zurück',
  headFault: 'Das Protokoll des Servers ist zweifelhaft',
  clocksOff: (count) =>
    plural(count, 'Die Uhr von 1 Tablet geht falsch', `Die Uhren von ${count} Tablets gehen falsch`),
  history: (share) => `Verlauf wird geladen: ${share}`,
  historyChecked: 'Verlauf wird geprüft',
  historyTitle: 'Verlauf',
  stillMissing: (missing, of) =>
    plural(
      of,
      `${missing} von 1 älteren Eintrag ist noch nicht hier.`,
      `${missing} von ${of} älteren Einträgen sind noch nicht hier.`,
    ),
  checkedHelp: 'Alle Einträge sind hier. Dieses Tablet rechnet nun alles selbst nach und vergleicht.',
  historyHelp:
    'Dieses Tablet begann mit dem, was ein anderes Tablet errechnet hat. Rüsten und Prüfen gehen wie sonst. Das Protokoll, seine Exporte und Rückverfolgungen sind hier unvollständig, bis der Rest da ist.',
  notWhole: (missing) =>
    `${plural(missing, '1 älterer Eintrag ist', `${missing} ältere Einträge sind`)} noch unterwegs: Die Antwort wäre unvollständig. Der Server hat sie alle.`,
};
