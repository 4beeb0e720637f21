// Parts with a value, as the plant's list has them.

import { payloadExamples } from './examples.ts';
import type { Story } from './story.ts';

/** A part of the list, where nothing but its value matters. */
export interface ValuedPart {
  readonly part: string;
  readonly value: string | null;
  readonly tolerance: string | null;
}

/** Tells the plant's list. */
export function listed(story: Story, parts: readonly ValuedPart[]): void {
  const [plain] = payloadExamples['parts.listed'].parts;
  if (plain === undefined) throw new Error('the example lists a part');
  if (parts.length > 0)
    story.tell('parts.listed', {
      source: 'parts.csv',
      parts: parts.map((each) => ({ ...plain, ageMonths: null, msl: null, makers: [], ...each })),
    });
}
