import { type SheetField, sheetFieldNames } from '../../../../shared/sheet/fields.ts';
import type { SheetProblem, SheetProblemCode } from '../../../../shared/sheet/problems.ts';
import type { words as english } from '../en/sheet-problems.ts';
import type { Sentences } from '../words.ts';

type Facts = SheetProblem['facts'];

const fieldsDe: Readonly<Record<SheetField, string>> = {
  slot: 'Platz',
  machine: 'Maschine',
  bank: 'Bank',
  number: 'Platznummer',
  part: 'Bauteil',
  perPanel: 'Bestückungen pro Nutzen',
  tapeWidth: 'Gurtbreite',
  pitch: 'Teilung',
  sharing: 'Aufteilung auf Plätze',
  alternates: 'Alternativen',
  supplierParts: 'Lieferantenteile',
  description: 'Beschreibung',
  package: 'Gehäuse',
  pins: 'Anschlüsse',
  bodySize: 'Körpergröße',
  bodyThickness: 'Körperdicke',
  msl: 'MSL-Stufe',
  polarity: 'Polarität',
  feederType: 'Feedertyp',
  drive: 'Antrieb des Feeders',
  pocket: 'Taschentiefe',
  critical: 'Kritisch',
  positions: 'Belegte Positionen',
  side: 'Seite',
  designators: 'Referenzen',
  fitted: 'Bestückt',
  notFitted: 'Nicht bestückt',
  note: 'Notiz',
};

const germanByEnglish = new Map(
  // The keys of a table by field are its fields.
  (Object.keys(sheetFieldNames) as SheetField[]).map((field) => [sheetFieldNames[field], fieldsDe[field]]),
);

/** Facts that name a field carry its English name. */
function field(name: string | number | undefined): string {
  return germanByEnglish.get(String(name)) ?? String(name);
}

/** A side as the file's reader names it. */
function sideDe(side: string | number | undefined): string {
  return side === 'bottom' ? 'unten' : 'oben';
}

