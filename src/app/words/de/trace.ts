import type { words as english } from '../en/trace.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  entries: 'Einträge',
  trace: 'Rückverfolgung',
  held: 'Zurückgehaltene Nutzen',
  conflicts: 'Widersprüche',
  title: 'Welche Nutzen tragen es?',
  help: 'Tippen oder scannen Sie Charge, Rolle, Bauteil, Feeder, Platz oder Nutzencode, groß oder klein geschrieben. Oder wählen Sie eine Person.',
  ask: 'Rückverfolgen',
  kinds: {
    lot: 'Charge',
    reel: 'Rolle',
    part: 'Bauteil',
    feeder: 'Feeder',
    slot: 'Platz',
    person: 'Person',
    panel: 'Nutzen',
  },
  choosePerson: 'Wählen, wer es aufgesetzt hat',
  putOn: (when, who) => (who === null ? `aufgesetzt seit ${when}` : `aufgesetzt seit ${when} von ${who}`),
  text: 'Was zu verfolgen ist',
  reading: (done) => `Protokoll wird gelesen… ${plural(done, '1 Eintrag', `${done} Einträge`)}`,
  nothing: (text) => `Das Protokoll kennt keinen Nutzen zu „${text}“.`,
  sure: (first, last) => `sicher Nutzen ${first} bis ${last}`,
  possible: (first, last) => `vielleicht Nutzen ${first} bis ${last}`,
  none: 'kein Nutzen wurde gebaut, solange es dort war',
  goesOn: 'noch auf der Linie',
  serials: (count) => plural(count, '1 Nutzencode', `${count} Nutzencodes`),
  onSlot: (slot, feeder) => (feeder === '' ? slot : `${slot}, Feeder ${feeder}`),
  panelTitle: (panel, product) => `Nutzen ${panel} von ${product}`,
  either: 'eines oder beide von',
  notSure: '(vielleicht)',
  builtTimes: (count) => plural(count, 'In 1 Lauf gezählt:', `In ${count} Läufen gezählt, älteste zuerst:`),
  noLot: 'keine Charge auf dem Etikett',
  partsFrom: (reels) => `Hat Bauteile aus ${reels}`,
  partsTo: (reels) => `Bauteile daraus sind in ${reels}`,
  save: 'Als CSV speichern',
  why: 'Nahe einem Spleiß oder Rollenwechsel ist der genaue Nutzen nicht bekannt, daher werden beide Chargen gezeigt. „Sicher“ ist nach den für die Linie eingegebenen Streuungen seltener als einmal in einer Million falsch.',
  guessed: {
    'in-line':
      'Niemand hat eingegeben, wie viele Nutzen zwischen der Maschine und der Zählstelle liegen. Der weiteste Bereich wird angenommen. Geben Sie es in den Linienregeln ein, dann sind weniger Nutzen ungewiss.',
    boards:
      'Keine Rüstung sagt, welche Leiterplatten eines Nutzens ein Platz versorgt. Er gilt als für alle gleich: Versorgt er nur einige, trägt ein Nutzen mit übersprungenen Leiterplatten vielleicht nichts davon.',
    label:
      'Niemand hat eingegeben, wie genau die gedruckten Mengen sind. Ein viertel Prozent wird angenommen (übliche Praxis).',
  },
  by: {
    server: 'Vom Server beantwortet.',
    tablet: 'Aus dem Protokoll auf diesem Tablet beantwortet.',
  },
  more: (count) =>
    `${plural(count, 'Nur der älteste wird', `Nur die ${count} ältesten werden`)} gezeigt. Grenzen Sie ein, z. B. nach Charge oder Rolle.`,
  conflictKinds: {
    'slot-loaded-twice': (slots) => `${slots} wurde von zwei Tablets gerüstet`,
    'reel-on-two-slots': (slots) => `Eine Rolle ist auf ${slots}`,
    'cleared-though-blocked': (slots) => `Eine gesperrte Rolle wurde für ${slots} freigegeben`,
    'spliced-though-unloaded': (slots) =>
      `${slots} wurde auf einem Tablet gespleißt und auf einem anderen abgerüstet`,
    'released-though-dropped': (product) =>
      `Die Umrüstung auf ${product} wurde auf einem Tablet freigegeben und auf einem anderen abgebrochen`,
  },
  noConflicts: 'Die Tablets stimmen überein.',
  settle: 'Klären',
  settleTitle: 'Was ist auf der Maschine?',
  settleHelp:
    'Gehen Sie hin und sehen Sie nach. Dann wählen Sie, was dort ist. Der andere Eintrag bleibt als überstimmt im Protokoll.',
  settleChangeTitle: 'Was von beidem gilt?',
  settleChangeHelp:
    'Fragen Sie, wer freigegeben und wer abgebrochen hat. Dann wählen Sie, was stimmt. Der andere Eintrag bleibt als überstimmt im Protokoll.',
  keep: (slot, what, when) => `${slot}: ${what}, ${when}`,
  keepParts: (count) => plural(count, '1 Bauteil', `${count} Bauteile`),
  keepBy: (who, tablet) => (who === '' ? `auf ${tablet}` : `von ${who} auf ${tablet}`),
  keepEmpty: 'der Platz ist leer',
  neither: 'Ich habe es anders gelöst',
  reason: 'Woher wissen Sie es?',
  settled: 'Geklärt.',
};
