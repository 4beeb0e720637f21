import { plural } from '../words.ts';

export const words = {
  entries: 'Entries',
  trace: 'Trace',
  held: 'Held panels',
  conflicts: 'Disagreements',
  title: 'Which panels carry it?',
  help: 'Type or scan a lot, reel, part, feeder, slot or panel code, in small or capital letters. Or choose a person.',
  ask: 'Trace',
  kinds: {
    lot: 'Lot',
    reel: 'Reel',
    part: 'Part',
    feeder: 'Feeder',
    slot: 'Slot',
    person: 'Person',
    panel: 'Panel',
  },
  choosePerson: 'Choose who put it on',
  putOn: (when: string, who: string | null) =>
    who === null ? `on since ${when}` : `on since ${when}, by ${who}`,
  text: 'What to trace',
  reading: (done: string) => `Reading the log… ${plural(done, '1 entry', `${done} entries`)}`,
  nothing: (text: string) => `The log knows no panel for “${text}”.`,
  sure: (first: string, last: string) => `surely panels ${first} to ${last}`,
  possible: (first: string, last: string) => `perhaps panels ${first} to ${last}`,
  none: 'no panel was built while it was there',
  goesOn: 'still on the line',
  serials: (count: number) => plural(count, '1 panel code', `${count} panel codes`),
  onSlot: (slot: string, feeder: string) => (feeder === '' ? slot : `${slot}, feeder ${feeder}`),
  panelTitle: (panel: string, product: string) => `Panel ${panel} of ${product}`,
  either: 'one or both of',
  notSure: '(perhaps)',
  builtTimes: (count: number) =>
    plural(count, 'Counted in 1 run:', `Counted in ${count} runs, oldest first:`),
  noLot: 'no lot on the label',
  partsFrom: (reels: string) => `Has parts from ${reels}`,
  partsTo: (reels: string) => `Parts of it went to ${reels}`,
  save: 'Save as CSV',
  why: 'Near a splice or a change of reel the exact panel is not known, so both lots are shown. “Surely” is wrong less than once in a million by the spreads entered for the line.',
  guessed: {
    'in-line':
      'Nobody has entered how many panels are between the machine and the counting point. The widest range is assumed. Enter it in the line’s rules and fewer panels are in doubt.',
    boards:
      'No setup says which boards of a panel a slot serves. It is taken to serve all alike. If it serves only some, a panel with skipped boards may carry nothing from it.',
    label:
      'Nobody has entered how exact the printed counts are. A quarter of a percent is assumed (common practice).',
  },
  by: { server: 'Answered by the server.', tablet: 'Answered from the log on this tablet.' },
  more: (count: string) =>
    `${plural(count, 'Only the oldest one is', `Only the oldest ${count} are`)} shown. Narrow it down, e.g. by lot or reel.`,
  conflictKinds: {
    'slot-loaded-twice': (slots: string) => `${slots} was loaded by two tablets`,
    'reel-on-two-slots': (slots: string) => `One reel is on ${slots}`,
    'cleared-though-blocked': (slots: string) => `A blocked reel was cleared for ${slots}`,
    'spliced-though-unloaded': (slots: string) =>
      `${slots} was spliced on one tablet and unloaded on another`,
    'released-though-dropped': (product: string) =>
      `The changeover to ${product} was released on one tablet and cancelled on another`,
  },
  noConflicts: 'The tablets agree.',
  settle: 'Settle',
  settleTitle: 'What is on the machine?',
  settleHelp: 'Go and look. Then choose what is there. The other entry stays in the log as overruled.',
  settleChangeTitle: 'Which of the two counts?',
  settleChangeHelp:
    'Ask who released it and who cancelled it. Then choose what is true. The other entry stays in the log as overruled.',
  keep: (slot: string, what: string, when: string) => `${slot}: ${what}, ${when}`,
  keepParts: (count: string) => plural(count, '1 part', `${count} parts`),
  keepBy: (who: string, tablet: string) => (who === '' ? `on ${tablet}` : `by ${who} on ${tablet}`),
  keepEmpty: 'the slot is empty',
  neither: 'I solved it another way',
  reason: 'How do you know?',
  settled: 'Settled.',
} as const;
