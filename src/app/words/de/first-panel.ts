import type { words as english } from '../en/first-panel.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  intro: 'Messen Sie die kritischen Bauteile. Sehen Sie jedes Bauteil an, das verkehrt herum sitzen kann.',
  none: 'Diese Rüstung nennt keine kritischen Bauteile, Werte oder Polaritäten.',
  other: 'Anderes Bauteil messen',
  critical: 'Kritische Bauteile und Werte',
  orientation: 'Ausrichtung',
  left: (open) => plural(open, 'noch 1 offen', `noch ${open} offen`),
  all: 'alles richtig',
  states: { open: 'zu tun', accepted: 'richtig', held: 'nicht eindeutig', refused: 'falsch' },
  marks: { critical: 'kritisch', perPanel: (count) => `${count} pro Nutzen` },
  measure: 'Messen',
  again: 'Noch einmal messen',
  right: 'Richtig',
  wrong: 'Falsch',
  takeBack: 'Noch einmal ansehen',
  title: (part) => `${part} messen`,
  wanted: 'Was soll es messen?',
  code: 'Wert oder sein Code',
  codeHelp: 'Zum Beispiel 4k7, 104K, 10 kΩ (IEC 60062). Dann die richtige Lesart wählen.',
  nominal: 'Nennwert',
  unit: 'Einheit',
  tolerance: 'Toleranz ± %',
  reading: (unit) => `Messgerät zeigt, in ${unit}`,
  meter: 'Genauigkeit des Messgeräts',
  percent: '± % vom Messwert',
  fixed: (unit) => `± fest, in ${unit}`,
  meterHelp: 'Siehe Datenblatt des Messgeräts. Dieses Tablet merkt es sich.',
  limits: (least, most, unit) => `Verlangt: ${least} bis ${most} ${unit}`,
  result: (value, uncertainty, unit) => `Gemessen: ${value} ± ${uncertainty} ${unit}`,
  why: {
    accepted: 'Innerhalb der Grenzen, auch mit dem Fehler des Messgeräts.',
    held: 'Für dieses Messgerät zu nah an einer Grenze. Nehmen Sie ein besseres, oder lassen Sie die Qualität entscheiden.',
    refused:
      'Außerhalb der Grenzen, auch mit dem Fehler des Messgeräts. Halten Sie den Nutzen zurück; prüfen Sie Rolle und Platz.',
  },
  numbers: 'Geben Sie Zahlen für Wert, Toleranz und Messwert ein.',
  keep: 'Messung speichern',
  caution:
    'Nutzen aus der Linie und stromlos, Kondensatoren entladen. Bauteile daneben ändern, was ein Messgerät in der Schaltung anzeigt.',
  known: 'wie zuvor gemessen',
};
