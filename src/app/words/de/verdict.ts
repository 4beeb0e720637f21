import type { words as english } from '../en/verdict.ts';
import { type ReasonWords, restsOn } from '../reason-words.ts';
import { formatCount, plural, type Sentences } from '../words.ts';
import { moistureReasonsDe, tableDe } from './verdict-moisture.ts';
import { plantReasonsDe } from './verdict-plant.ts';

const reasonsDe: ReasonWords = {
  ...moistureReasonsDe,
  ...plantReasonsDe,
  'unknown-slot': {
    title: 'Kein solcher Platz',
    say: (f) => `Diese Linie hat keinen Platz ${f['slot']}.`,
    act: 'Scannen Sie den Code des Platzes an der Maschine.',
  },
  'slot-not-in-setup': {
    title: 'Platz nicht genutzt',
    say: (f) => `Diese Rüstung braucht nichts auf ${f['slot']}.`,
    act: 'Lassen Sie ihn leer. Scannen Sie den richtigen Platz.',
  },
  'slot-loaded': {
    title: 'Platz schon gerüstet',
    say: (f) => `${f['slot']} hat schon ${f['part']}${f['reel'] ? ` (Rolle ${f['reel']})` : ''}.`,
    act: 'Rüsten Sie zuerst diese Rolle ab.',
  },
  'slot-empty': {
    title: 'Platz ist leer',
    say: (f) => `Auf ${f['slot']} ist nichts gerüstet.`,
    act: 'Spleißen geht nicht: Rüsten Sie eine Rolle.',
  },
  'no-part': {
    title: 'Keine Teilenummer',
    say: (f) => `Kein Code auf diesem Etikett sagt, welches Bauteil es ist. Verlangt: ${f['wanted']}.`,
    act: 'Scannen Sie das ganze Etikett, oder tippen Sie die gedruckte Teilenummer.',
  },
  'wrong-part': {
    title: 'Falsches Bauteil',
    say: (f) =>
      f['goesTo']
        ? `Diese Rolle kommt auf ${f['goesTo']}.`
        : 'Kein Platz dieser Rüstung braucht dieses Bauteil.',
    act: 'Legen Sie sie zurück. Scannen Sie eine andere Rolle.',
  },
  'wrong-for-lane': {
    title: 'Falsch für die andere Spur',
    say: (f) => `${f['lane']} nimmt ${f['wanted']} von diesem Platz.`,
    act: 'Legen Sie sie zurück. Scannen Sie eine Rolle, die für beide Spuren passt.',
  },
  'kept-for-lane': {
    title: 'Bleibt für die andere Spur',
    say: (f) => `${f['slot']} hat ${f['part']} für ${f['lane']}.`,
    act: 'Lassen Sie die Rolle dort. Zum Spleißen wählen Sie zuerst die andere Spur.',
  },
  'not-in-setup': {
    title: 'Nicht in dieser Rüstung',
    say: (f) =>
      f['slot']
        ? `Kein Platz braucht diese Rolle. Am nächsten ist ${f['slot']}.`
        : 'Kein Platz braucht diese Rolle.',
    act: 'Lassen Sie sie auf dem Wagen, oder bringen Sie sie ins Lager zurück.',
  },
  'bake-short': {
    title: 'Zu kurz gebacken',
    say: (f) =>
      `${f['hours']} h gebacken${f['celsius'] ? ` bei ${f['celsius']} °C` : ''}. ${f['wanted'] ? `Die Tabelle verlangt dort ${f['wanted']} h` : 'Die Tabelle hat dafür keine Zeile'}, daher ist die Offenzeit nicht wiederhergestellt: ${f['leftSeconds']} übrig. (${restsOn(f, tableDe)}Ein unbekanntes Gehäuse zählt als das schlechteste.)`,
    act: 'Ein Schichtleiter muss entscheiden.',
  },
  'same-label': {
    title: 'Eine zweite Rolle mit demselben Etikett',
    say: () => 'Eine Person hat es bestätigt: Das Etikett passt zur Rolle, die hier läuft.',
    act: '',
  },
  'reel-elsewhere': {
    title: 'Rolle ist auf einem anderen Platz',
    say: (f) => `Laut Protokoll ist Rolle ${f['reel']} auf ${f['slot']}.`,
    act: 'Ist sie dort nicht mehr, rüsten Sie sie dort zuerst ab.',
  },
  'reel-on-cart': {
    title: 'Rolle ist auf einem Wagen',
    say: (f) => `Laut Protokoll ist Rolle ${f['reel']} auf Wagen ${f['cart']}, bereit für ${f['slot']}.`,
    act: 'Nehmen Sie eine andere Rolle, oder nehmen Sie sie zuerst unter Vorbereiten vom Wagen.',
  },
  'slot-on-cart': {
    title: 'Platz ist auf einem Wagen bereit',
    say: (f) => `Auf Wagen ${f['cart']} ist schon eine Rolle bereit für ${f['slot']}.`,
    act: 'Scannen Sie einen anderen Platz, oder nehmen Sie diesen zuerst vom Wagen.',
  },
  'reel-here': {
    title: 'Rolle ist schon hier',
    say: (f) => `Rolle ${f['reel']} ist schon auf ${f['slot']}.`,
    act: 'Scannen Sie die nächste Rolle.',
  },
  'reel-blocked': {
    title: 'Rolle ist gesperrt',
    say: (f) => `Gesperrt: ${f['reason']}.`,
    act: 'Legen Sie sie beiseite. Holen Sie den Schichtleiter.',
  },
  'feeder-elsewhere': {
    title: 'Feeder ist auf einem anderen Platz',
    say: (f) => `Laut Protokoll ist Feeder ${f['feeder']} auf ${f['slot']}.`,
    act: 'Prüfen Sie den Code des Feeders, oder rüsten Sie dort zuerst ab.',
  },
  'feeder-aside': {
    title: 'Feeder ist beiseitegelegt',
    say: (f) => `Feeder ${f['feeder']} darf nicht verwendet werden: ${f['why']}.`,
    act: 'Nehmen Sie einen anderen Feeder. Nach der Wartung tragen Sie sie beim Feeder ein.',
  },
  'feeder-lanes': {
    title: 'Feeder hat keine Spur frei',
    say: (f) =>
      `Feeder ${f['feeder']} hat Spuren: ${f['lanes']}. Laut Protokoll ist er schon auf ${f['slots']}.`,
    act: 'Prüfen Sie den Code des Feeders, oder berichtigen Sie die Zahl der Spuren seines Typs.',
  },
  'feeder-on-cart': {
    title: 'Feeder ist auf einem Wagen',
    say: (f) => `Laut Protokoll ist Feeder ${f['feeder']} auf Wagen ${f['cart']}, bereit für ${f['slot']}.`,
    act: 'Prüfen Sie den Code des Feeders, oder nehmen Sie ihn zuerst unter Vorbereiten vom Wagen.',
  },
  'feeder-width': {
    title: 'Feeder passt nicht zum Gurt',
    say: (f) =>
      `Feeder ${f['feeder']} ist für ${f['found']}-mm-Gurt; dieser Platz braucht ${f['wanted']} mm.`,
    act: 'Nehmen Sie einen Feeder der richtigen Breite.',
  },
  'feeder-pitch': {
    title: 'Teilung des Feeders passt nicht',
    say: (f) => `Feeder ${f['feeder']} rückt ${f['found']} mm vor; dieser Gurt braucht ${f['wanted']} mm.`,
    act: 'Stellen Sie die Teilung ein oder nehmen Sie einen anderen Feeder. Eine falsche Teilung wirft unbemerkt Bauteile weg.',
  },
  'floor-life-over': {
    title: 'Offenzeit abgelaufen',
    say: () => 'Diese Rolle war zu lange außerhalb ihres Trockenbeutels.',
    act: 'Nicht verwenden. Geben Sie sie nach Ihren Regeln zum Backen.',
  },
  'not-the-loaded-reel': {
    title: 'Nicht die Rolle im Protokoll',
    say: (f) => `Laut Protokoll ist ${f['loaded'] || 'eine andere Rolle'} auf ${f['slot']}.`,
    act: 'Finden Sie heraus, wer sie gewechselt hat. Dann rüsten Sie sie ab und neu.',
  },
  'part-contradicts': {
    title: 'Etikett widerspricht sich',
    say: (f) =>
      `Darauf steht ${f['part']}, aber ${f['supplierPart']} ist für ${f['approvedFor']} freigegeben.`,
    act: 'Ein Schichtleiter muss entscheiden.',
  },
  'alternate-not-approved': {
    title: 'Alternative hier nicht freigegeben',
    say: (f) =>
      `${f['found']} darf ${f['wanted']} auf ${f['approvedFor']} ersetzen, aber nicht auf diesem Produkt.`,
    act: 'Ein Schichtleiter muss entscheiden.',
  },
  'supplier-part-not-approved': {
    title: 'Lieferantenteil nicht bekannt',
    say: (f) =>
      `${f['supplierPart']} steht nicht auf der Liste der freigegebenen Teile. Verlangt: ${f['wanted']}.`,
    act: 'Ein Schichtleiter muss entscheiden.',
  },
  'no-quantity': {
    title: 'Keine Menge',
    say: () => 'Das Etikett nennt keine Menge, das Rollenende ist daher unbekannt.',
    act: 'Tippen Sie die Menge, oder lassen Sie einen Schichtleiter entscheiden.',
  },
  expired: {
    title: 'Datum überschritten',
    say: (f) => `Verwendbar bis ${f['expires']}.`,
    act: 'Ein Schichtleiter muss entscheiden.',
  },
  'by-alternate': {
    title: 'Freigegebene Alternative',
    say: (f) => `${f['found']} ist eine freigegebene Alternative zu ${f['wanted']}.`,
    act: '',
  },
  'by-supplier-part': {
    title: 'Über die Nummer des Lieferanten',
    say: (f) => `${f['supplierPart']} ist für ${f['part']} freigegeben.`,
    act: '',
  },
  'by-comparison': {
    title: 'Als gleiche Nummer genommen',
    say: (f) => `${f['found']} gilt als ${f['wanted']} nach der Regel des Standorts zu ${f['rule']}.`,
    act: '',
  },
  'mixed-lots': {
    title: 'Andere Charge',
    say: (f) => `Charge wechselt von ${f['from']} zu ${f['to']}.`,
    act: '',
  },
  'quantity-corrected': {
    title: 'Nicht die Menge des Etiketts',
    say: (f) =>
      f['label'] === ''
        ? `Das Etikett nennt keine; das Protokoll nimmt ${f['quantity']}.`
        : `Auf dem Etikett steht ${f['label']}; das Protokoll nimmt ${f['quantity']}.`,
    act: '',
  },
};

