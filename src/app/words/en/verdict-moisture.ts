// What is said of the reasons about bakes, labels of level 6 and reels without an id.

import type { MoistureReasons, TableWords } from '../reason-words.ts';

/** On what a bake's hours rest. */
export const tableEn: TableWords = {
  own: 'Table: the plant’s own copy. ',
  copy: 'Table: compared with a published copy. ',
  memory: 'Table: from memory. ',
};

export const moistureReasonsEn: MoistureReasons = {
  'bake-hours-over': {
    title: 'Baked too long in all',
    say: (f) =>
      `${f['hours']} h above 90 °C so far; the limit is ${f['most']} h. Its leads may not solder well.`,
    act: 'A lead must decide. Ask the part’s maker.',
  },
  'label-time-missing': {
    title: 'Level 6: time on the label?',
    say: () =>
      'After its bake a level 6 reel lasts as long as its bag’s label says. Nobody has entered that.',
    act: 'Bake it, enter the hours under Bag / oven, then scan again.',
  },
  'reel-unnamed': {
    title: 'No id, and it may be an opened reel',
    say: (f) =>
      `A reel of this part${f['lot'] ? `, lot ${f['lot']},` : ''} came off the line before${f['left'] ? ` with ${f['left']} left` : ''}. Without an id the two cannot be told apart, so ${f['floorLife'] === 'true' ? 'floor life' : 'the count'} is not known.`,
    act: 'Give the reel an id, or let a lead decide.',
  },
  'reel-gone': {
    title: 'Used up long ago, by the log',
    say: (f) =>
      `By the log, reel ${f['reel']} or some of its parts were used up long ago. This tablet cannot tell how long it was out of its bag.`,
    act: 'Look up its lot under Trace. A lead must decide.',
  },
  'floor-life-short': {
    title: 'Floor life ends before the reel',
    say: (f) => `Its floor life ends in ${f['leftSeconds']}, the reel lasts ${f['neededSeconds']}.`,
    act: 'A lead must decide.',
  },
};
