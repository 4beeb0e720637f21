import type { words as english } from '../en/practice.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  word: 'ÜBUNG',
  tells: 'Hier zählt nichts. Die echte Linie läuft weiter.',
  end: 'Übung beenden',
  real: (slot, told) => `Auf der echten Linie: ${slot} ${told}`,
  title: 'Üben, ohne die Linie zu berühren',
  about:
    'Sie bekommen eine Kopie dieser Linie, wie sie jetzt ist. Scannen, spleißen, umrüsten, Fehler machen: Nichts erreicht die echte Linie, ihr Protokoll oder ihre Zahlen. Die Kopie wird gelöscht, wenn Sie die Übung beenden, oder nach zwölf Stunden.',
  aboutNew:
    'Dieses Werk hat noch keine Linie, daher bekommen Sie eine kleine, erfundene. Scannen, rüsten, spleißen, Fehler machen. Sie wird gelöscht, wenn Sie die Übung beenden, oder nach zwölf Stunden.',
  warns: 'Warnungen der echten Linie erscheinen weiterhin.',
  start: 'Übung starten',
  taken: 'Die Übung ist in einem anderen Fenster dieses Tablets offen. Beenden Sie sie dort zuerst.',
  notSaved: (name) => `Übung: Es wird keine Datei gespeichert. Auf der echten Linie wäre es ${name}.`,
  labels: 'Etiketten zum Üben',
  labelsHelp:
    'Tippen Sie auf ein Etikett, statt zu scannen: der Platz, sein Feeder, wenn verlangt, seine Rolle.',
  print: 'Etiketten drucken',
  groups: {
    load: 'Zu rüsten',
    splice: 'Als Nächstes zu spleißen',
    wrong: 'Abzulehnen oder zurückzuhalten',
    panels: 'Nutzen',
  },
  slot: (slot) => `Platz ${slot}`,
  wants: (part) => `braucht ${part}`,
  right: (slot) => `richtige Rolle für ${slot}`,
  wrong: (slot, asked) => `gehört auf ${slot}; versuchen Sie sie auf ${asked}`,
  foreign: (asked) => `kein Platz braucht sie; versuchen Sie sie auf ${asked}`,
  bare: (slot) => `keine Menge auf dem Etikett; für ${slot}`,
  free: (slot) => `freier Feeder für ${slot}`,
  panel: 'zählt einen Nutzen',
  nothing: 'Wählen Sie zuerst eine Rüstung. Ihre Etiketten erscheinen dann hier.',
  names: {
    line: 'Übungslinie',
    machine: 'erste Maschine',
    bank: 'vorn',
    product: 'Übungsleiterplatte',
  },
};
