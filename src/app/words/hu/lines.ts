import type { words as english } from '../en/lines.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  add: 'Sor felvétele',
  edit: 'Módosítás',
  editOf: (name) => `${name}: módosítás`,
  machines: (count) => `${count} gép`,
  slots: (count) => `${count} hely`,
  fromSheets:
    'Némelyik hely csak setuplistából ismert. Nyissa meg a sort, és nevezze el őket úgy, ahogy a gépen állnak.',
  newTitle: 'Új sor',
  newName: (number) => `${number}. sor`,
  name: 'Név',
  zone: 'Időzóna',
  zoneHelp: 'Ahol a sor áll, például Europe/Budapest.',
  help: 'Minden banknál írja be az első és az utolsó helyet úgy, ahogy a gépen állnak.',
  bankOf: (number) => `${number}. bank`,
  removeOf: (number) => `${number}. bank törlése`,
  first: 'Első hely',
  last: 'Utolsó hely',
  addAcross: (slot) => `Másik oldal hozzáadása: ${slot}`,
  addMachine: (slot) => `Következő gép hozzáadása: ${slot}`,
  addBank: 'Bank hozzáadása',
  holdsTrays: 'Tálcák, feeder nélkül',
  trays: 'tálcák',
  lanes: {
    title: 'Sávok',
    help: 'Egy szállítópályán egyszerre két termék is futhat. Minden sávnak saját gyártása van; mind ugyanazokról a helyekről vesz.',
    add: 'Sáv hozzáadása',
    name: (number) => `A(z) ${number}. sáv neve`,
    called: (line, number) => `${line}, ${number}. sáv`,
    removeOf: (number) => `A(z) ${number}. sáv törlése`,
    held: {
      runs: (lane) => `${lane} éppen gyárt. Előbb fejezze be a futását.`,
      reels: (slots) => `Előbb vegye ki, ami csak ennek a sávnak kell: ${slots}.`,
      open: 'Ennél a sávnál még nyitva van valami: visszatartott tekercs, átadás, átállás, ellenőrzőlista, bejárás, paszta, számláló állomás, előkészített feeder vagy kocsi. Előbb azt fejezze be.',
    },
  },
  picture: 'Így néz ki a sor',
  save: 'Sor mentése',
  saved: (name) => `${name}: mentve.`,
  faults: {
    'no-number': 'Mindkettő végén szám álljon: M1-F-001 és M1-F-025.',
    differs: 'Csak a végén álló szám lehet más.',
    'not-from-one': 'Az első hely száma 1 legyen.',
    backwards: 'Az utolsó szám kisebb az elsőnél.',
    'too-many': 'Egy bankban legfeljebb 500 hely lehet.',
    twice: 'Ez a bank már megvan.',
  },
  obstacles: {
    ranges: (count) =>
      count === 1 ? 'Javítsa a fent megjelölt bankot.' : `Javítsa a fent megjelölt ${count} bankot.`,
    'name-missing': 'Írjon be egy nevet.',
    'lanes-alike': 'Adjon minden sávnak saját nevet.',
    'zone-unknown': 'Válasszon időzónát a listából.',
    'no-banks': 'Előbb írja be egy bank helyeit.',
    lost: (slots, count) =>
      count === 1
        ? `${slots}: ez a hely használatban van. Hagyja meg.`
        : `${count} használatban lévő hely megszűnne: ${slots}. Hagyja meg őket.`,
  },
};
