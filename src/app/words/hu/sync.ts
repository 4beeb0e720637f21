import type { words as english } from '../en/sync.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  live: 'Szinkronban',
  syncing: 'Szinkronizál…',
  toSend: (count) => `${count} küldésre vár`,
  unreached: (span) => (span === null ? 'A szerver nem érhető el' : `A szerver ${span} óta nem érhető el`),
  waits: 'A szerver várakozást kér',
  refused: 'A szerver elutasította',
  quarantined: (count) => `${count} bejegyzés elkülönítve`,
  rolledBack: 'A szerver naplója talán visszaugrott',
  headFault: 'A szerver naplója kétes',
  clocksOff: (count) => `${count} tablet órája rosszul jár`,
  history: (share) => `Előzmények betöltése: ${share}`,
  historyChecked: 'Előzmények ellenőrzése',
  historyTitle: 'Előzmények',
  stillMissing: (missing, of) => `${of} régebbi bejegyzésből ${missing} még nincs itt.`,
  checkedHelp: 'Minden bejegyzés itt van. Ez a tablet most mindent maga számol újra, és összeveti.',
  historyHelp:
    'Ez a tablet egy másik tablet számításából indult. A felrakás és az ellenőrzés a szokásos módon működik. A napló, az exportjai és a nyomkövetés itt hiányos, amíg a többi meg nem érkezik.',
  notWhole: (missing) =>
    `${missing} régebbi bejegyzés még úton van: a válasz hiányos lenne. A szerveren mind megvan.`,
};
