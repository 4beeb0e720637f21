import type { words as english } from '../en/stations.ts';
import { formatCount, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  caution:
    'Eine Hilfe neben den eigenen Schutzeinrichtungen der Maschine, keine Sicherheitsfunktion. Sie hört zu, und fragt oder antwortet nur, wo das eingestellt ist. Keiner Maschine wird etwas befohlen.',
  who: (line) => `Wer zählt auf ${line}?`,
  whoHelp:
    'Ein Zähler pro Linie. Zählungen von Hand neben einer Station werden behalten und gezeigt, nicht addiert.',
  hand: 'Personen, von Hand',
  handNow: 'Auf dieser Linie zählen jetzt Personen.',
  stationNow: (station) => `Diese Linie wird jetzt von ${station} gezählt.`,
  checkInLine:
    'Prüfen Sie „Nutzen in der Linie“ in den Linienregeln: Sie richten sich danach, wo Nutzen gezählt werden.',
  none: 'Noch ist keine Station bekannt',
  noneHelp:
    'Starten Sie das auf einem Computer nahe den Maschinen. Die Station erscheint hier, wenn ihre Verbindung beigetreten ist.',
  silent: (clock) => `Schweigt seit ${clock}`,
  heard: (clock) => `Gehört ${clock}`,
  never: 'Nie gehört',
  counts: 'Zählt diese Linie',
  line: 'Linie',
  stands: 'Steht',
  places: {
    in: 'vor der ersten Maschine',
    work: 'an einer Maschine',
    out: 'hinter der letzten Maschine',
  },
  atMachine: (machine) => `an ${machine}`,
  lastHeard: 'Zuletzt gehört',
  total: 'Ihre Summe',
  boot: (boot) => `seit sie als ${boot} eingeschaltet wurde`,
  heardAs: (boot) => `seit die Verbindung sie zuletzt zu hören begann, als ${boot}`,
  state: 'Zustand',
  recipe: 'Programm',
  noState: 'Sie sagt es nicht',
  states: {
    1: 'Arbeitet',
    2: 'Bereit',
    3: 'Einrichtung',
    4: 'Geplanter Halt',
    5: 'Ungeplanter Halt',
    6: 'Nicht eingeplant',
  },
  otherState: 'Ein eigener Zustand ihres Herstellers',
  version: 'Verbindung',
  linkOf: (version, tablet) => `Version ${version}, ${tablet}`,
  noticed: 'Nicht verstanden oder nicht gezählt',
  allUnderstood: 'Alles wurde verstanden.',
  notices: {
    'not-understood': 'Nachrichten, die nicht lesbar waren',
    'wrong-secret': 'Nachrichten ohne das richtige Geheimnis',
    'clock-off': 'Ihre Uhr geht um mehr als fünf Minuten falsch. Nichts wird nach ihr datiert',
    'total-fell':
      'Ihre Summe fiel, ohne dass sie ausgeschaltet wurde. Sie zählt von dort weiter; was dazwischen verloren ging, ist nicht gezählt',
    'two-devices':
      'Zwei Geräte senden unter einem Namen. Das erste zählt. Geben Sie dem anderen einen eigenen Namen, dann schalten Sie beide aus und ein',
    'code-twice': 'Ein Nutzencode kam zweimal. Er bezeichnet nur den ersten Nutzen',
    'not-used': 'Nachrichten, die hier nicht verwendet werden',
    'other-handle':
      'Eine Maschine sendet, für die keine Station eingestellt ist. Stellen Sie eine ein, mit ihrem Handle',
    'not-connected': 'Ihr Broker wurde nicht erreicht. Es wird wieder versucht',
    'not-answered': 'Sie hat nicht gesagt, was sie gerüstet hat. Sie wird wieder gefragt',
    'not-offered': 'Sie hat nicht gesagt, welche Rüstung sie will. Sie wird wieder gefragt',
    'loads-cut': 'Sie nannte mehr Plätze, als gelesen werden. Nur die ersten werden verglichen',
    'asked-off': 'Sie fragte nach Material und bekam keine Antwort: Das ist nicht eingeschaltet',
    'asked-often': 'Sie fragte mehr als 60-mal in einer Minute. Der Rest wurde nicht beantwortet',
    'not-replied': 'Sie fragte und war vor der Antwort weg',
    'code-again': 'Ein Nutzencode kam wieder. Er zählt einmal pro Lauf',
    'not-heard':
      'Eine Weile nicht gehört: Was dann durchlief, ist nicht in ihrer Summe. Vergleichen Sie mit der Linie, und setzen Sie „Nutzen = …“, wo es nicht stimmt',
    'no-boards': 'Sie meldet keine Nutzen und zählt daher nichts. Schalten Sie das an der Maschine ein',
    'other-machine':
      'Nutzen einer anderen Maschine auf derselben Leitung. Sie werden nicht gezählt; nennen Sie die richtige in der Datei der Verbindung (machineId)',
    'wrong-channel':
      'Dieser Port ist der Kanal zwischen zwei Maschinen. Die Verbindung hat aufgelegt; setzen Sie den Port für übergeordnete Systeme in ihre Datei',
    'by-hand':
      'Von Hand eingelegte oder herausgenommene Nutzen. Sie werden nicht gezählt; wo einer gebaut wurde, setzen Sie „Nutzen = …“',
    'failed-board':
      'Nutzen, die laut Maschine durchgefallen sind. Ihre Bauteile sind verbraucht, sie sind gezählt; verschrotten Sie sie, wenn sie es sind',
    'board-twice': 'Nutzen, die zweimal gemeldet wurden. Jeder wird einmal gezählt',
    'machine-says': 'Die Maschine sagt',
  },
  other: 'Etwas anderes',
  times: (times) => plural(times, 'einmal', `${formatCount(times)}-mal`),
  foundTitle: 'Maschine und Protokoll weichen voneinander ab',
  found: {
    'tape-differs': (slot, clock, machine, here) =>
      `${slot}, ${clock}: Die Maschine macht mit ${machine} weiter, die Scans sagen ${here}. Nichts wurde gezählt. Scannen Sie die Rolle auf dem Platz.`,
    'told-late': (slot, clock, machine) =>
      `${slot}, ${clock}: Die Maschine meldete zu spät, dass ${machine} begonnen hat. Nichts wurde gezählt. Zählen Sie die Rolle.`,
    'empty-early': (slot, clock, machine, _here, parts) =>
      `${slot}, ${clock}: Die Maschine sagt, dass ${machine} leer ist. Laut Protokoll übrige Bauteile: ${parts}. Zählen Sie die Rolle.`,
    'life-expired': (_slot, clock, machine) =>
      `${machine}, ${clock}: Die Maschine sagt, dass die Offenzeit dieser Rolle abgelaufen ist. Sehen Sie unter Rollen nach.`,
    'life-restored': (_slot, clock, machine) =>
      `${machine}, ${clock}: Die Maschine sagt, dass diese Rolle wieder verwendbar ist. Geben Sie ein, wie sie gebacken oder trocken gelagert wurde.`,
  },
  loads: {
    title: 'Wovon die Maschine ausgeht',
    said: (clock, same) =>
      `Gesagt am ${clock}. ${plural(same, '1 Platz ist, wie die Scans sagen.', `${formatCount(same)} Plätze sind, wie die Scans sagen.`)}`,
    differs: (slot, machine, here) => `${slot}: laut Maschine ${machine}, laut Scans ${here}.`,
    nothing: 'nichts',
    look: 'Öffnen Sie den Platz und scannen Sie die Rolle dort. Stimmen die Scans, stellen Sie es an der Maschine richtig.',
    scan: 'Scannen Sie die Rolle dort.',
    open: (slot) => `${slot} öffnen`,
    more: (slots) => `und ${formatCount(slots)} mehr`,
    never: 'Es ändert von selbst keinen Platz.',
    later: (slots) =>
      `Gescannt, nachdem die Maschine gesprochen hat; sie weiß es vielleicht noch nicht: ${slots}.`,
    untold: (slots) => `Die Maschine nennt kein Bauteil und keine bekannte Rolle: ${slots}.`,
    unknown: (places) =>
      `Stellen, die kein Platz dieser Linie sind: ${places}. Nennen Sie sie in der Datei der Verbindung (slots).`,
  },
  answers: {
    title: 'Wenn die Maschine fragt: Ist diese Rolle richtig?',
    caution: 'Eine Hilfe neben den eigenen Schutzeinrichtungen der Maschine, keine Sicherheitsfunktion.',
    help: 'Beantwortet nach den letzten Prüfergebnissen. Jede Antwort steht im Protokoll. Was die Maschine damit tut, wird an der Maschine eingestellt.',
    off: 'Nicht antworten',
    on: {
      Warning: 'Antworten; wenn unsicher, warnen',
      Failed: 'Antworten; wenn unsicher, nein sagen',
    },
    offNow: 'Der Maschine wird nicht mehr geantwortet.',
    onNow: {
      Warning: 'Der Maschine wird jetzt geantwortet. Wenn unsicher, wird sie gewarnt.',
      Failed: 'Der Maschine wird jetzt geantwortet. Wenn unsicher, bekommt sie ein Nein.',
    },
    last: (clock, right, unsure, wrong) =>
      `Letzte Antwort je Platz, neueste ${clock}: ${right} richtig, ${unsure} gewarnt, ${wrong} nein.`,
    one: (slot, reel, result, why) => `${slot}, ${reel}: ${result}, ${why}.`,
    results: { Success: 'richtig', Warning: 'gewarnt', Failed: 'nein' },
    whys: {
      verified: 'sie wurde dort geprüft',
      refused: 'sie wurde dort abgelehnt',
      held: 'ein Prüfergebnis wartet auf einen Schichtleiter',
      'other-reel': 'eine andere Rolle wurde dort geprüft',
      'other-part': 'ein anderes Bauteil wurde dort geprüft',
      'wrong-feeder': 'der Feeder ist dort nicht richtig',
      blocked: 'das Material ist gesperrt',
      'no-setup': 'keine Rüstung ist gewählt',
      'unknown-slot': 'die Linie hat keinen solchen Platz',
      'not-in-setup': 'die Rüstung braucht dort nichts',
      'not-verified': 'dort wurde nichts geprüft',
      'unknown-reel': 'die Rolle wurde nie gescannt',
      'no-reel-told': 'die Maschine nannte keine Rolle',
      'out-of-date': 'das Protokoll war nicht lesbar',
      'in-conflict': 'zwei Tablets sagen Verschiedenes davon',
      unproven: 'nichts beweist die Freigabe, mit der sie lief',
    },
  },
  clear: 'Erledigt …',
  clearTitle: 'Ist dieser Befund erledigt?',
  clearHelp: 'Er verschwindet aus dieser Liste. Was beide Seiten sagten, bleibt im Protokoll.',
  clearWhy: 'Was kam dabei heraus?',
  clearYes: 'Ist erledigt',
  cleared: 'Erledigt. Beide Seiten bleiben im Protokoll.',
  ownName: 'Ihr eigener Name',
  rename: 'Umbenennen',
  renameTitle: 'Wie heißt diese Station?',
  renameHelp: 'Nur für Personen. Ihre Verbindung läuft unter ihrem eigenen Namen weiter.',
  renameName: 'Name',
  renameYes: 'Umbenennen',
  renameMissing: 'Geben Sie einen anderen Namen ein.',
  noReel: 'eine Rolle ohne Code',
  noScan: 'nichts davon',
  bothTitle: 'Von beiden gezählt',
  both: {
    machine: (clock, hand, machine) =>
      `${clock}: wieder da nach Schweigen. Von Hand ${hand}, von der Maschine ${machine}. Es gilt die Zahl der Maschine.`,
    hand: (clock, hand, machine) =>
      `${clock}: neu begonnen nach Schweigen. Von Hand ${hand}, von der Maschine ${machine}. Es gilt die Zahl von Hand.`,
  },
  bothHelp: 'Stimmt sie nicht? Setzen Sie die Zahl mit „Nutzen = …“ auf dem Bild der Linie.',
  beside: (panels) =>
    plural(
      panels,
      '1 Nutzen dieses Laufs wurde neben der Station von Hand gezählt.',
      `${formatCount(panels)} Nutzen dieses Laufs wurden neben der Station von Hand gezählt.`,
    ),
  outside: (panels) =>
    plural(
      panels,
      '1 Nutzen lief durch, während nichts gebaut wurde. Er gehört zu keinem Lauf.',
      `${formatCount(panels)} Nutzen liefen durch, während nichts gebaut wurde. Sie gehören zu keinem Lauf.`,
    ),
  setTitle: 'Was an der Maschine einzustellen ist',
  setHelp:
    'Die Verbindung ruft die Maschine dort an, auf dem Kanal für übergeordnete Systeme, und hört nur zu. Schalten Sie dafür die Nutzenverfolgung ein.',
  setAddress: 'Adresse',
  setNever:
    'Geben Sie ihr nie einen Port des Kanals zwischen zwei Maschinen (50100 und die Spur): Das würde die Linie anhalten.',
  typeTitle: 'Was am Gerät einzutippen ist',
  typeHelp:
    'Jedes Mal, wenn ein Nutzen durchläuft, und alle zehn Sekunden sendet es seine eigene laufende Summe. Nie „einer mehr“: Was dann verloren geht, holt die nächste Nachricht nach.',
  typeAddress: 'Adresse',
  typeHeader: 'Kopf',
  typeSecret: 'GEHEIMNIS',
  typeBody: 'Nachricht',
  typeBoot:
    'boot: ein neuer Text bei jedem Einschalten. total: Nutzen seitdem. at: seine Uhr, wenn es eine hat.',
  machineTitle: 'Was an der Maschine einzutippen ist',
  machineHelp:
    'Die Maschine sendet nach IPC-2591 (AMQP 1.0), jede Nachricht einzeln oder mehrere in einer, gepackt oder nicht. Ihr Handle muss der in der Datei der Verbindung sein.',
  machineAddress: 'Adresse ihres Brokers (network URI)',
  machineTarget: 'Zieladresse',
  machineAny: 'beliebig',
  machineAt: 'Ihre Nachrichten werden abgeholt bei',
  machineProof: 'Name und Passwort: wie in der Datei der Verbindung. Ohne sie dort: ANONYMOUS.',
  typeAnswer:
    'Antwort 200 mit der höchsten gehaltenen Summe. 401: Das Geheimnis ist falsch. 400: was falsch ist, und wo.',
};
