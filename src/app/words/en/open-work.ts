import type { Said } from '../open-work.ts';
import { plural } from '../words.ts';

const saidEn: Said = {
  misfit: () => 'The setup does not fit this line',
  move: (count) => plural(count, '1 feeder move left', `${count} feeder moves left`),
  'slot-empty': (count) => plural(count, '1 slot without its reel', `${count} slots without their reels`),
  'slot-other': (count) => plural(count, '1 slot has another part', `${count} slots have other parts`),
  'slot-held': (count) => plural(count, '1 reel waits for a lead', `${count} reels wait for a lead`),
  'measured-wrong': (count) => plural(count, '1 part measured wrong', `${count} parts measured wrong`),
  'looked-wrong': (count) => plural(count, '1 part looks wrong', `${count} parts look wrong`),
  'cannot-tell': (count) =>
    plural(count, '1 part too close for the meter', `${count} parts too close for the meter`),
  unchecked: (count) => plural(count, '1 part not checked yet', `${count} parts not checked yet`),
  step: (count) => plural(count, '1 checklist step', `${count} checklist steps`),
  'no-checklist': () => 'The checklist was never opened',
};

export const words = {
  said: saidEn,
  on: (part: string, slot: string) => `${part} on ${slot}`,
  reelOn: (reel: string, slot: string) => `reel ${reel} on ${slot}`,
  reel: (reel: string) => `reel ${reel}`,
  more: (count: number) => plural(count, 'and 1 more', `and ${count} more`),
  isWrong: 'Wrong',
  isOpen: 'Still open',
  nothing: 'Nothing is open.',
} as const;
