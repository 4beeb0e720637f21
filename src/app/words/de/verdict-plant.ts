// What is said of the reasons that come from the plant's own lists: types of feeders, makers of a product, ages, the store.

import type { PlantReasons } from '../reason-words.ts';

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
  'older-in-store': {
    title: 'Eine ältere Rolle ist im Lager',
    say: (f) =>
      f['by'] === 'expires'
        ? `Rolle ${f['reel']} (${f['place']}) ist bis ${f['expires']} zu verwenden, vor dieser.`
        : `Rolle ${f['reel']} (${f['place']}) hat Datumscode ${f['dateCode']}, älter als diese.`,
    act: '',
  },
};
