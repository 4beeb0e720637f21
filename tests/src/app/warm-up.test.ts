// Warming the first verdict up does the work of one, and leaves floor and log as they are.

import './store/browser.ts';

import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { DeskView } from '../../../shared/desk/model.ts';
import { openStore, type Store } from '../../../src/app/store/store.ts';
import { madeUpVerdict, warmVerdict } from '../../../src/app/warm-up.ts';
import { beginStory, startMs, tellPlant } from '../../shared/floor/story.ts';

const clock = { nowMs: () => startMs };
let store: Store;

function view(): DeskView {
  const story = beginStory();
  tellPlant(story);
  return { floor: story.floor(), line: 'L1' };
}

beforeEach(async () => {
  store = await openStore({ clock, appVersion: '0.1.0', tabletName: 'Line 1 front', name: 'warm-up' });
});

afterEach(async () => {
  await store.close();
});

describe('madeUpVerdict()', () => {
  test('reads and judges a reel that fits, and leaves the floor as it is', () => {
    const seen = view();
    const before = structuredClone(seen.floor);
    expect(madeUpVerdict(seen, startMs)).toMatchObject([
      {
        kind: 'reel.verified',
        payload: { act: 'load', slot: 'M1-F-001', part: 'R-100', verdict: 'accepted' },
      },
    ]);
    expect(seen.floor).toEqual(before);
  });

  test('has nothing to judge where no setup is chosen', () => {
    expect(madeUpVerdict({ ...view(), line: 'L9' }, startMs)).toEqual([]);
  });
});

describe('warmVerdict()', () => {
  test('seals what would be written, and writes nothing: the next append takes the number', async () => {
    const before = await store.newest(10);
    const asked: number[] = [];
    const counting = {
      nowMs: () => {
        asked.push(asked.length);
        return startMs;
      },
    };
    await warmVerdict({ store, clock: counting }, view());
    expect(asked).toHaveLength(2); // for the judge, and for the one entry that was sealed
    expect(await store.newest(10)).toEqual(before);
    const [entry] = await store.append([{ kind: 'tablet.named', payload: { name: 'Front' } }], 'ana');
    expect(entry?.seq).toBe(before.length + 1);
  });
});
