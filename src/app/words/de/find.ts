import type { words as english } from '../en/find.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: 'Mit der Kamera suchen',
  sweep: 'Kontrollrunde mit der Kamera',
  title: 'Rollen suchen',
  help: 'Führen Sie das Tablet langsam an den Etiketten entlang.',
  sweepHelp: 'Halten Sie das Etikett des Platzes und das seiner Rolle im Bild.',
  on: (slot) => `auf ${slot}`,
  to: (slots) => `auf ${slots} rüsten`,
  told: (wanted, barred, read) => `Gesucht: ${wanted} · nicht verwenden: ${barred} · gelesen: ${read}`,
  swept: (seen, all) => `Gesehen: ${seen} von ${all}`,
  other: 'Jetzt nicht gesucht',
  unknown: 'Unbekannt',
  reading: 'Wird gelesen …',
  none: 'Noch nichts gelesen.',
  missing: 'Noch nicht gesehen',
  several: (slot) =>
    `${slot}: mehr als eine Rolle ist nah. Gehen Sie näher heran, oder scannen Sie Platz und Rolle.`,
  unsure: (slot) => `${slot}: Das Etikett zeigt nicht, welche Rolle es ist.`,
  check: 'Diesen Platz prüfen',
  times: (count) => `${count} × im Bild`,
  kept: (count) => `Gesehene Rollen: ${count}. Sie stehen im Protokoll.`,
  notKept: 'Das Gesehene steht nicht im Protokoll. Melden Sie sich zuerst an.',
  barred: 'Nicht verwenden',
};