const de: Readonly<Record<SheetProblemCode, (facts: Facts) => string>> = {
  encodingGuessed: () =>
    'Die Datei ist nicht UTF-8 und wurde als Windows-1252 gelesen. Prüfen Sie Umlaute und Akzente, oder speichern Sie sie als UTF-8.',
  quoteBroken: (f) =>
    `Ein in Zeile ${f['row']} geöffnetes Anführungszeichen ist nicht geschlossen. Was folgt, steht vielleicht in der falschen Zelle. Berichtigen Sie diese Zeile.`,
  rowTooLong: (f) =>
    `Die Zeile hat ${f['found']} Zellen, der Kopf ${f['wanted']}. Eine Zelle enthält wohl das Trennzeichen: Setzen Sie sie in Anführungszeichen.`,
  rowUnreadable: (f) =>
    `Die Zeile hat ${f['found']} Zellen, der Kopf ${f['wanted']}, und sie passen nicht zueinander. Berichtigen Sie die Zeile.`,
  noRows: () => 'Keine Zeile unter dem Kopf. Exportieren Sie die Liste neu, mit ihren Zeilen.',
  moreProblems: (f) =>
    `${f['count']} weitere Probleme sind nicht aufgeführt. Berichtigen Sie diese, dann lesen Sie die Liste neu.`,
  moreErrors: (f) =>
    `${f['count']} weitere Probleme sind nicht aufgeführt, darunter Fehler. Berichtigen Sie diese, dann lesen Sie die Liste neu.`,
  columnMissing: (f) =>
    `Keine Spalte für ${field(f['wanted'])} gefunden unter: ${f['headers']}. Wählen Sie die Spalte von Hand.`,
  columnAbsent: (f) =>
    `Keine Spalte für ${field(f['wanted'])} gefunden unter: ${f['headers']}. Wählen Sie die Spalte von Hand, oder machen Sie ohne sie weiter.`,
  columnNotFound: (f) =>
    `Diese Liste hat keine Spalte „${f['wanted']}“ für ${field(f['field'])}. Sie hat: ${f['headers']}. Wählen Sie die Spalte neu.`,
  columnUnknown: (f) =>
    `Spalte „${f['found']}“ wird nicht verwendet. Braucht die Rüstung sie, wählen Sie von Hand, was sie enthält.`,
  columnTwice: (f) =>
    `Spalte „${f['found']}“ sieht auch nach ${field(f['field'])} aus; „${f['used']}“ wird verwendet. Soll es die andere sein, wählen Sie sie von Hand.`,
  usagePerBoard: (f) =>
    `Spalte „${f['found']}“ zählt wohl je Leiterplatte und wird als je Nutzen genommen. Hat ein Nutzen mehrere Leiterplatten, multiplizieren Sie sie.`,
  slotMissing: (f) => `Der Platz ist leer, aber die Zeile nennt ${f['part']}. Tragen Sie den Platz ein.`,
  textTooLong: (f) =>
    `${field(f['field'])} „${f['found']}…“ ist länger als ${f['most']} Zeichen. Kürzen Sie es.`,
  textCut: (f) => `Der Text ist länger als ${f['most']} Zeichen. Der Rest fällt weg: Kürzen Sie ihn.`,
  slotUnclear: (f) =>
    `Platz „${f['found']}“ ist nicht wie M1-F-014 geschrieben: Seine Nachbarn lassen sich nicht prüfen. Er gilt wie geschrieben.`,
  slotNumberUnreadable: (f) => `Platznummer „${f['found']}“ ist keine ganze Zahl ab 1. Berichtigen Sie sie.`,
  partMissing: (f) =>
    `Platz ${f['slot']} hat keine Teilenummer, aber andere Zellen sind gefüllt. Tragen Sie sie ein.`,
  usageUnreadable: (f) =>
    `Bestückungen pro Nutzen „${f['found']}“ ist keine ganze Zahl ab 0. Berichtigen Sie sie.`,
  usageMissing: () =>
    'Bestückungen pro Nutzen fehlen: Niemand weiß, wann dieser Platz leer läuft. Tragen Sie sie ein, oder ergänzen Sie die Bestückdatei.',
  usageZero: () =>
    'Bestückungen pro Nutzen ist 0: Der Platz wird gerüstet, aber nicht genutzt. Ist das so, kennzeichnen Sie die Zeile als nicht bestückt.',
  usageFromDesignators: (f) =>
    `Bestückungen pro Nutzen fehlen: Die ${f['count']} Referenzen zählen als ${f['count']}. Prüfen Sie, ob sie für den ganzen Nutzen stehen.`,
  designatorsDisagree: (f) =>
    `${f['found']} Referenzen, aber ${f['wanted']} Bestückungen pro Nutzen. Prüfen Sie, was stimmt.`,
  widthUnreadable: (f) => `Gurtbreite „${f['found']}“ ist keine Zahl in mm. Schreiben Sie 8 oder 8 mm.`,
  widthUnknown: (f) =>
    `${f['found']} mm ist keine Gurtbreite nach EIA-481 (${f['wanted']} mm). Berichtigen Sie sie.`,
  widthMissing: () => 'Keine Gurtbreite: Niemand kann prüfen, ob der Feeder passt. Tragen Sie sie ein.',
  notTape: (f) =>
    `„${f['found']}“ ist kein Gurt: Dieser Platz bekommt keine Gurtlängen und keine Spleißzeiten.`,
  pitchUnreadable: (f) => `Teilung „${f['found']}“ ist keine Zahl über 0 in mm. Schreiben Sie 4 oder 4 mm.`,
  pitchUnusual: (f) =>
    `EIA-481 führt keine Teilung ${f['found']} mm für ${f['width']}-mm-Gurt, nur ${f['wanted']} mm. Prüfen Sie sie; einige Gurte weichen ab.`,
  pitchMissing: () =>
    'Keine Teilung: Aus einer Gurtlänge lassen sich keine Bauteile rechnen. Tragen Sie sie ein.',
  positionsUnreadable: (f) =>
    `Belegte Positionen „${f['found']}“ ist keine ganze Zahl von 1 bis 60. Berichtigen Sie sie.`,
  pinsUnreadable: (f) =>
    `Die Zahl der Anschlüsse „${f['found']}“ ist keine ganze Zahl ab 1; sie wird ausgelassen. Berichtigen Sie sie.`,
  bodySizeUnreadable: (f) =>
    `Die Körpergröße „${f['found']}“ ist keine Länge und Breite in mm; sie wird ausgelassen. Schreiben Sie sie wie 17 x 17.`,
  thicknessUnreadable: (f) =>
    `Körperdicke „${f['found']}“ ist keine Zahl über 0 in mm und wird ausgelassen. Berichtigen Sie sie.`,
  pocketUnreadable: (f) =>
    `Die Taschentiefe „${f['found']}“ ist keine Zahl über 0 in mm; sie wird ausgelassen. Berichtigen Sie sie.`,
  mslUnknown: (f) =>
    `„${f['found']}“ ist keine MSL-Stufe (1, 2, 2a, 3, 4, 5, 5a, 6) und wird ausgelassen. Berichtigen Sie sie.`,
  sharingUnknown: (f) =>
    `„${f['found']}“ sagt nicht, wie die Plätze sich dieses Bauteil teilen. Schreiben Sie „geteilt“, wenn jeder seinen Anteil bestückt. Schreiben Sie „nacheinander“, wenn einer versorgt, bis er leer ist.`,
  turnUsageDiffers: (f) =>
    `${f['part']} wird nacheinander genutzt: Der versorgende Platz bestückt alle ${f['wanted']}. Diese Zeile sagt ${f['found']}. Schreiben Sie in jede Zeile dieselbe Zahl.`,
  sideUnknown: (f) =>
    `„${f['found']}“ ist weder oben noch unten, die Seite wird ausgelassen. Berichtigen Sie sie.`,
  flagUnreadable: (f) =>
    `„${f['found']}“ ist weder ja noch nein und zählt als ${f['taken'] === 'yes' ? 'ja' : f['taken'] === 'no' ? 'nein' : f['taken']}. Berichtigen Sie es.`,
  alternateIsPart: (f) => `${f['part']} ist hier seine eigene Alternative. Das wird ausgelassen.`,
  slotTwice: (f) =>
    `Platz ${f['slot']} steht schon in Zeile ${f['first']}, mit ${f['part']}. Ein Platz nimmt ein Bauteil: Berichtigen Sie eine der Zeilen.`,
  noRoom: (f) =>
    `Der Feeder auf ${f['slot']} belegt ${f['wanted']} Positionen. ${f['next']} (Zeile ${f['nextRow']}) ist nur ${f['found']} weiter. Versetzen Sie einen der beiden.`,
  littleRoom: (f) =>
    `Ein ${f['width']}-mm-Feeder auf ${f['slot']} belegt meist ${f['wanted']} Positionen. ${f['next']} (Zeile ${f['nextRow']}) ist nur ${f['found']} weiter. Prüfen Sie, ob er passt, oder tragen Sie die belegten Positionen ein.`,
  noApprovedReels: (f) =>
    `${f['part']} hat kein freigegebenes Lieferantenteil: Nur Etiketten mit Ihrer eigenen Teilenummer gehen durch. Tragen Sie es ein.`,
  partDiffers: (f) =>
    `${f['part']}: ${field(f['field'])} ist hier ${f['found']}, in Zeile ${f['first']} ${f['wanted']}. Prüfen Sie, was stimmt.`,
  usageDisagrees: (f) =>
    `${f['part']}: ${f['found']} Bestückungen pro Nutzen in der Liste, ${f['wanted']} in der Bestückdatei. Prüfen Sie, was stimmt.`,
  usageRatio: (f) =>
    `Die Liste hat bei jedem Bauteil ${f['ratio']}-mal die Bestückungen der Bestückdatei. Die Datei enthält wohl eine von ${f['ratio']} Leiterplatten: Geben Sie ein, wie viele ein Nutzen hat.`,
  usageSplitUnknown: (f) =>
    `${f['part']}: ${f['wanted']} Bestückungen für ${f['found']} Plätze, und die Bestückdatei sagt nicht, wie viele je Platz. Tragen Sie die Bestückungen pro Nutzen ein.`,
  partNotPlaced: (f) =>
    `${f['part']} hat einen Platz, steht aber nicht in der Bestückdatei. Prüfen Sie die Teilenummer in beiden.`,
  partWithoutSlot: (f) =>
    `${f['part']} wird ${f['found']}-mal bestückt (Bestückdatei, ab Zeile ${f['first']}), hat aber keinen Platz. Geben Sie ihm einen, oder kennzeichnen Sie es als nicht bestückt.`,
  placementPartMissing: (f) =>
    `Referenz ${f['designator']} hat keine Teilenummer und wird ausgelassen. Tragen Sie sie ein.`,
  placementTwice: (f) =>
    `Referenz ${f['designator']} ist an derselben Stelle wie in Zeile ${f['first']}. Sie zählt einmal.`,
  placementSideMissing: () =>
    'Die Bestückdatei hat keine Spalte für die Seite. Alle Bestückungen zählen als oben.',
  placementSideUnknown: (f) =>
    `„${f['found']}“ ist weder oben noch unten, die Bestückung zählt als oben. Berichtigen Sie es.`,
  headerGuessed: (f) =>
    `Die Datei hat keinen bekannten Kopf. Nach dem, was darin steht, sind die Spalten: ${f['wanted']}. Prüfen Sie sie.`,
  columnByLook: (f) =>
    `Spalte „${f['found']}“ gilt nach ihrem Inhalt als ${field(f['field'])}. Prüfen Sie sie.`,
  genericParts: (f) =>
    `Spalte „${f['found']}“ hat einen Namen für mehrere Werte: Sie enthält Arten, keine Teilenummern. Die Werte zählen. Gibt es eine Spalte mit Teilenummern, wählen Sie sie von Hand.`,
  partsAreDesignators: (f) =>
    `Spalte „${f['found']}“ enthält Referenzen, keine Teilenummern. Wählen Sie die Spalte der Teilenummern von Hand.`,
  sheetAdded: (f) =>
    `Die Zeilen von Blatt „${f['found']}“ haben denselben Kopf und werden auch gelesen; sie zählen ab Zeile ${f['first']} weiter.`,
  designatorTwice: (f) =>
    `Referenz ${f['designator']} steht schon in Zeile ${f['first']}, an anderer Stelle. Sie zählt einmal. Geben Sie jedem Bauteil der Leiterplatte einen eigenen Namen.`,
  designatorSeldom: (f) =>
    `Referenz ${f['designator']} steht ${f['found']}-mal in der Datei, die meisten anderen ${f['wanted']}-mal. Prüfen Sie, ob jede Leiterplatte des Nutzens sie hat.`,
  placementSideFromName: (f) =>
    `Nichts in der Datei nennt die Seite. Nach ihrem Namen „${f['found']}“ zählen alle Bestückungen als ${sideDe(f['side'])}.`,
  throughHole: (f) =>
    `Referenz ${f['designator']} (${f['part']}) wird durchgesteckt und zählt nicht als bestückt.`,
  oddPlaced: (f) =>
    `Referenz ${f['designator']} sieht nach Testpunkt oder Bohrung aus, hat aber ${f['part']}. Sie zählt als bestückt. Ist sie es nicht, kennzeichnen Sie sie als nicht bestückt.`,
  valueInPackages: (f) =>
    `Wert ${f['part']} ist hier im Gehäuse ${f['found']}, in Zeile ${f['first']} in ${f['wanted']}. Sie zählen als zwei Bauteile. Geben Sie ihnen Teilenummern.`,
  partInPackages: (f) =>
    `${f['part']} ist hier im Gehäuse ${f['found']}, in Zeile ${f['first']} in ${f['wanted']}. Prüfen Sie die Teilenummer.`,
  valueWithoutPackage: (f) =>
    `Referenz ${f['designator']} hat den Wert ${f['part']}, aber weder Gehäuse noch Teilenummer. Niemand kann sagen, welches Bauteil es ist: Tragen Sie sie ein.`,
  xmlBroken: (f) =>
    `Das XML ist hier beschädigt: ${f['found']}. Was folgt, wird nicht gelesen. Exportieren Sie die Datei neu.`,
  noComponents: () =>
    'Die Datei enthält keine Bauteile. Exportieren Sie sie mit Bauteilen und ihren Stellen.',
  panelOfFile: (f) =>
    `Der Nutzen der Datei hat ${f['found']} Leiterplatten; eine wird gezählt. Geben Sie an, wie viele Leiterplatten ein Nutzen hat.`,
  billRowWithoutDesignators: (f) =>
    `${f['part']} nennt keine Referenzen: Aus dieser Zeile wird nichts bestückt. Tragen Sie sie ein, wenn es bestückt wird.`,
  billPartMissing: (f) =>
    `Die Zeile mit ${f['designator']} hat weder Teilenummer noch Wert. Tragen Sie eines davon ein.`,
  billPartByOther: (f) =>
    `Die Zeile hat keine Teilenummer: Ihr Bauteil heißt ${f['part']}. Tragen Sie die Teilenummer ein.`,
  secondTable: (f) => `Hier beginnt eine andere Tabelle (${f['headers']}). Sie wird nicht gelesen.`,
  boardsInFile: (f) =>
    `Die Bestückdatei enthält schon ${f['found']} Leiterplatten: ${f['wanted']} werden nicht noch einmal multipliziert. Prüfen Sie, wie viele Leiterplatten ein Nutzen hat.`,
  quantityDiffers: (f) =>
    `Die Menge ist ${f['wanted']}, aber die Zeile nennt ${f['found']} Referenzen. Prüfen Sie, was stimmt.`,
  quantityUnreadable: (f) =>
    `Menge „${f['found']}“ ist keine Zahl. Die Referenzen zählen. Berichtigen Sie sie.`,
  quantityRatio: (f) =>
    `In jeder Zeile ist die Menge ${f['ratio']}-mal die Zahl der Referenzen. Die Stückliste zählt wohl ${f['ratio']} Leiterplatten.`,
  billDesignatorTwice: (f) =>
    `Referenz ${f['designator']} steht schon in Zeile ${f['first']}, mit demselben Bauteil. Sie zählt einmal.`,
  billDesignatorDiffers: (f) =>
    `Referenz ${f['designator']} steht schon in Zeile ${f['first']}, mit ${f['wanted']}; hier ist sie ${f['found']}. Eine Stelle nimmt ein Bauteil: Berichtigen Sie eine der Zeilen.`,
  variantOpen: (f) =>
    `Die Varianten der Stückliste unterscheiden sich hier: ${f['wanted']}. Es zählt als bestückt. Geben Sie an, welche Variante gebaut wird, oder bringen Sie die Stückliste dieser Variante.`,
  variantNotFound: (f) => `Die Stückliste hat keine Variante „${f['found']}“. Sie hat: ${f['wanted']}.`,
  partDescribedTwice: (f) =>
    `${f['part']} hat hier den Wert ${f['found']}, in Zeile ${f['first']} ${f['wanted']}. Prüfen Sie die Teilenummer.`,
  markInRemark: (f) =>
    `Nach der Bemerkung „${f['found']}“ wird nichts dieser Zeile bestückt. Gilt das nur für einige Referenzen, nennen Sie sie dort.`,
  blankNotFitted: (f) =>
    `Spalte „${f['found']}“ hat in einigen Zeilen ein Zeichen und ist in ${f['count']} leer. Leer zählt als nicht bestückt.`,
  designatorNotInBill: (f) =>
    `Referenz ${f['designator']} steht in der Bestückdatei, aber in keiner Zeile der Stückliste, und zählt nicht. Ergänzen Sie sie dort, oder kennzeichnen Sie sie als nicht bestückt.`,
  designatorNotPlaced: (f) =>
    `Referenz ${f['designator']} (${f['part']}) steht in der Stückliste, aber nicht in der Bestückdatei, und zählt nicht.`,
  partOfFileDiffers: (f) =>
    `Referenz ${f['designator']}: ${f['found']} in der Bestückdatei, ${f['wanted']} in der Stückliste (Zeile ${f['first']}). Die Stückliste gilt. Prüfen Sie, was stimmt.`,
  valueOfFileDiffers: (f) =>
    `Referenz ${f['designator']}: Wert ${f['found']} in der Bestückdatei, ${f['wanted']} in der Stückliste (Zeile ${f['first']}). Die Stückliste gilt. Prüfen Sie, was stimmt.`,
  sideOfFileDiffers: (f) =>
    `Referenz ${f['designator']} ist in der Bestückdatei ${sideDe(f['found'])}; die Stückliste sagt ${sideDe(f['wanted'])}. Die Bestückdatei gilt.`,
  sheetDesignatorNotPlaced: (f) =>
    `Referenz ${f['designator']} steht in dieser Zeile, aber nicht in der Bestückdatei. Prüfen Sie sie in beiden.`,
  designatorWithoutSlot: (f) =>
    `Referenz ${f['designator']} (Bestückdatei, Zeile ${f['first']}, ${f['part']}) steht in keiner Zeile der Liste. Ergänzen Sie sie in der Zeile ihres Platzes, oder kennzeichnen Sie sie als nicht bestückt.`,
  sheetPartDiffers: (f) =>
    `Referenz ${f['designator']}: ${f['found']} in dieser Zeile, ${f['wanted']} in der Bestückdatei oder der Stückliste. Prüfen Sie, was stimmt.`,
  sheetDesignatorTwice: (f) =>
    `Referenz ${f['designator']} steht schon in Zeile ${f['first']}. Sie zählt dort.`,
  listPartEmpty: () =>
    'Die Zeile hat keine Teilenummer, aber andere Zellen sind gefüllt. Tragen Sie sie ein.',
  listPackingUnknown: (f) =>
    `„${f['found']}“ ist weder Gurt, Gurtstück, Tray, Stange noch Schüttgut und wird weggelassen. Berichtigen Sie es.`,
  listAgeUnreadable: (f) =>
    `Die Altersgrenze „${f['found']}“ ist keine Zahl von Monaten und wird weggelassen. Schreiben Sie 24 oder 2 Jahre.`,
  listPriceUnreadable: (f) =>
    `Der Preis „${f['found']}“ ist keine Zahl über 0 und entfällt. Schreiben Sie 0.012 oder 0.012 EUR.`,
  listPriceUnclear: (f) =>
    `„${f['found']}“ sagt nicht, für wie viele Bauteile ein Preis gilt. Schreiben Sie Price each oder Price per 1000.`,
  listToleranceUnclear: (f) =>
    `„${f['found']}“ hat bloße Zahlen unter 1: Anteile oder Prozent? Sie werden weggelassen. Nennen Sie die Spalte Tolerance % oder schreiben Sie 1 % in die Zellen.`,
  listReelEmpty: () => 'Die Zeile hat keine Rollen-ID und wird weggelassen. Tragen Sie sie ein.',
  listReelTwice: (f) => `Rolle ${f['found']} steht schon in Zeile ${f['first']}. Ihre letzte Zahl gilt.`,
  listCountUnreadable: (f) =>
    `Die Zahl „${f['found']}“ ist keine ganze Zahl von Bauteilen; die Zeile wird weggelassen. Berichtigen Sie sie.`,
};

export const words: Sentences<typeof english> = { say: (problem) => de[problem.code](problem.facts) };
