import type { words as english } from '../en/guide.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Übung mit Anleitung',
  about: 'Ein Schritt nach dem anderen. Gehen Sie, wenn Sie müssen: Es geht am selben Schritt weiter.',
  guides: {
    operator: 'Drei Rollen, eine davon falsch. Ein Spleiß. Eine Warnung.',
    lead: 'Eine zurückgehaltene Rolle entscheiden. Ein Export.',
    engineer: 'Eine Rüstung importieren.',
  },
  start: 'Anleitung starten',
  goOn: (at, of) => `Weiter bei Schritt ${at} von ${of}`,
  again: 'Von Schritt 1 neu beginnen',
  step: (at, of) => `Schritt ${at} von ${of}`,
  leave: 'Anleitung verlassen',
  go: 'Zeigen, wo',
  skip: 'Schritt überspringen',
  still: 'Das war etwas anderes. Der Schritt ist noch offen.',
  over: 'Alle Schritte sind getan. Weiter nach Belieben, oder Übung beenden.',
  noLead: 'Dieses Werk hat noch keinen Schichtleiter. Legen Sie zuerst einen an.',
  example: 'Beispielliste verwenden',
  steps: {
    first: {
      ask: 'Tippen Sie ein Platzetikett an, dann die richtige Rolle.',
      seen: (slot) => `${slot}: angenommen.`,
    },
    wrong: {
      ask: (group) => `Tippen Sie ein Platzetikett an, dann eine falsche Rolle. Siehe „${group}“.`,
      seen: (slot) => `${slot}: abgelehnt. Diese Rolle darf nicht darauf.`,
    },
    second: {
      ask: 'Noch ein Platzetikett antippen, dann die richtige Rolle.',
      seen: (slot) => `${slot}: angenommen.`,
    },
    splice: {
      ask: (group) => `Spleißen: unter „${group}“ einen Platz antippen, dann seine Rolle.`,
      seen: (slot) => `${slot}: gespleißt.`,
    },
    run: {
      ask: 'Starten Sie den Lauf auf der Linie.',
      seen: 'Der Lauf hat begonnen.',
    },
    warning: {
      ask: 'Zählen Sie auf der Linie Nutzen, bis ein Platz warnt.',
      seen: (slot) => `${slot}: Warnung.`,
    },
    answer: {
      ask: (act) => `Tippen Sie neben der Warnung auf „${act}“, oder spleißen Sie den Platz.`,
      seen: 'Die Warnung ist beantwortet.',
    },
    hold: {
      ask: 'Tippen Sie ein Platzetikett an, dann die Rolle ohne Menge.',
      seen: (slot) => `${slot}: zurückgehalten. Ein Schichtleiter muss entscheiden.`,
    },
    clear: {
      ask: 'Entscheiden Sie als Schichtleiter: Ausweis, PIN, Grund.',
      seen: 'Entschieden, mit Ihrem Namen im Protokoll.',
    },
    export: {
      ask: (act) => `Im Protokoll „${act}“ antippen, dann CSV. In der Übung wird keine Datei gespeichert.`,
      seen: 'Export verlangt. Es wurde keine Datei gespeichert.',
    },
    open: {
      ask: (page) => `Öffnen Sie „${page}“.`,
      seen: (page) => `„${page}“ ist offen.`,
    },
    take: {
      ask: (example, act) => `Tippen Sie auf „${example}“. Sehen Sie die Änderungen an, dann „${act}“.`,
      seen: (product) => `${product}: importiert.`,
    },
    look: {
      ask: (page) => `Suchen Sie sie unter „${page}“.`,
      seen: 'Sie steht in der Liste.',
    },
  },
};
