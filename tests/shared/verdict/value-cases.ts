// Reels of a part that the line wants measured before they feed, and what is said of each first.

import type { ReelFacts } from '../../../shared/verdict/verify.ts';
import type { Story } from '../floor/story.ts';
import { listed } from '../floor/value-story.ts';

const rule = { line: 'L1', begins: ['R-'], percent: 0.5, digits: 2, guard: 100 };

function wanted(story: Story): void {
  listed(story, [{ part: 'R-100', value: '10k', tolerance: '1 %' }]);
  story.tell('line.values-ruled', rule);
}

function measured(verdict: 'accepted' | 'held' | 'refused'): Partial<ReelFacts> {
  const limits = { part: 'R-100', nominal: 10, unit: 'kΩ', least: 9.9, most: 10.1 };
  const quantity = { accepted: 10.02, held: 10.05, refused: 11 }[verdict];
  const read = { quantity, uncertainty: 0.07, guard: 0.07, verdict, via: 'typed' as const };
  return { measured: { ...limits, ...read } };
}

/** What was measured, and the first reason then. */
export const valueCases = [
  {
    why: 'a part off the reel measures right',
    before: wanted,
    reel: measured('accepted'),
    reason: { code: 'value-within', quantity: 10.02, uncertainty: 0.07, guard: 0.07, least: 9.9, most: 10.1 },
  },
  {
    why: 'the meter cannot tell',
    before: wanted,
    reel: measured('held'),
    reason: { code: 'value-unsure', nominal: 10, unit: 'kΩ' },
  },
  {
    why: 'a part off the reel measures wrong',
    before: wanted,
    reel: measured('refused'),
    reason: { code: 'value-outside', nominal: 10, unit: 'kΩ' },
  },
  {
    why: 'nobody measured what the line wants measured',
    before: wanted,
    reel: {},
    reason: { code: 'value-unmeasured', part: 'R-100' },
  },
  {
    why: 'the line wants a value that no list states',
    before: (story: Story) => void story.tell('line.values-ruled', rule),
    reel: {},
    reason: { code: 'value-unknown', part: 'R-100', lack: 'value' },
  },
] as const;
