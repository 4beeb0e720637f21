import type { words as english } from '../en/week.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Mikor dolgozik a sor',
  help: 'A kép egy hetet mutat. Módosításhoz érintsen meg alatta egy műszakot.',
  roundTheClock: 'Nincs megadott műszak: a sor éjjel-nappal dolgozónak számít.',
  earlier: 'Előző hét',
  later: 'Következő hét',
  weekOf: (date) => `Hét kezdete: ${date}`,
  pattern: (name) => `${name} hét`,
  patterns: ['A', 'B'],
  alternate: 'Két hét váltakozik',
  thisIs: (name) => `Ez ${name} hét`,
  days: ['H', 'K', 'Sze', 'Cs', 'P', 'Szo', 'V'],
  holiday: 'Ünnepnap',
  kinds: { shift: 'Műszak', break: 'Szünet', overtime: 'Túlóra', stop: 'Tervezett leállás' },
  span: (from, to) => `${from} – ${to}`,
  addShift: 'Műszak hozzáadása',
  shift: (from, to) => `Műszak ${from} – ${to}`,
  daysOfShift: 'Kezdőnap',
  from: 'Ettől',
  to: 'Eddig',
  breaks: 'A műszak szünetei',
  breakDays: 'Az e napokon kezdődő műszakokban',
  addBreak: 'Szünet hozzáadása',
  removeShift: 'Műszak törlése',
  remove: 'Törlés',
  done: 'Bezárás',
  lists: { holidays: 'Ünnepnapok', overtime: 'Túlóra', stops: 'Tervezett leállások' },
  listHelp: {
    holidays: 'Ezeken a napokon nem kezdődik műszak.',
    overtime: 'A sor ilyenkor dolgozik, ünnepnapon is.',
    stops: 'A sor ilyenkor áll: karbantartás, megbeszélés.',
  },
  add: {
    holidays: 'Ünnepnap hozzáadása',
    overtime: 'Túlóra hozzáadása',
    stops: 'Leállás hozzáadása',
  },
  note: 'Megjegyzés',
  faults: {
    'no-days': (span) => `A műszaknak nincs napja: ${span}. Válassza ki a napjait, vagy törölje.`,
    'break-outside': (span) => `A szünet nincs a műszakján belül: ${span}. Javítsa az időit.`,
    'ends-early': (span) => `Javítsa: ${span}. Előbb ér véget, mint ahogy kezdődik.`,
    'not-filled': () =>
      'A munkaidőben hiányzik egy idő vagy dátum. Adja meg, vagy törölje a sort.',
  },
};
