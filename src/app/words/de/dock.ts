import type { words as english } from '../en/dock.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  wells: {
    slot: 'Platz',
    feeder: 'Feeder',
    'old-reel': 'Alte Rolle',
    reel: 'Rolle',
    'new-reel': 'Neue Rolle',
  },
  wants: {
    slot: 'Platz scannen',
    feeder: 'Feeder scannen',
    'old-reel': 'Rolle auf dem Platz scannen',
    reel: 'Etikett scannen',
    'new-reel': 'nächste Rolle scannen',
  },
  pieces: { quantity: 'Menge', lot: 'Charge' },
  pieceWanted: { quantity: 'Menge?', lot: 'Charge?' },
  scanAlso: (part, pieces) => `${part}: auch ${pieces} scannen`,
  enough: 'Das ist alles',
  belongs: (slots) => `gehört auf ${slots}: Platz scannen`,
  belongsNowhere: 'kein Platz dieser Rüstung braucht sie',
  scanAnything: 'Beliebig scannen',
  scanAnythingHelp: 'Platz, Feeder, Rolle, Ausweis, Nutzen',
  camera: 'Kamera',
  typeIt: 'Tippen',
  clear: 'Leeren',
  typeTitle: 'Tippen, was auf dem Etikett steht',
  typeHelp: 'Ein Code pro Zeile, wie gedruckt. Dann Fertig drücken.',
  unknownSlot: (slot) =>
    `Diese Linie hat keinen Platz ${slot}. Scannen Sie den Code des Platzes an der Maschine.`,
  unknownCode: (text) =>
    `„${text}“ ist kein bekannter Platz, Feeder, Ausweis oder Nutzen und keine bekannte Rolle.`,
  teachLabel: 'Anlernen',
  sweepOn: 'Kontrollrunde: jeden Platz scannen, dann seine Rolle',
  unlistedFeeder: (text) => `„${text}“ steht auf keiner Liste dieses Werks. Ist das der Feeder?`,
  placeHere: (place) => `${place} ist ein Lagerort: Öffnen Sie Rollen, um zu sehen, was dort liegt.`,
  halfLabel:
    'Nur ein Teil des Etiketts wurde gelesen. Scannen Sie alles noch einmal, die Teilenummer zuerst.',
  noPart:
    'Keine Teilenummer auf diesem Etikett ist hier bekannt. Teilenummer eintippen oder das Etikett anlernen lassen.',
  wrongKeyboard: (layout) =>
    `Der Scanner tippt für eine andere Tastatur, ${layout}. Nichts wurde übernommen. Tastatur des Scanners einstellen, dann neu scannen.`,
  symbolsMissing: (have, of) =>
    `Eine Nachricht steht auf mehreren Codes; bisher gelesen: ${have} von ${of}. Alle in einem Kamerabild scannen.`,
  cartHere: (cart) => `${cart} ist ein Wagen.`,
  cartDoor: (cart) => `${cart} andocken?`,
  oldReelDiffers: (slot, loaded) => `Das ist nicht die Rolle auf ${slot}. Verlangt: ${loaded}.`,
  standsHere: 'Sie ist auf dem Platz',
  notNow: 'noch nicht nötig',
  cameBack: (clock) => `Dieser Scan war um ${clock} offen. Machen Sie weiter, oder leeren Sie ihn.`,
  goOnWith: 'Weiter',
  leadWanted: 'Ein Schichtleiter muss über diese Rolle entscheiden.',
  whichTitle: 'Dieser Code hat zwei Bedeutungen',
  whichText: (text) => `„${text}“ kann sein:`,
  meaningTitle: 'Was ist das?',
  meaningText: (text) => `Auf dem Etikett steht „${text}“. Wofür steht das?`,
  is: {
    slot: 'Platz',
    feeder: 'Feeder',
    person: 'Ausweis',
    reel: 'Rolle',
    panel: 'Nutzen',
    cart: 'Wagen',
    place: 'Lagerort',
  },
  fieldNames: {
    part: 'Eigene Teilenummer',
    supplierPart: 'Teilenummer des Lieferanten',
    quantity: 'Menge',
    lot: 'Charge',
    reel: 'Rollen-ID',
    dateCode: 'Datumscode',
    place: 'Lagerort',
    other: 'Etwas anderes',
  },
};
