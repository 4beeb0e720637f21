import type { words as english } from '../en/refusal.ts';
import { formatCount, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  inLog: (clock) => `${clock}, a naplóban`,
  nothingLoaded: 'Nincs felrakva semmi.',
  closest: 'a legközelebbi kért',
  characters: (count) => `${formatCount(count)} karakter eltér.`,
  belongsAt: 'Ennek a tekercsnek a helye',
  belongsNowhere: 'Itt egy hely sem kéri.',
  lacksReel: 'Most nincs ott tekercs.',
  hasReel: 'Most van ott tekercs.',
  onLine: (slot, line) => `${slot}, sor: ${line}`,
  rightReel: (slot) => `${slot} ezt kéri`,
  rightReelNone: 'A napló szerint ilyen tekercs nincs a raktárban.',
  rightReelAt: (reel, more) => (more === 0 ? reel : `${reel} és még ${formatCount(more)}`),
  feederToFetch: 'Hozandó feeder',
  feederNone: 'A listán nincs ilyen méretű szabad feeder.',
  anotherFeeder: 'Másik feeder beolvasása',
  carryOn: (slot) => `Vigye ide: ${slot}`,
  unload: (slot) => `Levétel: ${slot}`,
  reachIn: 'Állítsa le a gépet, mielőtt benyúl.',
  runsHere: {
    title: 'Ez a tekercs itt már fut',
    text: (slot) =>
      `Ez a címke egyezik a helyen lévő tekercsével (${slot}). Ez egy második tekercs ugyanazzal a címkével?`,
    same: 'Nem, ez az a tekercs',
    second: 'Igen, második tekercs',
  },
  cameBefore: {
    title: 'Volt már ez a tekercs a soron?',
    text: (lot, left) =>
      `A címkéjén nincs saját azonosító. Egy ilyen tekercs${lot === null ? '' : ` (tétel: ${lot})`} lejött a sorról, ${left === null ? 'ismeretlen darabszámmal' : `${left} maradék alkatrésszel`}.`,
    same: 'Igen, ez az a tekercs',
    fresh: 'Nem, új tekercs',
  },
};