export const words: Sentences<typeof english> = {
  accepted: {
    exchange: 'Richtig für den Wechsel',
    refill: 'Richtig zum Nachfüllen',
    load: 'Richtige Rolle',
    splice: 'Richtige Rolle zum Spleißen',
    sweep: 'Gesehen',
  },
  refused: 'Abgelehnt',
  held: 'Wartet auf Schichtleiter',
  wants: (slot) => `${slot} braucht`,
  says: 'auf der Rolle steht',
  also: 'Auch',
  goOn: 'Weiter',
  nextIs: (slot) => `Als Nächstes: ${slot}`,
  another: 'Andere Rolle scannen',
  callLead: 'Schichtleiter entscheidet',
  typeQuantity: 'Menge tippen',
  takeBack: 'Zurücknehmen',
  parts: (count) => plural(count, '1 Bauteil', `${formatCount(count)} Bauteile`),
  lot: (lot) => `Charge ${lot}`,
  reel: (reel) => `Rolle ${reel}`,
  practice: 'Übungsscan',
  allLoaded: 'Jeder Platz ist gerüstet.',
  spliceCaution:
    'Gurte nur verbinden, wenn die Maschine steht oder der Feeder laut Handbuch außerhalb des Schutzbereichs ist. Von den Fingern weg schneiden. Örtliche Regeln gehen vor.',
  loadCaution:
    'Maschine anhalten und auf den Kopf warten, bevor Sie hineingreifen. Örtliche Regeln gehen vor.',
  reasons: reasonsDe,
};
