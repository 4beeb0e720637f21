import type { words as english } from '../en/shell.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  nav: {
    line: 'Sor',
    load: 'Felrakás',
    change: 'Átállás',
    stock: 'Tekercsek',
    log: 'Napló',
    plant: 'Üzem',
  },
  noLine: 'Még nincs sor',
  noSetup: 'nincs setup kiválasztva',
  side: { top: 'felső oldal', bottom: 'alsó oldal' },
  revision: (revision) => `rev. ${revision}`,
  run: (done, wanted) => `${done} / ${wanted} panel`,
  signIn: 'Bejelentkezés',
  signInFirst: 'Előbb olvassa be a kártyáját',
  needsRole: (role) => `Szükséges: ${role}`,
  signInHelp: 'Olvassa be a kártyáját, vagy válassza ki a nevét.',
  signedInAs: (name) => `Bejelentkezve: ${name}`,
  signOut: 'Kijelentkezés',
  roles: { operator: 'Operátor', lead: 'Műszakvezető', engineer: 'Mérnök' },
  offlineReady: 'Hálózat nélkül is használható',
  gettingReady: 'Felkészülés hálózat nélküli munkára…',
  toSend: (count) => `${count} küldésre vár`,
  skipToDock: 'Ugrás: Beírás és Kamera',
  done: 'Kész',
  cancel: 'Mégse',
  detailsOf: (what) => `Több: ${what}`,
  lessOf: (what) => `Kevesebb: ${what}`,
  close: 'Bezárás',
  newVersion: 'Új verzió érkezett.',
  update: 'Frissítés most',
  updateLater: 'Megvárja, amíg nincs nyitott feladat.',
  languageLater: 'Ez a nyelv még nincs a tableten. Csatlakoztassa a hálózathoz, majd válassza ki újra.',
  leftAlone: (name, minutes) =>
    `${name} ki lett jelentkeztetve: ${minutes} percig nem volt érintés. A nyitott munka megmarad.`,
  shiftOver: (name) => `${name} ki lett jelentkeztetve: letelt egy műszak. A nyitott munka megmarad.`,
  notInPractice: 'Gyakorláskor nem',
  fault: {
    'disk-full': {
      title: 'Ez a tablet megtelt',
      text: 'Itt már semmit nem lehet írni vagy ellenőrizni. Minden elfogadott adat biztonságban van. Dolgozzon másik tableten. Szabadítson fel helyet ezen, majd próbálja újra.',
    },
    'closed-by-newer': {
      title: 'Újabb verzió van nyitva egy másik ablakban',
      text: 'Ez az ablak régebbi verzió, és leállt. Minden elfogadott adat biztonságban van. A folytatáshoz töltse be újra.',
    },
    lost: {
      title: 'A tablet naplója nem nyitható meg',
      text: 'Dolgozzon másik tableten, és hívja a tabletek felelősét. Ne törölje a böngésző adatait: az el nem küldött bejegyzések talán még megmenthetők.',
    },
    unknown: {
      title: 'A naplót nem sikerült írni',
      text: 'Ami késznek látszott, biztonságban van. Az utolsó művelet nem került be. Töltse be újra, és nézze meg a naplót, mielőtt folytatja.',
    },
  },
  reload: 'Újratöltés',
  tryAgain: 'Újra',
  muted: 'Nincs hang, amíg meg nem érinti',
  storageLow: (megabytes) => `Már csak ${megabytes} MB van a naplónak ezen a tableten.`,
};
