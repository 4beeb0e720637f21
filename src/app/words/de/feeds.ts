import type { Words } from '../areas.ts';
import { plural } from '../words.ts';

export const words: Words<'feeds'> = {
  kinds: { tape: 'Gurt', 'cut-tape': 'Gurtstück', tray: 'Tray', tube: 'Stange', bulk: 'Schüttgut' },
  acts: { splice: 'Spleißen', exchange: 'Wechseln', refill: 'Nachfüllen' },
  label: 'Etikett dafür drucken',
  warns: {
    splice: (span, clock) => `läuft in ${span} leer, etwa ${clock}. Bringen Sie das nächste Stück.`,
    exchange: (span, clock) =>
      `läuft in ${span} leer, etwa ${clock}. Dann steht die Maschine, bis gewechselt ist.`,
    refill: (span, clock) => `läuft in ${span} leer, etwa ${clock}. Füllen Sie vorher nach.`,
  },
  comesNext: { splice: 'Neue Rolle', exchange: 'Kommt stattdessen', refill: 'Darauf geschüttet' },
  accepted: {
    exchange: 'Was dort war, gilt als abgerüstet. Kein Spleiß: Die Maschine steht, bis dies eingesetzt ist.',
    refill: 'Ab hier kommen beide Chargen infrage, bis der Feeder entleert ist.',
  },
  sayFeeds: {
    tape: '',
    'cut-tape': 'Gurtstück: kein Spleißfenster. Es endet, wo das Stück endet.',
    tray: 'Tray: Ist es leer, steht die Maschine, bis gewechselt ist.',
    tube: 'Stange: Ist sie leer, steht die Maschine, bis gewechselt ist.',
    bulk: 'Schüttgut: nachfüllen, bevor es leer ist.',
  },
  picks: {
    tape: '',
    'cut-tape': (count) => plural(count, '1 Gurtstück', `${count} Gurtstücke`),
    tray: (count) => plural(count, '1 Stapel Trays', `${count} Stapel Trays`),
    tube: (count) => plural(count, '1 Satz Stangen', `${count} Sätze Stangen`),
    bulk: (count) => plural(count, '1 Gebinde', `${count} Gebinde`),
  },
  dueNow: { splice: 'jetzt spleißen', exchange: 'jetzt wechseln', refill: 'jetzt nachfüllen' },
  forLane: (lane, part, count) => `Für ${lane}: ${part}, ${count} pro Nutzen.`,
};
