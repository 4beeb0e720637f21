import type { words as english } from '../en/server.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  noKey: 'Ez az oldal nem tud bejegyzéseket aláírni',
  noKeyHelp:
    'A kulcsokhoz, a kamerához és a hálózat nélküli indításhoz biztonságos oldal kell. Nyissa meg az alkalmazást a https címén (a szerver kiírja, azzal együtt, hogyan lehet megbízni benne), vagy magán a szerver számítógépén. Addig a bejegyzések ezen a tableten maradnak.',
  alone: 'Ez a tablet önállóan dolgozik',
  aloneHelp:
    'Szerver nélkül ellenőriz, figyelmeztet és vezeti a naplóját. Csatlakozzon egyhez, hogy megossza a naplót a többi tablettel, a régebbi bejegyzéseket is.',
  joinTitle: 'Csatlakozás az üzem szerveréhez',
  joinAgain: 'Újracsatlakozás',
  code: 'Egyszeri kód',
  codeHelp:
    'Tíz betű és számjegy, egy műszakvezető tabletjéről vagy a szerverről. Írja be, vagy olvassa be a kódját.',
  codeWrong: 'A kód tíz betűből és számjegyből áll, pl. ABCDE-23456.',
  name: 'Hogyan hívják ezt a tabletet',
  nameMissing: 'Írjon be nevet, hogy a műszakvezető megkülönböztesse a tableteket.',
  join: 'Csatlakozás',
  joining: 'Csatlakozik…',
  joined: (plant) => `Csatlakozva: ${plant}.`,
  standing: 'Szinkron',
  phases: {
    alone: 'Nincs csatlakozva',
    follower: 'A tablet másik ablaka szinkronizál',
    syncing: 'Küldés és fogadás…',
    live: 'Szinkronban: a tabletek azonnal látják egymás bejegyzéseit',
    waiting: 'Új próbálkozásra vár',
    refused: 'A szerver elutasította: valakinek intézkednie kell',
  },
  plant: 'Üzem',
  lastAnswer: 'Utolsó válasz',
  ago: (span) => `${span} ezelőtt`,
  never: 'nem volt, mióta az alkalmazás meg lett nyitva',
  backlog: 'Küldésre vár',
  entries: (count) => `${count} bejegyzés`,
  nothing: 'semmi, minden a szerveren van',
  clock: 'Óra',
  clockRight: 'megegyezik a szerverével',
  clockBehind: (span) => `késik a szerverhez képest (${span}): állítsa be`,
  clockAhead: (span) => `siet a szerverhez képest (${span}): állítsa be`,
  why: 'Miért',
  quarantined: 'Elkülönítve',
  quarantinedHelp:
    'A szerver elkülönítette ezeket a bejegyzéseket: a pecsétjük vagy a helyük a láncban nem egyezik. Semmi nem veszett el; itt is megmaradnak. Hívja a szerver felelősét.',
  rolledBack: 'A szerver naplója talán visszaugrott',
  rolledBackHelp: (span) =>
    `Észlelve ${span} ezelőtt: a szerveren talán kevesebb volt, mint korábban, ahogy egy visszaállított mentés után. A tabletek újra elküldik, amijük van. Ellenőrizze a naplót és a tabletek listáját.`,
  rolledBackSeen: 'Ellenőriztem',
  headFaults: {
    forked: 'A szerver két naplót mutat',
    'other-key': 'A szervernek másik kulcsa van',
    'no-proof': 'A szerver nem igazolja a naplóját',
  },
  headFaultHelp: {
    forked: (span) =>
      `Észlelve ${span} ezelőtt: a naplója nem a korábban mutatottat folytatja. Talán megváltoztatta valaki. Dolgozzon tovább, és hívja a szerver felelősét.`,
    'other-key': (span) =>
      `Észlelve ${span} ezelőtt: más kulccsal ír alá, mint amikor ez a tablet csatlakozott. Ez csak akkor rendben, ha másik számítógépre költözött. Kérdezze a szerver felelősét.`,
    'no-proof': (span) =>
      `Észlelve ${span} ezelőtt: korábban igazolta a naplóját. Dolgozzon tovább, és kérdezze a szerver felelősét.`,
  },
  quarantinedHere: (count) => `${count} bejegyzés itt nem került a naplóba`,
  quarantinedHereHelp:
    'A szöveg, az aláírás vagy az óra nem jó. Minden más bejegyzés bent van. Hívja a szerver felelősét.',
  clocksOff: 'Rosszul járó órák',
  clockOfAhead: (name, span) => `${name}: ${span} sietés`,
  clockOfBehind: (name, span) => `${name}: ${span} késés`,
  clocksOffHelp: 'Állítsa be őket: amit ezek a tabletek írnak, rossz sorrendben állhat.',
  stateNears: (share) => `Amiből egy új tablet indul, a hely ${share}-át foglalja`,
  stateNearsHelp:
    'Ha betelik, egy új tablet előbb az egész naplót olvassa be, ez percekig tart. Léptesse be a tartalék tableteket, amíg gyors, és szóljon a szerver felelősének.',
  stateOver: 'Az új tabletek lassan indulnak',
  stateOverHelp:
    'Amiből egy új tablet indul, túl nagy az átadáshoz: előbb az egész naplót olvassa be, ez percekig tart. Léptesse be, mielőtt kell, és hagyja nyitva, töltőn. Semmi sem vész el.',
  now: 'Szinkron most',
  causes: {
    unreachable: 'A szerver nem válaszol. Dolgozzon tovább; a bejegyzések itt várnak.',
    unreadable: 'Ami válaszol, nem az üzem szervere. Ellenőrizze a hálózatot.',
    'other-plant':
      'Ez egy másik üzem szervere. Semmi sem megy oda; a bejegyzések itt várnak. Ne csatlakozzon: hívja a szerver felelősét.',
    'tablet-unknown': 'A szerver nem ismeri ezt a tabletet. Csatlakozzon újra új kóddal.',
    'tablet-revoked': 'Műszakvezető kizárta ezt a tabletet. Új kóddal újra csatlakozhat.',
    'code-wrong': 'Ez a kód ismeretlen, elhasznált, vagy több mint tíz perces. Kérjen újat.',
    'tablet-active':
      'Ez a tablet még egy régebbi kulccsal be van engedve. Előbb műszakvezető kizárja; utána új kód engedi be.',
    'wire-too-old': 'Ez az alkalmazás régebbi a szervernél. Töltse újra ott, ahol a szerver válaszol.',
    'wire-too-new': 'Ez az alkalmazás újabb a szervernél. A szervert frissíteni kell.',
    'time-off': 'A tablet órája túl rosszul jár. Állítsa be.',
    'signature-wrong': 'A szerver nem fogadja el a tablet kulcsát. Csatlakozzon újra új kóddal.',
    'person-unproven': 'A bejelentkezés lejárt. Olvassa be a kártyát, és írja be újra a PIN-kódot.',
    'role-lacking': 'Ezt csak műszakvezető vagy mérnök teheti meg.',
    'too-often': 'Túl sok próbálkozás. Várjon egy percet.',
    'store-away': 'A szerver nem éri el a tárhelyét. Újra próbálja.',
    'store-full': 'A szerver lemeze megtelt. A bejegyzések itt várnak. Hívja a szerver felelősét.',
    'store-read-only':
      'A szerver nem tudja írni a naplóját. A bejegyzések itt várnak. Hívja a szerver felelősét.',
    'server-fault': 'A szerver meghibásodott; lásd a naplóját. A tablet újra próbálja.',
    stopping: 'A szerver leáll.',
  },
  otherCause: (code) => `A szerver ezt mondja: ${code}.`,
  leadTitle: 'Többi tablet',
  leadHelp: 'Műszakvezető vagy mérnök enged be és zár ki tableteket: kártya és PIN-kód.',
  leadOpen: 'Tabletek beengedése, kizárása',
  leadOffline: 'Tableteket csak a szerver enged be, és most nem válaszol. Próbálja újra, ha válaszol.',
  newCode: 'Új kód egy tabletnek',
  newScreenCode: 'Kód egy fali kijelzőnek',
  codeForScreen:
    'A kijelzőn nyissa meg az alkalmazást, és írja be ezt a kódot. Minden sort mutat, és semmit sem módosíthat.',
  codeUntilScreen: (span) => `Egy fali kijelzőre, érvényes: ${span}.`,
  isScreen: 'fali kijelző',
  screenNotEmpty:
    'A fali kijelzőnek üresen kell indulnia, ezen a tableten viszont van napló. Használjon másik böngészőt és új kódot.',
  codeFor:
    'Az új tableten olvassa be ezt a kamerájával, vagy nyissa meg ott az alkalmazást, és írja be a kódot.',
  codeUntil: (span) => `Egy tabletre, érvényes: ${span}.`,
  codeOver: 'Ez a kód lejárt.',
  tablets: 'Tabletek',
  seen: (span) => `utoljára látva ${span} ezelőtt`,
  neverSeen: 'csatlakozás óta nem látszott',
  clockOff: (span) => `az óra eltérése ${span}`,
  thisOne: 'ez a tablet',
  isOut: 'kizárva',
  revoke: 'Kizárás',
  revokeTitle: (name) => `Kizárja: ${name}?`,
  revokeHelp:
    'Elveszett vagy eladott tabletre. Többé nem küldhet és nem fogadhat. Eddigi bejegyzései a naplóban maradnak.',
  revoked: (name) => `${name} kizárva.`,
  list: 'Frissítés',
};
