import type { words as english } from '../en/push.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Üzenetek bezárt alkalmazásnál',
  promise:
    'Műszakvezetőknek: megválaszolatlan figyelmeztetések, használatban lévő zárolt tekercsek, álló sorok. Késhet vagy elmaradhat: egy tablet maradjon nyitva.',
  way: 'Titkosítva mennek, a böngésző gyártójának szolgáltatásán át. Az üzem szerverének el kell érnie.',
  noBrowser: 'Ez a böngésző nem fogad üzeneteket.',
  noServer: 'Egy szerver sem válaszol. Előbb csatlakozzon, vagy próbálja később.',
  off: 'Az üzem szervere nincs erre beállítva.',
  unreached: 'Az üzem szervere nem éri el a szolgáltatást. Itt nincsenek üzenetek.',
  denied: 'A böngésző tiltja az üzeneteket. Engedélyezze őket ehhez az oldalhoz a beállításaiban.',
  turnOn: 'Üzenetek bekapcsolása',
  turnOff: 'Üzenetek kikapcsolása',
  isOn: 'Ide érkeznek üzenetek.',
  isOff: 'Itt az üzenetek ki vannak kapcsolva.',
  wrong: 'Nem sikerült. Próbálja újra.',
  first: 'Az üzenetek ide érkeznek.',
  warning: (line, slot) => `${line}: senki sem válaszol a figyelmeztetésre itt: ${slot}.`,
  blocked: (line, slot) => `${line}: zárolt tekercs van használatban itt: ${slot}.`,
  stood: (line) => `${line} áll.`,
};
