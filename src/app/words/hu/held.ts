import type { words as english } from '../en/held.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  causes: {
    'wrong-reel': 'Későn talált rossz tekercs',
    cleared: 'Tévesen feloldott visszatartás',
    blocked: 'Zárolt anyag',
    'floor-life': 'Lejárt a nyitott idő',
  },
  hold: 'Panelek visszatartása',
  holdTitle: (panels) => `Visszatart ${panels} panelt?`,
  holdHelp:
    'Minden panel visszatartva, amelyen rajta lehet, a még a sorban lévők is. Úgy is maradnak, amíg műszakvezető alá nem írja őket.',
  goesOn: 'Még fent van egy helyen. Előbb vegye le, különben a további panelek nem lesznek visszatartva.',
  cause: 'Miért vannak visszatartva?',
  lifeHelp: 'Attól a pillanattól vannak visszatartva a panelek, amikor a nyitott ideje lejárt.',
  noLifeOver: 'A napló szerint a nyitott ideje sosem volt lejárva, amíg panelek készültek.',
  reason: 'Mi derült ki?',
  codes: (codes) => `${codes} panelkód ismert.`,
  sure: (panels) =>
    panels === 0 ? 'Egyiken sincs rajta biztosan.' : `${panels} panelen biztosan rajta van.`,
  done: (panels) => `${panels} panel visszatartva.`,
  none: 'Nincs visszatartott panel.',
  span: (first, last) => `Panelek: ${first} – ${last}`,
  still: (held, all) => `Még nincs aláírva: ${held} / ${all}`,
  noCodes: 'Nincs panelkód. A számuk alapján keresse meg ezeket a paneleket.',
  signed: (who, when) => `Aláírta: ${who}, ${when}`,
  sign: 'Aláírás',
  signAll: 'Mind aláírása',
  signTitle: 'Mi történt ezekkel a panelekkel?',
  signHelp: 'Válasszon ki egyes paneleket, vagy írja alá mindet.',
  signWhy: 'Mi történt? Pl. javítva, selejtezve, jónak találva.',
  signDone: 'Aláírva.',
  save: 'Kódok mentése CSV-ként',
  which: 'Melyik panelek?',
};
