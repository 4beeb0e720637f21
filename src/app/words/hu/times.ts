import type { words as english } from '../en/times.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  loading: 'Napló olvasása…',
  running: 'A sor megy. Az idő az utolsó jó paneltől számít.',
  stopped: 'A sor leállt. Állásnak akkor számít, ha az utolsó jó panel meg van erősítve.',
  madeReady: (span) => `${span} előkészítés előtte`,
  standing: 'A sor állt',
  external: 'Menet közben előkészítve',
  paused: (span) => `${span} szünet és tervezett leállás kihagyva.`,
  before: 'Korábbi, ugyanilyen átállásokkal összevetve',
  noneBefore: 'A naplóban nincs korábbi átállás e két termék között.',
  thisOne: 'ez',
  people: 'Személyenként',
  nobody: 'senki sem volt bejelentkezve',
  marks: (count) => `${count} művelet`,
  steps: 'Leghosszabb műveletek',
  kinds: {
    step: 'ellenőrzőlista',
    skip: 'átugorva',
    load: 'betéve',
    unload: 'kivéve',
    measure: 'megmérve',
    look: 'megnézve',
  },
  none: 'Ebben az átállásban még nincs kipipálva vagy beolvasva semmi.',
  where: 'Mire mentek el a percek',
  axis: 'min',
  legend: { act: 'művelet', outside: 'előbb is lehetett volna', stop: 'szünet vagy tervezett leállás' },
  median: (count, span) =>
    count === 1 ? `Az előző ideje ${span}.` : `${count} korábbi mediánja ${span}.`,
  longer: (span) => `Itt az állás ${span} idővel hosszabb volt.`,
  shorter: (span) => `Itt az állás ${span} idővel rövidebb volt.`,
  asMedian: 'Itt az állás nagyjából ugyanannyi volt.',
  medianMark: (span) => `a korábbiak mediánja, ${span}`,
  saved: (steps, span) =>
    `${steps} lépést az utolsó panel előtt is el lehetett volna végezni. A sor ezzel kevesebbet állt volna, legfeljebb ennyivel: ${span}.`,
  outside: 'Menet közben is lehetett volna',
  late: 'menet közbenre szánták, álló soron végezték',
  candidate: 'nincs benyúlás: döntse el, lehet-e előbb',
  noneOutside: 'Minden álló soron végzett művelethez kell a leállás.',
  how: 'Minden idő ugyanannak a személynek az előző műveletétől számít.',
};
