import type { words as english } from '../en/people.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  whoTitle: 'Ki dolgozik?',
  yourLanguage: 'Az Ön nyelve, minden tableten',
  pinTitle: (name) => `${name} PIN-kódja`,
  pinHelp: 'Négy–nyolc számjegy.',
  pinWrong: 'Nem ez a PIN-kód.',
  pinLeft: (left) => `Nem ez a PIN-kód. Még ${left} próbálkozás maradt.`,
  pinLocked: (minutes) => `Túl sok próbálkozás. Zárolva ${minutes} percre.`,
  pinUnsafe: 'PIN-kód csak biztonságos oldalon ellenőrizhető. Nyissa meg az alkalmazást a https címén.',
  notSeenHere: (name) =>
    `A szerver nem válaszol, és ez a tablet még sosem igazolta: ${name}. Próbálja ott, ahol a szerver válaszol.`,
  pinNotHere: (name) =>
    `Ez a tablet még nem ismeri ${name} PIN-kódját. Írja be egyszer ott, ahol a szerver válaszol, vagy azon a tableten, ahol be lett állítva.`,
  seenTooLongAgo: (name) =>
    `A szerver nem válaszol, és ez a tablet több mint három napja igazolta: ${name}. Próbálja ott, ahol a szerver válaszol.`,
  asking: 'Ellenőrzés…',
  enter: 'Beírás',
  erase: 'Törlés',
  nobody: 'Még nincs személy ezen a tableten. Előbb vegyen fel egy mérnököt; a mérnök veszi fel a többieket.',
  addFirst: 'Első mérnök felvétele',
  awayTitle: (name) => `${name} ki lett jelentkeztetve`,
  awayHelp: (name) =>
    `A nyitott munka megmarad. ${name} bejelentkezik a folytatáshoz. Mindenki másnak bezárul.`,
  awayClose: 'Nyitott munka bezárása',
  badgeNeeded: (name) => `${name}: nincs PIN-kódja, olvassa be a kártyát.`,
  scanBadge: 'Olvassa be a kártyát',
  badgeHelp: 'Az olvasóval, vagy írja be, ami a kódja alatt áll.',
  badgeUnknown: 'Ismeretlen kártya. Olvasson be másikat.',
  noPin: (name) => `${name}: még nincs PIN-kódja. Mérnök állít be egyet az Üzem alatt.`,
  clearTitle: 'Műszakvezető dönt',
  clearHelp: 'Olvassa be a műszakvezető kártyáját. Utána PIN-kód és ok.',
  clearReason: 'Ok',
  reasons: [
    'A mérnökség jóváhagyta ehhez a tételhez',
    'Kézzel ellenőrizve és megmérve',
    'Sérült címke, az alkatrész igazolva',
    'Kézzel megszámolva',
  ],
  otherReason: 'Más ok',
  accept: 'Tekercs elfogadása',
  decline: 'Elutasítás',
  cartKept: (f) => `${f.cart}: most ${f.carries} van rajta ehhez: ${f.slot}. ${f.held} nem kerül a kocsira.`,
  cleared: (slot) => `Elfogadva ide: ${slot}.`,
  declined: 'Elutasítva. A tekercs nem kerül a sorra.',
  withoutPasskey: 'Mentés nélküle',
  ownNotSigned: 'Az azonosítókulcs nem írta alá, ezért semmi sem lett mentve.',
  withPasskey: 'Azonosítókulcs használata',
  passkeyAsks: 'Következik az azonosítókulcs.',
  passkeyFailed:
    'Az azonosítókulcs nem írt alá, ezért semmi nem lett beírva. Próbálja újra, vagy lépjen vissza, és használja a PIN-kódot.',
  needsRole: (role) => `Szükséges: ${role}`,
  quantityTitle: 'Hány alkatrész van a tekercsen?',
  quantityHelp: 'Nyomtatás vagy számolás szerint. Később javíthatja; a napló minden javítást megőriz.',
  quantityWrong: 'Nullánál nagyobb egész számot írjon be.',
};
