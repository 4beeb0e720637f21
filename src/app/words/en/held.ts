import { plural } from '../words.ts';

export const words = {
  causes: {
    'wrong-reel': 'Wrong reel found late',
    cleared: 'Hold cleared in error',
    blocked: 'Blocked material',
    'floor-life': 'Floor life was over',
  },
  hold: 'Hold these panels',
  holdTitle: (panels: number) => `Hold ${plural(panels, '1 panel', `${panels} panels`)}?`,
  holdHelp:
    'All panels that may carry it are held, those still in the line too. They stay held until a lead signs them.',
  goesOn: 'It is still on a slot. Take it off first, or the next panels are not held.',
  cause: 'Why are they held?',
  lifeHelp: 'Holds every panel from the moment its floor life ended.',
  noLifeOver: 'By the log, no panel was built after its floor life ended.',
  reason: 'What was found?',
  codes: (codes: number) => plural(codes, '1 panel code is known.', `${codes} panel codes are known.`),
  sure: (panels: number) =>
    panels === 0
      ? 'None surely carries it.'
      : plural(panels, '1 surely carries it.', `${panels} surely carry it.`),
  done: (panels: number) => plural(panels, '1 panel is held.', `${panels} panels are held.`),
  none: 'No panels are held.',
  span: (first: string, last: string) => `Panels ${first} to ${last}`,
  still: (held: number, all: number) => `Not signed yet: ${held} of ${all}`,
  noCodes: 'No panel codes. Find these panels by their numbers.',
  signed: (who: string, when: string) => `Signed by ${who}, ${when}`,
  sign: 'Sign',
  signAll: 'Sign all',
  signTitle: 'What was done with these panels?',
  signHelp: 'Choose single panels, or sign all of them.',
  signWhy: 'What was done? E.g. reworked, scrapped, found good.',
  signDone: 'Signed.',
  save: 'Save the codes as CSV',
  which: 'Which panels?',
} as const;
