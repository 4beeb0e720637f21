import type { words as english } from '../en/kit.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: 'Kiszedési lista és kocsik',
  list: 'Kiszedési lista',
  panels: 'A következő munka paneljei',
  needed: (count) => `${count} alkatrész`,
  short: (count) => `még ${count} kell`,
  enough: 'elég',
  probably: (chance, missing) => `valószínűleg elég (${chance}): a biztonsághoz még ${missing}`,
  readyNow: 'Tegye meg, amíg a sor megy',
  readyFetch: (count) =>
    count === 0
      ? 'Nem kell tekercset hozni.'
      : `Hozza ki ${count} alkatrész tekercseit: kiszedési lista lent.`,
  readyCarts: (count) =>
    count === 0
      ? 'Tegye kocsira a következő feedereket.'
      : `Tegye kocsira a feedereket: ${count} hely kész.`,
  readyOpenList: 'Nyissa meg az ellenőrzőlistát: néhány lépéshez nem kell leállás.',
  readyList: (count) => `Ellenőrzőlista: ${count} lépés már most elvégezhető.`,
  toChecklist: 'Ellenőrzőlista',
  fetch: (reels) => `Hozandó: ${reels}`,
  stays: (slot, count) => `marad: ${slot}, ${count}`,
  goesTo: (from, to, count) => `átkerül: ${from} → ${to}, ${count}`,
  comesOff: (slot, count) => `tartalék: ${slot}, ${count}`,
  leftThen: (count) => `e munka végén kb. ${count} marad`,
  leftNow: (count) => `kb. ${count} maradt`,
  onLine: (count) => `${count} alkatrész a soron van: nem kell hozni`,
  cartFirst: 'Előbb olvassa be vagy írja be a kódját.',
  leftUnknown: 'nincs megszámolva',
  maybeShort: 'előbb számolja meg',
  unsure: (count) => `${count} alkatrészből talán több kell: számolja meg a tekercseit.`,
  uncounted: (count) => `${count} tekercs nincs megszámolva`,
  none: 'nincs ilyen tekercs',
  msl: (level) => `MSL ${level}: figyeljen a nyitott időre`,
  shortfalls: (count) =>
    `${count} alkatrészből több kell, mint amennyi az ismert tekercseken van. Hozzon többet, vagy szóljon egy műszakvezetőnek.`,
  carts: 'Kocsik',
  cart: 'Kocsi',
  cartHelp: 'Olvassa be vagy írja be a kocsi kódját. Utána olvassa be a helyet, a feedert és a tekercset.',
  use: 'Ez a kocsi legyen',
  filling: (cart) => `Kocsi töltése: ${cart}`,
  leave: 'Kocsi elhagyása',
  wanted: {
    slot: 'Olvassa be a helyet, ahová kerül',
    feeder: 'Olvassa be a feedert',
    'old-reel': '',
    reel: 'Olvassa be a tekercset',
  },
  accepted: (slot) => `Jó: készen áll ide: ${slot}.`,
  refused: (why) => `Ne tegye fel: ${why}`,
  held: (why) => `Visszatartva: ${why}. Tegye félre. Műszakvezető dönt a Felrakás képernyőn.`,
  places: (count) => `${count} hely kész`,
  empty: 'Levétel',
  dock: 'Dokkolás',
  dockTitle: (cart) => `Dokkolja? ${cart}`,
  dockCaution:
    'Előbb állítsa le a gépet, és várja meg, hogy semmi ne mozogjon. Keze ne legyen a rögzítő, a fej és a vágó közelében.',
  willLoad: (count, product) => `${count} hely lesz felrakva ehhez: ${product}:`,
  goesOff: (count) => `${count} feeder lekerül:`,
  doesNotFit: (count) => `${count} hely nem jó, kimarad:`,
  unfit: {
    'feeder-loaded': (f) => `Feeder ${f.thing} most itt van: ${f.at}.`,
    'reel-loaded': (f) => `Tekercs ${f.thing} most itt van: ${f.at}.`,
    neighbour: (f) => `Feeder ${f.thing} átfedésben van: ${f.at}. Előbb vegye le az egyiket.`,
    blocked: (f) => `${f.thing} most zárolt. Vegye le a kocsiról.`,
  },
  others: (count) => `${count} hely más setuphoz tartozik, marad.`,
  nothingFits: 'Erről a kocsiról semmi nem rakható fel ehhez az átálláshoz.',
  noChangeover: 'Ezen a soron nincs nyitott átállás. Előbb tervezzen egyet.',
  knownCart: (cart) => `${cart} kiválasztva.`,
  dockable: (count) => `${count} helyet rak fel`,
  notStanding: 'Dokkoljon, ha az utolsó panel elkészült.',
  docked: (cart, count) => `${cart} dokkolva: ${count} hely felrakva.`,
  signIn: 'Előbb olvassa be a kártyáját.',
  unknown: (text) => `${text.slice(0, 40)} ismeretlen. Új kocsi töltéséhez előbb hagyja el ezt.`,
};
