import type { words as english } from '../en/scanner.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  layouts: {
    us: 'Englisch (USA)',
    uk: 'Englisch (GB)',
    german: 'Deutsch',
    'swiss-german': 'Schweizerdeutsch',
    french: 'Französisch',
    spanish: 'Spanisch',
    italian: 'Italienisch',
    swedish: 'Schwedisch',
  },
  title: 'Scannen Sie diesen Code mit dem Scanner',
  help: 'Von diesem Bildschirm, einem anderen oder dem gedruckten Blatt. Solange diese Seite offen ist, gehen Scans nirgends sonst hin.',
  codeLabel: 'Kalibriercode',
  striped: 'Ein Scanner, der nur Strichcodes liest',
  stripedLabel: 'Kalibrier-Strichcode',
  stripedHelp:
    'Zu breit für einen kleinen Bildschirm: Drucken Sie dort das Blatt. Strichcodes tragen ein Trennzeichen, daher wird nur dieses getestet.',
  stripedSheet: 'Für einen Scanner, der nur Strichcodes liest:',
  print: 'Blatt drucken',
  waiting: 'Wartet auf einen Scan…',
  right: 'Dieser Scanner ist richtig eingestellt.',
  rightText: 'Buchstaben, Zeichen und Trennzeichen kommen an wie gedruckt.',
  plainOnly: 'Einfache Codes werden gelesen; Etiketten mit Trennzeichen nicht.',
  plainOnlyText: 'Solche Etiketten werden abgelehnt, bis der Scanner wie unten eingestellt ist.',
  wrong: 'Diesem Scanner ist noch nicht zu trauen.',
  wrongText: 'Was damit gescannt wird, kommt nicht an wie gedruckt.',
  findings: {
    'all-equal': 'Jedes Zeichen kam an wie gedruckt.',
    'half-arrived': (found, wanted) =>
      `Nur ${found} von ${wanted} Zeichen kamen an: Der Scan wurde abgeschnitten. Stellen Sie die Verzögerung zwischen Zeichen auf keine, oder bringen Sie den Scanner näher an seine Basis.`,
    'layout-differs': (scanner, tablet) =>
      `Der Scanner tippt für die Tastatur ${scanner}, das Tablet erwartet ${tablet}. Stellen Sie die Tastatur des Scanners auf ${tablet}, oder die Belegung des Tablets auf ${scanner}.`,
    'characters-differ':
      'Zeichen kommen verändert an, und keine hier bekannte Tastaturbelegung erklärt es. Stellen Sie die Tastatur des Scanners auf die Belegung des Tablets und scannen Sie neu.',
    'case-inverted':
      'Groß- und Kleinbuchstaben kommen vertauscht an. Schalten Sie die Feststelltaste aus und stellen Sie den Scanner so ein, dass er Buchstaben lässt wie gedruckt.',
    'separators-lost': (names) =>
      `Trennzeichen kommen nicht an (${names}). Stellen Sie den Scanner so ein, dass er Steuerzeichen sendet, als Strg mit einer Taste oder als Alt mit dem Ziffernblock.`,
    'separator-replaced': (name, by) =>
      `Das Trennzeichen ${name} kommt als „${by}“ an. Stellen Sie den Scanner so ein, dass er Steuerzeichen unverändert sendet.`,
    'terminator-missing':
      'Kein Enter am Ende, daher ist das Ende eines Scans geraten. Stellen Sie das Suffix des Scanners auf Enter.',
    'unknown-key': (key) =>
      `Die Taste „${key}“ kam mitten im Scan. Nehmen Sie solche Tasten aus den Einstellungen des Scanners.`,
    slow: (pace) =>
      `${pace} ms zwischen zwei Zeichen ist langsam. Stellen Sie die Verzögerung zwischen Zeichen auf keine.`,
    'symbology-id-sent': (id) =>
      `Der Scanner sendet die Art des Codes voraus (${id}). Das wird verstanden und darf bleiben.`,
  },
  wanted: 'gedruckt',
  found: 'angekommen',
  label: {
    title: 'Scannen Sie ein gedrucktes Etikett',
    help: 'Von Platz, Feeder, Ausweis oder Rolle.',
    read: 'Dieses Etikett wird gelesen.',
    unknown: 'Dieses Tablet kennt dieses Etikett nicht.',
    unknownHelp:
      'Scannen Sie es noch einmal. Hilft das nicht, drucken Sie es größer oder legen Sie es zuerst im Werk an.',
  },
  arrived: 'Was ankam',
  none: 'Noch nichts. Scannen Sie etwas: Es erscheint hier, mit Steuerzeichen.',
  characters: (count) => `${count} Zeichen`,
  pace: (ms) => `je ${ms} ms`,
  endedBy: { Enter: 'dann Enter', Tab: 'dann Tab', silence: 'kein Enter' },
  reads: 'gelesen als',
  readsNothing: 'kein bekanntes Etikett',
  settingsTitle: 'Wie ein Scanner eingestellt sein soll',
  settings: [
    'Arbeitet als Tastatur (HID).',
    'Land der Tastatur: dasselbe wie das des Tablets.',
    'Sendet Steuerzeichen, als Strg mit einer Taste oder Alt mit dem Ziffernblock.',
    'Suffix: Enter. Kein Präfix.',
    'Buchstaben wie gedruckt: kein Wechsel von groß und klein.',
    'Keine Verzögerung zwischen Zeichen.',
  ],
  keep: 'Tempo dieses Scanners auf diesem Tablet speichern',
  keptNow: 'Gespeichert. Dieses Tablet unterscheidet Scannen von Tippen nach diesem Tempo.',
  isKept: 'Dieses Tablet hat das Tempo seines Scanners gespeichert.',
  forget: 'Übliches Tempo nutzen',
  sheetTitle: 'Kalibrierung des Scanners',
  sheetText: 'Öffnen Sie am Tablet Werk, Scanner, und scannen Sie dann diesen Code.',
  sheetHolds: 'Der Code enthält:',
  fields: {
    part: 'Bauteil',
    supplierPart: 'Lieferantenteil',
    quantity: 'Menge',
    lot: 'Charge',
    dateCode: 'Datumscode',
    reel: 'Rolle',
  },
};
