import type { words as english } from '../en/times.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  loading: 'Protokoll wird gelesen…',
  running: 'Die Linie läuft. Die Zeit zählt ab dem letzten guten Nutzen.',
  stopped: 'Die Linie ist angehalten. Sie zählt als stehend, sobald der letzte gute Nutzen bestätigt ist.',
  madeReady: (span) => `${span} vorher vorbereitet`,
  standing: 'Linie stand',
  external: 'Bei laufender Linie vorbereitet',
  paused: (span) => `${span} Pausen und geplante Halte sind ausgelassen.`,
  before: 'Verglichen mit früheren Umrüstungen derselben Art',
  noneBefore: 'Keine frühere Umrüstung zwischen diesen beiden Produkten steht im Protokoll.',
  thisOne: 'diese',
  people: 'Nach Person',
  nobody: 'niemand angemeldet',
  marks: (count) => plural(count, '1 Handlung', `${count} Handlungen`),
  steps: 'Längste Handlungen',
  kinds: {
    step: 'Checkliste',
    skip: 'übersprungen',
    load: 'eingesetzt',
    unload: 'herausgenommen',
    measure: 'gemessen',
    look: 'angesehen',
  },
  none: 'In dieser Umrüstung ist noch nichts abgehakt oder gescannt.',
  where: 'Wohin die Minuten gingen',
  axis: 'min',
  legend: { act: 'Handlung', outside: 'vorher möglich', stop: 'Pause oder geplanter Halt' },
  median: (count, span) =>
    plural(count, `Die eine davor dauerte ${span}.`, `Der Median von ${count} früheren ist ${span}.`),
  longer: (span) => `Diese stand ${span} länger.`,
  shorter: (span) => `Diese stand ${span} kürzer.`,
  asMedian: 'Diese stand etwa gleich lang.',
  medianMark: (span) => `Median der früheren, ${span}`,
  saved: (steps, span) =>
    plural(
      steps,
      `1 Schritt war vor dem letzten Nutzen möglich. Die Linie hätte bis zu ${span} kürzer gestanden.`,
      `${steps} Schritte waren vor dem letzten Nutzen möglich. Die Linie hätte bis zu ${span} kürzer gestanden.`,
    ),
  outside: 'Bei laufender Linie möglich',
  late: 'für die laufende Linie gedacht, getan, als sie stand',
  candidate: 'kein Hineingreifen: Entscheiden Sie, ob es vorher geht',
  noneOutside: 'Jede Handlung, die bei stehender Linie getan wurde, braucht das.',
  how: 'Jede Zeit zählt ab der Handlung davor von derselben Person.',
};
