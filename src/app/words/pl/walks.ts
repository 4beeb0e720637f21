import type { words as english } from '../en/walks.ts';
import { byNumber, formatCount, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  walksTitle: 'Obchody',
  walkSplices: (count) =>
    byNumber(count, {
      one: `${count} łączenie`,
      few: `${count} łączenia, jeden obchód`,
      other: `${count} łączeń, jeden obchód`,
    }),
  walkMore: (count) =>
    byNumber(count, {
      one: `później jeszcze ${count} obchód`,
      few: `później jeszcze ${count} obchody`,
      other: `później jeszcze ${count} obchodów`,
    }),
  crew: 'Osoby na tej linii',
  missTitle: 'Nie da się zdążyć',
  miss: {
    windowTooShort: (moment) => `łącz do ${moment}: czas jest na to za krótki`,
    closesTooSoon: (moment) => `łącz do ${moment}: nikt nie zdąży dojść`,
    crowdedOut: (moment) => `łącz do ${moment}: wszyscy są zajęci innymi łączeniami`,
  },
  remedies: {
    cutEarly: (parts, moment) =>
      `Utnij starą taśmę wcześniej, o ${moment}: strata około ${formatCount(parts)} szt.`,
    secondPerson: (moment) => `Druga osoba idzie do ${moment}`,
    secondSlot: (moment) => `Załaduj komponent na drugi slot do ${moment}`,
  },
  orRemedy: (remedy) => `albo: ${remedy}`,
  missMore: (count) => `później jeszcze ${count}`,
  noRemedy: 'Linia stanie. Miej gotową następną rolkę.',
};
