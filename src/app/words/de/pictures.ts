import type { words as english } from '../en/pictures.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  rule: 'Bilder von Etiketten',
  ruleHelp: 'Bewahrt das Bild jedes Etiketts auf, das die Kamera beim Rüsten oder Spleißen liest.',
  keep: 'Bilder aufbewahren',
  days: 'Tage der Aufbewahrung',
  megabytes: 'Platz auf jedem Tablet, MB',
  fault: 'Bilder brauchen 1 bis 3650 Tage und 1 bis 10000 MB.',
  shown: 'Bild des Etiketts',
  notHere:
    'Das Bild ist nicht auf diesem Tablet. Sehen Sie auf dem Tablet nach, das das Etikett gelesen hat.',
  none: 'Kein Bild gefunden.',
  broken: 'Dieses Bild ist nicht das aufbewahrte. Sagen Sie es einem Schichtleiter.',
  failed: 'Das Bild des Etiketts wurde nicht aufbewahrt. Das Ergebnis gilt.',
  exported: 'Auch die Bilder der Etiketten speichern',
  saved: (name) => `Gespeichert als ${name}.`,
};
