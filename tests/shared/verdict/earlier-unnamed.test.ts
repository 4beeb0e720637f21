// A reel without an id that may have stood on the line before.

import { describe, expect, test } from 'vitest';
import { earlierUnnamed } from '../../../shared/verdict/verify.ts';
import { beginStory, tellPlant, unloaded, verified } from '../floor/story.ts';

describe('earlierUnnamed()', () => {
  test('goes by the maker’s number where the label bears none of the site', () => {
    const story = beginStory();
    tellPlant(story);
    story.tell('reel.verified', verified('M1-F-001', null, { supplierPart: 'S-9', lot: 'lot-1' }));
    story.tell('reel.unloaded', unloaded('M1-F-001', { quantity: 300, basis: 'typed' }));
    const earlier = (supplierPart: string) =>
      earlierUnnamed(story.floor(), { part: null, supplierPart, lot: 'lot-1' })?.count ?? null;
    expect(earlier('S-9')).toBe(300);
    expect(earlier('S-8')).toBeNull();
  });
});
