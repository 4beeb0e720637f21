// What is said of the reasons about bakes, labels of level 6 and reels without an id.

import type { MoistureReasons, TableWords } from '../reason-words.ts';

/** On what a bake's hours rest. */
export const tableHu: TableWords = {
  own: 'Táblázat: az üzem saját példánya. ',
  copy: 'Táblázat: kiadott példánnyal összevetve. ',
  memory: 'Táblázat: emlékezetből. ',
};

export const moistureReasonsHu: MoistureReasons = {
  'bake-hours-over': {
    title: 'Összesen túl sok sütés',
    say: (f) =>
      `Eddig ${f['hours']} h 90 °C felett; a határ ${f['most']} h. A lábai talán rosszul forrasztódnak.`,
    act: 'Műszakvezetőnek kell döntenie. Kérdezze az alkatrész gyártóját.',
  },
  'label-time-missing': {
    title: '6-os szint: a címke ideje?',
    say: () =>
      'Sütés után a 6-os szintű tekercs addig tart, amíg a tasakja címkéje írja. Ezt senki nem adta meg.',
    act: 'Süsse ki, adja meg az órákat itt: Tasak / kemence, majd olvassa be újra.',
  },
  'reel-unnamed': {
    title: 'Nincs azonosítója, és talán megkezdett',
    say: (f) =>
      `Ebből az alkatrészből korábban lejött egy tekercs a sorról${f['lot'] ? ` (tétel: ${f['lot']})` : ''}${f['left'] ? `, maradék: ${f['left']}` : ''}. Azonosító nélkül a kettő nem különböztethető meg, ezért ${f['floorLife'] === 'true' ? 'a nyitott idő' : 'a darabszám'} nem ismert.`,
    act: 'Adjon azonosítót a tekercsnek, vagy döntsön műszakvezető.',
  },
  'reel-gone': {
    title: 'A napló szerint rég elfogyott',
    say: (f) =>
      `A napló szerint a(z) ${f['reel']} tekercs vagy egy része rég elfogyott. Hogy meddig volt a tasakon kívül, azt ez a tablet nem tudja.`,
    act: 'A tételét itt keresse: Nyomkövetés. Műszakvezetőnek kell döntenie.',
  },
  'floor-life-short': {
    title: 'A nyitott idő a tekercs kifogyása előtt lejár',
    say: (f) =>
      `A nyitott ideje lejár ${f['leftSeconds']} múlva, a tekercs ennyi ideig tart: ${f['neededSeconds']}.`,
    act: 'Műszakvezetőnek kell döntenie.',
  },
};
