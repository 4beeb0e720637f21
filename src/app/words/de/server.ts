import type { words as english } from '../en/server.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  noKey: 'Diese Seite kann keine Einträge signieren',
  noKeyHelp:
    'Schlüssel, Kamera und Start ohne Netz brauchen eine sichere Seite. Öffnen Sie die App über ihre https-Adresse (der Server druckt sie, und wie man ihr vertraut), oder am Computer des Servers selbst. Bis dahin bleiben Einträge auf diesem Tablet.',
  alone: 'Dieses Tablet arbeitet allein',
  aloneHelp:
    'Es prüft, warnt und führt sein Protokoll ohne Server. Treten Sie einem bei, um das Protokoll mit den anderen Tablets zu teilen, auch ältere Einträge.',
  joinTitle: 'Dem Server des Werks beitreten',
  joinAgain: 'Neu beitreten',
  code: 'Einmalcode',
  codeHelp:
    'Zehn Buchstaben und Ziffern, vom Tablet eines Schichtleiters oder vom Server. Tippen oder seinen Code scannen.',
  codeWrong: 'Ein Code hat zehn Buchstaben und Ziffern, z. B. ABCDE-23456.',
  name: 'Wie dieses Tablet genannt wird',
  nameMissing: 'Geben Sie einen Namen ein, damit ein Schichtleiter die Tablets unterscheiden kann.',
  join: 'Beitreten',
  joining: 'Tritt bei…',
  joined: (plant) => `Beigetreten: ${plant}.`,
  standing: 'Abgleich',
  phases: {
    alone: 'Nicht beigetreten',
    follower: 'Ein anderes Fenster dieses Tablets gleicht ab',
    syncing: 'Sendet und holt…',
    live: 'Abgeglichen: Tablets sehen die Einträge der anderen sofort',
    waiting: 'Wartet auf den nächsten Versuch',
    refused: 'Vom Server abgelehnt: Jemand muss handeln',
  },
  plant: 'Werk',
  lastAnswer: 'Letzte Antwort',
  ago: (span) => `vor ${span}`,
  never: 'keine, seit die App geöffnet wurde',
  backlog: 'Zu senden',
  entries: (count) => plural(count, '1 Eintrag', `${count} Einträge`),
  nothing: 'nichts, der Server hat alles',
  clock: 'Uhr',
  clockRight: 'wie die des Servers',
  clockBehind: (span) => `${span} hinter der des Servers: bitte stellen`,
  clockAhead: (span) => `${span} vor der des Servers: bitte stellen`,
  why: 'Warum',
  quarantined: 'Ausgesondert',
  quarantinedHelp:
    'Der Server hat diese Einträge ausgesondert: Ihr Siegel oder ihr Platz in der Kette passt nicht. Nichts ist verloren; sie bleiben auch hier. Rufen Sie die Person, die den Server betreut.',
  rolledBack: 'Das Protokoll des Servers ging womöglich zurück',
  rolledBackHelp: (span) =>
    `Vor ${span} bemerkt: Der Server hatte vielleicht weniger als zuvor, wie nach einer zurückgespielten Sicherung. Tablets senden neu, was sie haben. Prüfen Sie das Protokoll und die Liste der Tablets.`,
  rolledBackSeen: 'Ich habe geprüft',
  headFaults: {
    forked: 'Der Server zeigt zwei Protokolle',
    'other-key': 'Der Server hat einen anderen Schlüssel',
    'no-proof': 'Der Server belegt sein Protokoll nicht',
  },
  headFaultHelp: {
    forked: (span) =>
      `Vor ${span} bemerkt: Sein Protokoll setzt nicht das fort, das er zuvor gezeigt hat. Jemand hat es vielleicht geändert. Arbeiten Sie weiter und rufen Sie die Person, die den Server betreut.`,
    'other-key': (span) =>
      `Vor ${span} bemerkt: Er signiert mit einem anderen Schlüssel als beim Beitritt dieses Tablets. Das ist nur nach einem Umzug auf einen anderen Computer richtig. Fragen Sie die Person, die den Server betreut.`,
    'no-proof': (span) =>
      `Vor ${span} bemerkt: Früher hat er sein Protokoll belegt. Arbeiten Sie weiter und fragen Sie die Person, die den Server betreut.`,
  },
  quarantinedHere: (count) =>
    plural(
      count,
      '1 Eintrag wird hier aus dem Protokoll gehalten',
      `${count} Einträge werden hier aus dem Protokoll gehalten`,
    ),
  quarantinedHereHelp:
    'Der Text, die Signatur oder die Uhr stimmt nicht. Alle anderen Einträge sind drin. Rufen Sie die Person, die den Server betreut.',
  clocksOff: 'Uhren, die falsch gehen',
  clockOfAhead: (name, span) => `${name}: ${span} vor`,
  clockOfBehind: (name, span) => `${name}: ${span} nach`,
  clocksOffHelp:
    'Stellen Sie sie richtig: Was diese Tablets schreiben, steht vielleicht in falscher Reihenfolge.',
  stateNears: (share) => `Womit ein neues Tablet beginnt, füllt ${share} des Platzes`,
  stateNearsHelp:
    'Ist er voll, liest ein neues Tablet erst das ganze Protokoll, minutenlang. Melden Sie Ersatz-Tablets an, solange es schnell geht, und sagen Sie es der Person, die den Server betreut.',
  stateOver: 'Neue Tablets beginnen langsam',
  stateOverHelp:
    'Womit ein neues Tablet beginnt, ist zu groß zum Übergeben: Es liest erst das ganze Protokoll, minutenlang. Melden Sie es an, bevor Sie es brauchen, und lassen Sie es am Ladegerät offen. Nichts geht verloren.',
  now: 'Jetzt abgleichen',
  causes: {
    unreachable: 'Der Server antwortet nicht. Arbeiten Sie weiter; Einträge warten hier.',
    unreadable: 'Was antwortet, ist nicht der Server des Werks. Prüfen Sie das Netz.',
    'other-plant':
      'Das ist der Server eines anderen Werks. Nichts geht dorthin; Einträge warten hier. Treten Sie nicht bei: Rufen Sie die Person, die den Server betreut.',
    'tablet-unknown': 'Der Server kennt dieses Tablet nicht. Treten Sie mit einem neuen Code neu bei.',
    'tablet-revoked':
      'Ein Schichtleiter hat dieses Tablet ausgeschlossen. Es kann mit einem neuen Code wieder beitreten.',
    'code-wrong':
      'Dieser Code ist unbekannt, verbraucht oder über zehn Minuten alt. Bitten Sie um einen neuen.',
    'tablet-active':
      'Dieses Tablet ist noch unter einem älteren Schlüssel zugelassen. Ein Schichtleiter schließt es zuerst aus; dann lässt ein neuer Code es zu.',
    'wire-too-old': 'Diese App ist älter als der Server. Laden Sie sie neu, wo der Server antwortet.',
    'wire-too-new': 'Diese App ist neuer als der Server. Der Server muss aktualisiert werden.',
    'time-off': 'Die Uhr dieses Tablets weicht zu weit ab. Stellen Sie sie richtig.',
    'signature-wrong':
      'Der Server nimmt den Schlüssel dieses Tablets nicht an. Treten Sie mit einem neuen Code neu bei.',
    'person-unproven': 'Die Anmeldung ist abgelaufen. Scannen Sie den Ausweis und tippen Sie die PIN neu.',
    'role-lacking': 'Das kann nur ein Schichtleiter oder ein Ingenieur.',
    'too-often': 'Zu viele Versuche. Warten Sie eine Minute.',
    'store-away': 'Der Server erreicht seinen Speicher nicht. Er versucht es wieder.',
    'store-full':
      'Die Festplatte des Servers ist voll. Einträge warten hier. Rufen Sie die Person, die den Server betreut.',
    'store-read-only':
      'Der Server kann sein Protokoll nicht schreiben. Einträge warten hier. Rufen Sie die Person, die den Server betreut.',
    'server-fault': 'Der Server hatte einen Fehler; siehe sein Protokoll. Das Tablet versucht es wieder.',
    stopping: 'Der Server wird gerade beendet.',
  },
  otherCause: (code) => `Der Server sagt: ${code}.`,
  leadTitle: 'Andere Tablets',
  leadHelp: 'Ein Schichtleiter oder Ingenieur lässt Tablets zu und schließt sie aus: Ausweis und PIN.',
  leadOpen: 'Tablets zulassen oder ausschließen',
  leadOffline:
    'Nur der Server lässt Tablets zu, und er antwortet jetzt nicht. Versuchen Sie es wieder, wenn er antwortet.',
  newCode: 'Neuer Code für ein Tablet',
  newScreenCode: 'Code für eine Wandanzeige',
  codeForScreen:
    'Öffnen Sie an der Anzeige die App und tippen Sie diesen Code. Sie zeigt alle Linien und kann nichts ändern.',
  codeUntilScreen: (span) => `Für eine Wandanzeige, gültig für ${span}.`,
  isScreen: 'Wandanzeige',
  screenNotEmpty:
    'Eine Wandanzeige muss leer beginnen, dieses Tablet hat ein Protokoll. Nehmen Sie einen anderen Browser und einen neuen Code.',
  codeFor:
    'Scannen Sie das am neuen Tablet mit seiner Kamera, oder öffnen Sie dort die App und tippen Sie den Code.',
  codeUntil: (span) => `Für ein Tablet, gültig für ${span}.`,
  codeOver: 'Dieser Code ist abgelaufen.',
  tablets: 'Tablets',
  seen: (span) => `zuletzt gesehen vor ${span}`,
  neverSeen: 'seit dem Beitritt nie gesehen',
  clockOff: (span) => `Uhr geht um ${span} falsch`,
  thisOne: 'dieses Tablet',
  isOut: 'ausgeschlossen',
  revoke: 'Ausschließen',
  revokeTitle: (name) => `${name} ausschließen?`,
  revokeHelp:
    'Für ein verlorenes oder verkauftes Tablet. Es kann nicht mehr senden oder holen. Seine bisherigen Einträge bleiben im Protokoll.',
  revoked: (name) => `${name} ist ausgeschlossen.`,
  list: 'Aktualisieren',
};
