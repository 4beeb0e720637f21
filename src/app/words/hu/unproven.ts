import type { words as english } from '../en/unproven.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  page: 'Nem igazolt',
  none: 'Minden igazolt: minden műszakvezetőt kérő bejegyzés mögött ott van a szerver jegye.',
  noTickets:
    'Ez az üzem még nem ad jegyeket. Akkor kezdődnek, amikor egy műszakvezető ott ír be PIN-kódot, ahol a szerver válaszol.',
  help: 'Ezekhez a bejegyzésekhez műszakvezető vagy mérnök kell, és a szerver jegye nélkül készültek. A csarnokban számítanak. Egy műszakvezető, aki tud róluk, megerősíti vagy elveti őket.',
  stands: {
    proven: 'jeggyel igazolt',
    unproven: 'nem igazolt',
    confirmed: 'műszakvezető megerősítette',
    rejected: 'műszakvezető elvetette',
    'before-tickets': 'a jegyek előtt készült',
  },
  right: 'Jog',
  why: {
    'no-ticket': (role) => `Nincs szerverjegy: semmi nem igazolja, hogy „${role}” szerepű személy tette.`,
    'ticket-over': () => 'A jegy nem erre az időre szólt.',
    role: (role) => `A jegy kisebb szerepé. Szükséges: ${role}.`,
  },
  before: 'Ez az üzem még nem adott jegyeket, amikor ez készült.',
  by: (name) => `tette: ${name}`,
  nobody: 'nincs megnevezve senki',
  confirm: 'Megerősítés',
  reject: 'Elvetés',
  confirmAll: (count) => (count === 1 ? 'Megerősítés' : `Mind a ${count} megerősítése`),
  confirmTitle: (count) =>
    count === 1 ? 'Úgy történt, ahogy írja?' : `Mind a ${count} úgy történt, ahogy írja?`,
  rejectTitle: 'Nem ez a személy tette?',
  rejectHelp:
    'A bejegyzés megmarad, elvetettként megjelölve. Amit a csarnokban változtatott, az is megmarad: azt Ön hozza rendbe.',
  rejectPerson:
    'A szervernél e személy módosítása nem számít. Nézze meg a személyeket az Üzem alatt, és hozza rendbe a listát.',
  reason: 'Honnan tudja?',
  needsServer: 'Ehhez a szervernek válaszolnia kell: csak akkor igazolt, ki dönt.',
  notProven:
    'Ez le lett írva, de jegy nélkül, ezért semmit nem rendez. Próbálja újra ott, ahol a szerver válaszol.',
  confirmed: (count) => (count === 1 ? 'A bejegyzés megerősítve.' : `${count} bejegyzés megerősítve.`),
  rejected: 'A bejegyzés elvetve.',
  engineerOnly: (count) => `Közülük ${count} bejegyzéshez mérnök szava kell.`,
  badgeAlone: (name) =>
    `${name} csak kártyával van bejelentkezve. Amihez műszakvezető kell, nem igazolt marad. Az igazoláshoz névvel és PIN-kóddal jelentkezzen be.`,
  settled: { confirmed: 'megerősítve', rejected: 'elvetve' },
};
