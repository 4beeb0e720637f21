import type { words as english } from '../en/shell.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  nav: {
    line: 'Linie',
    load: 'Rüsten',
    change: 'Umrüsten',
    stock: 'Rollen',
    log: 'Protokoll',
    plant: 'Werk',
    search: 'Suchen',
    lines: 'Alle Linien',
    wall: 'Wandanzeige',
  },
  noLine: 'Noch keine Linie',
  nowOn: (line: string) => `Jetzt an ${line}`,
  noSetup: 'keine Rüstung gewählt',
  side: { top: 'oben', bottom: 'unten' },
  revision: (revision) => `Rev. ${revision}`,
  run: (done, wanted) => `${done} von ${wanted} Nutzen`,
  signIn: 'Anmelden',
  signInFirst: 'Zuerst Ausweis scannen',
  needsRole: (role) => `Nötig: ${role}`,
  signInHelp: 'Ausweis scannen oder Namen wählen.',
  signedInAs: (name) => `Angemeldet: ${name}`,
  signOut: 'Abmelden',
  roles: { operator: 'Bediener', lead: 'Schichtleiter', engineer: 'Ingenieur' },
  offlineReady: 'Bereit für Arbeit ohne Netz',
  gettingReady: 'Vorbereitung für Arbeit ohne Netz…',
  toSend: (count) => `${count} zu senden`,
  help: 'Hilfe',
  skipToDock: 'Zu „Tippen“ und „Kamera“ springen',
  done: 'Fertig',
  cancel: 'Abbrechen',
  detailsOf: (what) => `Mehr: ${what}`,
  lessOf: (what) => `Weniger: ${what}`,
  close: 'Schließen',
  newVersion: 'Eine neue Version ist da.',
  update: 'Jetzt aktualisieren',
  updateLater: 'Sie wartet, bis keine Aufgabe offen ist.',
  languageLater:
    'Diese Sprache ist noch nicht auf dem Tablet. Verbinden Sie es mit dem Netz und wählen Sie noch einmal.',
  leftAlone: (name, minutes) =>
    plural(
      minutes,
      `${name} wurde abgemeldet: 1 Minute ohne Berührung. Offene Arbeit bleibt erhalten.`,
      `${name} wurde abgemeldet: ${minutes} Minuten ohne Berührung. Offene Arbeit bleibt erhalten.`,
    ),
  shiftOver: (name) => `${name} wurde abgemeldet: Eine Schicht ist vorbei. Offene Arbeit bleibt erhalten.`,
  notInPractice: 'Nicht in der Übung',
  fault: {
    'disk-full': {
      title: 'Dieses Tablet ist voll',
      text: 'Hier lässt sich nichts mehr schreiben oder prüfen. Alles Angenommene ist sicher. Arbeiten Sie an einem anderen Tablet. Schaffen Sie hier Platz und versuchen Sie es noch einmal.',
    },
    'closed-by-newer': {
      title: 'Eine neuere Version ist in einem anderen Fenster offen',
      text: 'Dieses Fenster ist eine ältere Version und hat angehalten. Alles Angenommene ist sicher. Laden Sie neu, um weiterzuarbeiten.',
    },
    lost: {
      title: 'Das Protokoll auf diesem Tablet lässt sich nicht öffnen',
      text: 'Arbeiten Sie an einem anderen Tablet und rufen Sie die Person, die die Tablets betreut. Löschen Sie nicht die Daten des Browsers: Nicht gesendete Einträge sind vielleicht noch zu retten.',
    },
    unknown: {
      title: 'Das Protokoll konnte nicht geschrieben werden',
      text: 'Was als erledigt angezeigt wurde, ist sicher. Die letzte Aktion wurde nicht geschrieben. Laden Sie neu und prüfen Sie das Protokoll, bevor Sie weitermachen.',
    },
  },
  reload: 'Neu laden',
  tryAgain: 'Noch einmal',
  muted: 'Kein Ton, bis Sie tippen',
  storageLow: (megabytes) => `Nur noch ${megabytes} MB für das Protokoll auf diesem Tablet.`,
  storageEnds:
    'Wächst das Protokoll so weiter, ist sein Platz auf diesem Tablet binnen einer Woche voll. Machen Sie Speicher frei.',
};
