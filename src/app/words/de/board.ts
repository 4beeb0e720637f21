import type { words as english } from '../en/board.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  way: 'Bestückdatei und Stückliste',
  wayHelp:
    'Keine Liste mit Plätzen? Beginnen Sie mit der Bestückdatei der Leiterplatte. Eine Stückliste kann folgen; dann werden Plätze auf Ihrer Linie vorgeschlagen.',
  choosePlacements: 'Bestückdatei wählen',
  isPlacements: 'Diese Datei nennt keine Plätze und wird daher als Bestückdatei gelesen.',
  isBill: 'Das ist eine Stückliste. Wählen Sie nun die Bestückdatei derselben Leiterplatte.',
  readAsSheet: 'Als Rüstliste lesen',
  billColumnsTitle: 'Spalten der Stückliste',
  putAway: 'Weglegen',
  correctColumns: 'Spalten berichtigen',
  variant: 'Variante, die gebaut wird',
  variantNone: 'nicht gewählt',
  variantHelp: 'Die Stückliste unterscheidet sich je Variante.',
  sidesOf: (top, bottom) => `Bestückungen: oben ${top}, unten ${bottom}.`,
  notPlacedTitle: (count) =>
    `Nicht bestückt: ${plural(count, '1 Referenz', `${count} Referenzen`)}. Aufgeführt, nicht gezählt.`,
  left: {
    notFitted: 'Nicht bestückt',
    fiducial: 'Passermarken',
    testPoint: 'Testpunkte',
    hole: 'Bohrungen',
    mark: 'Markierungen',
    throughHole: 'Durchstecktechnik',
    noPart: 'Ohne Bauteil',
    doubled: 'Doppelt aufgeführt',
  },
  leftByBill: 'Laut Stückliste nicht bestückt oder nicht in beiden Dateien',
  noSide: 'Wählen Sie zuerst die Seite. Jede Seite ist eine eigene Rüstung.',
  noParts: 'Keine Bauteile auf dieser Seite.',
  namedByValue: (count) =>
    `${plural(count, '1 Bauteil hat keine Nummer und heißt', `${count} Bauteile haben keine Nummer und heißen`)} nach dem Wert. Rollen werden gegen diesen Namen geprüft. Ergänzen Sie eine Stückliste mit Teilenummern.`,
  filesWrong: (count) =>
    `Zuerst ${plural(count, 'den Fehler', `die ${count} Fehler`)} in den Dateien berichtigen`,
  filesHelp:
    'Berichtigen Sie oben eine Spalte, oder berichtigen Sie die Datei und wählen Sie sie neu. Warnungen halten nicht auf.',
  noLine: 'Noch ist keine Linie mit Maschinen und Plätzen bekannt.',
  noLineHelp:
    'Plätze lassen sich nur für eine bekannte Linie vorschlagen. Importieren Sie zuerst eine Rüstliste der Linie; sie sagt, welche Maschinen und Plätze es gibt. Danach können Sie Ihre Dateien wieder wählen.',
  toSheet: 'Zuerst eine Rüstliste importieren',
  chooseLine: 'Linie wählen',
  slotsTitle: 'Plätze',
  isProposal:
    'Das ist ein Vorschlag für Feeder, kein Bestückprogramm. Er sagt nicht, welcher Kopf wann was setzt; bringen Sie Plätze und Programm in Übereinstimmung.',
  proposalHelp:
    'Bauteile bleiben, wo sie auf der Linie oder in deren anderen Rüstungen stehen. Neue Bauteile bekommen freie Plätze.',
  propose: 'Plätze vorschlagen',
  proposeAgain: 'Neu vorschlagen',
  proposing: 'Plätze werden gesucht…',
  stopProposing: 'Anhalten',
  proposeFailed: 'Kein Vorschlag möglich. Versuchen Sie es noch einmal oder wählen Sie die Plätze von Hand.',
  toPutIn: (count) => `${count} Feeder einzusetzen`,
  difference: (fresh, moves, stays) =>
    `${fresh} neu, ${moves} von einem anderen Platz der Linie. ${plural(stays, '1 Feeder bleibt', `${stays} Feeder bleiben`)}.`,
  comeOut: (count) =>
    `${plural(count, '1 anderer Feeder steht im Weg und muss', `${count} andere Feeder stehen im Weg und müssen`)} heraus.`,
  openTitle: (count) => plural(count, '1 Bauteil ohne Platz', `${count} Bauteile ohne Platz`),
  leftTitle: (count) =>
    plural(
      count,
      '1 Bauteil, das diese Linie nicht bestückt',
      `${count} Bauteile, die diese Linie nicht bestückt`,
    ),
  reasons: {
    'too-wide': 'Sein Feeder ist breiter als jede Bank der Linie.',
    'no-room': 'Auf der Linie ist kein Platz mehr frei.',
  },
  noneYet: 'Noch wurde kein Platz vorgeschlagen.',
  ownPlaces: 'Eigene Plätze',
  perPanel: (count) => `${count} pro Nutzen`,
  stays: 'bleibt',
  moves: (from) => `von ${from}`,
  fresh: 'neu',
  inFile: (part) => `${part} in der Datei`,
  said: 'von Ihnen gewählt',
  asIn: (product) => `wie in ${product}`,
  width: {
    tray: 'auf Trays',
    maybeTray: 'auf Trays?',
    said: (mm) => `${mm} mm`,
    setup: (mm) => `${mm} mm`,
    usual: (mm) => `${mm} mm?`,
    none: 'Breite nicht bekannt',
  },
  faults: {
    'on-trays': 'Hier stehen Trays, keine Feeder.',
    'no-tray': 'Es kommt auf Trays; hier stehen Feeder.',
    'look-alike': (part, slot) => `Leicht zu verwechseln mit ${part} daneben auf ${slot}.`,
    overlap: (part, slot) => `Im Weg von ${part} auf ${slot}.`,
    'over-end': (positions) =>
      `Sein Feeder belegt ${plural(positions, '1 Position', `${positions} Positionen`)} und ragt über das Ende der Bank hinaus.`,
    'off-line': 'Die Linie hat keinen solchen Platz.',
    'lane-wide': (positions) =>
      `Sein Feeder belegt ${plural(positions, '1 Position', `${positions} Positionen`)}; eine Spur hat Raum für eine.`,
    'lane-width': (part) =>
      `Die Spur daneben führt ${part} auf einer anderen Gurtbreite. Prüfen Sie den Feeder.`,
  },
  addBoard: 'Mit einer weiteren Baugruppe vorschlagen',
  together: (boards) =>
    `Vorgeschlagen zusammen mit: ${boards}. So werden über alle die wenigsten Feeder eingesetzt.`,
  heldTitle: 'Baugruppen, die warten',
  goOnWith: (board) => `Weiter mit ${board}`,
  dragHelp: 'Ziehen Sie ein Teil am Griff auf einen anderen Platz, oder tippen Sie es an.',
  freeOne: (slot) => `Frei: ${slot}`,
  freeRange: (first, last) => `Frei: ${first} bis ${last}`,
  bankOfTrays: (bank) => `${bank}: Trays`,
  change: (part) => `${part}: Platz ändern`,
  tapeWidth: 'Gurtbreite',
  widthUnknown: 'nicht bekannt',
  widthFrom: {
    said: 'Von Ihnen angegeben.',
    setup: 'Aus der neuesten Rüstung mit diesem Bauteil.',
    list: 'Aus der Bauteilliste.',
    usual: 'Üblich für sein Gehäuse. Zählt nur für den Raum; Feeder werden nicht dagegen geprüft.',
    none: 'Sein Feeder zählt als eine Position, bis Sie die Breite eingeben.',
  },
  widthsUnknown: (count) =>
    `${plural(count, '1 Bauteil hat', `${count} Bauteile haben`)} keine bekannte Gurtbreite. Jeder Feeder zählt als eine Position: Tippen Sie auf das Bauteil und geben Sie an, wie breit sein Gurt ist.`,
  bank: 'Maschine und Bank',
  legend: '■ in dieser Rüstung · □ dort steht jetzt ein Feeder',
  free: (slot) => `${slot} ist frei.`,
  here: (slot) => `Es ist schon auf ${slot}.`,
  swaps: (slot, other, back) => `${other} steht auf ${slot}. Es kommt auf ${back}.`,
  pushes: (slot, other) => `${other} steht auf ${slot}. Es hat dann keinen Platz.`,
  takesOut: (slot, part) => `${part} steht dort jetzt auf der Linie. Es muss von ${slot} herunter.`,
  moveHere: (slot) => `${slot} nehmen`,
  chooseSlot: 'Zuerst einen Platz wählen',
  leaveOut: 'Diese Linie bestückt es nicht',
  takeBack: 'Diese Linie bestückt es',
  close: 'Schließen',
  paper: {
    title: 'Rüstblatt',
    print: 'Rüstblatt drucken',
    perPanel: 'Pro Nutzen',
    feeder: 'Feeder',
  },
  noSlots: 'Zuerst Plätze vorschlagen',
  slotsOpen: (count) =>
    `${plural(count, '1 Bauteil hat', `${count} Bauteile haben`)} keinen Platz: einen geben, oder angeben, dass diese Linie es nicht bestückt`,
  slotsFaulty: (count) =>
    `${plural(count, '1 Platz ist', `${count} Plätze sind`)} einem anderen im Weg oder zu klein: anderen wählen`,
};
