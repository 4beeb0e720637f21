import type { words as english } from '../en/dock.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  // Short: on a phone a well is hardly wider than a word.
  wells: {
    slot: 'Empl.',
    feeder: 'Feeder',
    'old-reel': 'Ancienne bobine',
    reel: 'Bobine',
    'new-reel': 'Nouvelle bobine',
  },
  wants: {
    slot: 'scannez l’emplacement',
    feeder: 'scannez le feeder',
    'old-reel': 'scannez la bobine en place',
    reel: 'scannez son étiquette',
    'new-reel': 'scannez la bobine suivante',
  },
  pieces: { quantity: 'quantité', lot: 'lot' },
  pieceWanted: { quantity: 'quantité ?', lot: 'lot ?' },
  scanAlso: (part, pieces) => `${part} : scannez aussi ${pieces}`,
  enough: 'C’est tout',
  belongs: (slots) => `va en ${slots} : scannez l’emplacement`,
  belongsNowhere: 'aucun emplacement de ce plan ne la demande',
  scanAnything: 'Scannez un code',
  scanAnythingHelp: 'emplacement, feeder, bobine, badge, flan',
  camera: 'Caméra',
  typeIt: 'Saisir',
  clear: 'Vider',
  typeTitle: 'Saisissez ce que dit l’étiquette',
  typeHelp: 'Un code par ligne, comme imprimé. Puis touchez Terminé.',
  unknownSlot: (slot) =>
    `Cette ligne n’a pas d’emplacement ${slot}. Scannez le code de l’emplacement sur la machine.`,
  unknownCode: (text) =>
    `« ${text} » n’est ni un emplacement, ni un feeder, un badge, un flan ou une bobine connus.`,
  teachLabel: 'Apprendre',
  sweepOn: 'Ronde : scannez chaque emplacement, puis sa bobine',
  unlistedFeeder: (text) => `« ${text} » n’est sur aucune liste de cette usine. Est-ce le feeder ?`,
  placeHere: (place) => `${place} est un casier du magasin : ouvrez Bobines pour voir ce qui s’y trouve.`,
  halfLabel:
    'Une partie seulement de l’étiquette a été lue. Scannez-la en entier, la référence interne d’abord.',
  noPart:
    'Aucune référence de cette étiquette n’est connue ici. Saisissez la référence, ou faites apprendre l’étiquette.',
  wrongKeyboard: (layout) =>
    `Le lecteur écrit pour un autre clavier, ${layout}. Rien n’a été pris. Réglez le clavier du lecteur, puis scannez à nouveau.`,
  symbolsMissing: (have, of) =>
    `Un même message tient sur plusieurs codes ; lus jusqu’ici : ${have} sur ${of}. Scannez-les tous dans une seule image de la caméra.`,
  cartHere: (cart) => `${cart} est un chariot.`,
  cartDoor: (cart) => `Arrimer ${cart} ?`,
  oldReelDiffers: (slot, loaded) => `Ce n’est pas la bobine en ${slot}. Attendue : ${loaded}.`,
  standsHere: 'Elle est en place',
  notNow: 'pas encore nécessaire',
  cameBack: (clock) => `Ce scan était ouvert à ${clock}. Continuez, ou videz-le.`,
  goOnWith: 'Continuer',
  leadWanted: 'Un chef d’équipe doit décider de cette bobine.',
  whichTitle: 'Ce code a deux sens',
  whichText: (text) => `« ${text} » peut être :`,
  meaningTitle: 'Qu’est-ce que c’est ?',
  meaningText: (text) => `L’étiquette dit « ${text} ». Que désigne ce code ?`,
  is: {
    slot: 'Emplacement',
    feeder: 'Feeder',
    person: 'Badge',
    reel: 'Bobine',
    panel: 'Flan',
    cart: 'Chariot',
    place: 'Casier',
  },
  fieldNames: {
    part: 'Référence interne',
    supplierPart: 'Référence fournisseur',
    quantity: 'Quantité',
    lot: 'Lot',
    reel: 'ID de bobine',
    dateCode: 'Code date',
    place: 'Casier du magasin',
    other: 'Autre chose',
  },
};
