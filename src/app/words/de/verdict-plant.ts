// What is said of the reasons that come from the plant's own lists: types of feeders, makers of a product, ages, the store.

import type { PlantReasons, ReasonFacts } from '../reason-words.ts';

/** What was measured, what is wanted, and what the guard band leaves. */
const measured = (f: ReasonFacts) =>
  `Gemessen: ${f['quantity']} ± ${f['uncertainty']} ${f['unit']}. Verlangt: ${f['nominal']} ${f['unit']}, von ${f['least']} bis ${f['most']}. Mit dem Sicherheitsband von ${f['guard']}: von ${f['from']} bis ${f['to']}.`;

export const plantReasonsDe: PlantReasons = {
  'feeder-unknown': {
    title: 'Feeder nicht bekannt',
    say: (f) =>
      `Feeder ${f['feeder']} steht nicht auf der Liste des Werks, seine Breite lässt sich daher nicht prüfen.`,
    act: 'Ein Schichtleiter muss entscheiden.',
  },
  'feeder-type': {
    title: 'Falscher Feedertyp',
    say: (f) => `Feeder ${f['feeder']} ist Typ ${f['found']}; dieser Platz braucht Typ ${f['wanted']}.`,
    act: 'Nehmen Sie einen Feeder dieses Typs.',
  },
  'feeder-drive': {
    title: 'Falscher Antrieb',
    say: (f) => `Feeder ${f['feeder']} hat Antrieb ${f['found']}; dieser Platz braucht ${f['wanted']}.`,
    act: 'Nehmen Sie einen Feeder mit dem richtigen Antrieb.',
  },
  'feeder-height': {
    title: 'Taschen zu tief für den Feeder',
    say: (f) =>
      `Die Taschen des Gurts sind ${f['wanted']} mm tief; durch Feeder ${f['feeder']} passen ${f['found']} mm.`,
    act: 'Nehmen Sie einen Feeder für tiefere Taschen.',
  },
  'maker-not-listed': {
    title: 'Hersteller nicht auf der Liste dieses Produkts',
    say: (f) =>
      `${f['supplierPart']} ist auf diesem Produkt nicht für ${f['part']} freigegeben.${f['listed'] ? ` Freigegeben: ${f['listed']}.` : ''}${f['approvedFor'] ? ` Freigegeben ist es auf ${f['approvedFor']}.` : ''}`,
    act: 'Nehmen Sie eine Rolle eines gelisteten Herstellers, oder lassen Sie einen Schichtleiter entscheiden.',
  },
  'date-code-old': {
    title: 'Nach Datumscode zu alt',
    say: (f) =>
      `Hergestellt ${f['made']}. Die Altersgrenze der Linie für dieses Bauteil endete am ${f['last']}.`,
    act: 'Ein Schichtleiter muss entscheiden.',
  },
  'date-code-unknown': {
    title: 'Alter nicht bekannt',
    say: (f) =>
      f['dateCode']
        ? `Datumscode ${f['dateCode']} ist nicht sicher zu lesen. Die Linie begrenzt das Alter dieses Bauteils.`
        : 'Das Etikett nennt keinen Datumscode. Die Linie begrenzt das Alter dieses Bauteils.',
    act: 'Ein Schichtleiter muss entscheiden.',
  },
  'value-outside': {
    title: 'Falscher Wert',
    say: measured,
    act: 'Nicht rüsten. Legen Sie die Rolle beiseite und scannen Sie eine andere.',
  },
  'value-unsure': {
    title: 'Wert nicht eindeutig',
    say: (f) => `${measured(f)} Für dieses Messgerät zu nah an einer Grenze.`,
    act: 'Scannen Sie die Rolle erneut, um neu zu messen, oder lassen Sie einen Schichtleiter entscheiden.',
  },
  'value-unmeasured': {
    title: 'Wert nicht gemessen',
    say: (f) =>
      `Die Linie verlangt, dass ein Bauteil von ${f['part']} gemessen wird, bevor die Rolle zuführt.`,
    act: 'Scannen Sie die Rolle erneut, um es zu messen, oder lassen Sie einen Schichtleiter entscheiden.',
  },
  'value-unknown': {
    title: 'Kein Wert zum Prüfen',
    say: (f) =>
      f['lack'] === 'tolerance'
        ? `Die Teileliste nennt für ${f['part']} einen Wert ohne Toleranz.`
        : `Die Teileliste nennt für ${f['part']} keinen Wert.`,
    act: 'Ein Schichtleiter muss entscheiden. Tragen Sie den Wert unter Bauteile ein.',
  },
  'value-within': { title: 'Wert geprüft', say: measured, act: '' },
  'feeder-care': {
    title: 'Wartung des Feeders fällig',
    say: (f) =>
      `Feeder ${f['feeder']} hat etwa ${f['placed']} Bauteile bestückt; das Werk verlangt Wartung nach ${f['after']}. Geben Sie ihn zur Wartung, wenn er herauskommt.`,
    act: '',
  },
  'older-in-store': {
    title: 'Eine ältere Rolle ist im Lager',
    say: (f) =>
      f['by'] === 'expires'
        ? `Rolle ${f['reel']} (${f['place']}) ist bis ${f['expires']} zu verwenden, vor dieser.`
        : `Rolle ${f['reel']} (${f['place']}) hat Datumscode ${f['dateCode']}, älter als diese.`,
    act: '',
  },
};
