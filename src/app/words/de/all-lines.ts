import type { words as english } from '../en/all-lines.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  tile: 'Wie jede Linie steht, und die Wandanzeige.',
  states: {
    running: 'Läuft',
    stopped: 'Angehalten',
    silent: 'Keine Zählung',
    changing: 'Umrüstung',
    loading: 'Wird gerüstet',
    ready: 'Bereit',
    idle: 'Keine Rüstung',
  },
  since: (span) => `seit ${span}`,
  loaded: 'Plätze gerüstet',
  ends: (clock) => `fertig etwa ${clock}`,
  now: 'Jetzt',
  nextWalk: (when, count, slots) =>
    plural(count, `${when}: 1 Spleiß, ${slots}`, `${when}: ${count} Spleiße, ${slots}`),
  noWalk: 'Kein Spleiß fällig.',
  missed: (slot, clock) => `Niemand erreicht ${slot} bis ${clock}.`,
  looking: 'Wird berechnet…',
  warnings: (count) => plural(count, '1 Warnung', `${count} Warnungen`),
  holds: (count) => plural(count, '1 für den Schichtleiter', `${count} für den Schichtleiter`),
  blocked: (count) => plural(count, '1 gesperrte Rolle', `${count} gesperrte Rollen`),
  byHand: 'Von Hand gezählt',
  byStation: (name) => `Gezählt von ${name}`,
  silentStation: (name) => `${name} schweigt`,
  lastPanel: (span) => `letzter Nutzen vor ${span}`,
  lastAct: (who, span) => `${who}, vor ${span}`,
  heard: (span) => `letzter Eintrag vor ${span}`,
  notHeard: 'noch kein Eintrag gehört',
  here: 'dieses Tablet',
  caution:
    'Andere Linien: Stand der letzten Meldung ihrer Tablets. Sehen Sie die Linie an, bevor Sie handeln.',
  quiet: (tablets) => `Nichts geschrieben von: ${tablets}`,
  quietFor: (name, span) => `${name} seit ${span}`,
  toWall: 'An der Wand zeigen',
  wallHelp: 'Hier ist niemand angemeldet, und Scans bewirken nichts.',
  stay: 'Immer hier starten',
  stayNoMore: 'Nicht mehr hier starten',
  leave: 'Wandanzeige verlassen',
};
