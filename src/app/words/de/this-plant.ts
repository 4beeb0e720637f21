import type { words as english } from '../en/this-plant.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  name: 'Name des Werks',
  nameHelp: 'Steht auf Rüstblättern, Ausweisen und Exporten.',
  zoneHelp: 'Neue Linien beginnen damit.',
  nameMissing: 'Geben Sie den Namen des Werks ein.',
  zoneUnknown: 'Wählen Sie eine Zeitzone aus der Liste.',
  same: 'Nichts ist geändert.',
  save: 'Namen speichern',
  saved: (name) => `${name} gespeichert.`,
  fileTitle: 'Eine Datei für ein zweites Werk',
  fileHelp:
    'Sie enthält Linien, Maschinen, Bänke, Regeln, Teileregeln, Checklisten und Etikettenregeln. Sie enthält keine Personen, Rollen, Rüstungen und keinen Verlauf.',
  noLine: 'Es gibt noch keine Linie.',
  fileSave: 'Datei speichern',
  fileSaved: (name) => `${name} gespeichert.`,
  beginTitle: 'Mit der Datei eines anderen Werks beginnen',
  beginHelp: 'Sie wurde im anderen Werk gespeichert, auf dieser Seite oder mit „reelward plant“.',
  notEmpty: 'Dieses Werk hat schon Linien. Eine Datei ist nur für ein Werk ohne Linien.',
  begun: 'Linien und Regeln sind da. Weiter mit dem nächsten Schritt.',
  choose: 'Datei wählen',
  brings: 'Sie bringt:',
  bringsOf: (name) => `Aus ${name} bringt sie:`,
  counts: {
    lines: 'Linien',
    slots: 'Plätze',
    parts: 'Teileregeln',
    checklists: 'Checklisten',
    labelRules: 'Etikettenregeln',
  },
  begin: 'Diese Datei verwenden',
  toSteps: 'Erste Schritte',
  faults: {
    'not-json': 'Das ist keine Datei eines Werks. Wählen Sie die, die das andere Werk gespeichert hat.',
    'not-a-plant': 'Das ist eine andere Datei. Wählen Sie die, die das andere Werk gespeichert hat.',
    newer: 'Eine neuere Version hat diese Datei geschrieben. Aktualisieren Sie zuerst dieses Tablet.',
    'no-lines': 'In dieser Datei ist keine Linie. Speichern Sie sie im anderen Werk neu.',
    kind: (at, what) =>
      `Eintrag ${at} (${what}) gehört nicht in so eine Datei. Speichern Sie sie im anderen Werk neu.`,
    payload: (at, what) =>
      `Eintrag ${at} (${what}) ist beschädigt. Speichern Sie die Datei im anderen Werk neu.`,
  },
};
