import type { words as english } from '../en/record.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Beleg auf Papier',
  asking: 'Der Server wird nach dem Beweis gefragt…',
  proven: (place, size) =>
    `Bewiesen: Eintrag ${place} von ${size} im Protokoll des Werks, mit dem Schlüssel des Werks signiert.`,
  holds: 'Der Code trägt den Beweis. „reelward log verify --record“ prüft ihn, ohne das Protokoll.',
  seen: (count, names) =>
    plural(
      count,
      `Geprüft und signiert von 1 Tablet: ${names}.`,
      `Geprüft und signiert von ${count} Tablets: ${names}.`,
    ),
  since: (when) => `Noch nicht bewiesen: kein Server seit ${when}.`,
  never: 'Noch nicht bewiesen: kein Server erreicht.',
  waiting: 'Noch nicht bewiesen: der Server hat diesen Eintrag nicht.',
  noProof: 'Nicht bewiesen: der Server gab keinen Beweis.',
  later: 'Drucken Sie noch einmal, wenn der Server den Eintrag hat. Dann trägt das Papier den Beweis.',
  key: (fingerprint) => `Schlüssel des Werks: ${fingerprint}`,
  brought: {
    'one-log': 'Dieses Papier gehört zum selben Protokoll wie dieses Tablet.',
    'not-one-log':
      'Dieses Papier und der Server zeigen zwei verschiedene Protokolle. Rufen Sie die Qualitätsleitung.',
    'not-the-plants': 'Dieses Papier ist nicht mit dem Schlüssel dieses Werks signiert.',
    'no-server': 'Kein Server. Das Papier wird geprüft, wenn der Server antwortet.',
    'not-checked': 'Das Papier wurde nicht geprüft. Scannen Sie es an einem Tablet, das abgeglichen ist.',
  },
};
