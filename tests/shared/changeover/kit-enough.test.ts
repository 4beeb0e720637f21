// Is "enough" on the pick list so? A simulator that knows every reel and every panel: what a printed count is off by, what each pick
// loses, which boards are skipped. Nothing of it is taken from the code under test but the spreads that the product states.

import { expect, test } from 'vitest';
import { kitList } from '../../../shared/changeover/kit.ts';
import type { Setup } from '../../../shared/floor/state.ts';
import { type Chance, chanceBelow, chanceNormal, seededChance } from '../../../shared/kit/chance.ts';
import { beginStory, counted, started, startMs, tellPlant, verified, wantedSlot } from '../floor/story.ts';

const LOSS = 0.003;
/** The weight that a line's assumed loss is given, in picks: the truth is drawn from that Beta law. */
const STRENGTH = 150;
const BOARDS = 8;

/** A Gamma(shape, 1) value, shape below 1 or above (Marsaglia and Tsang, with the boost for small shapes). */
function gamma(chance: Chance, shape: number): number {
  if (shape < 1) return gamma(chance, shape + 1) * Math.max(1e-300, chance()) ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = chanceNormal(chance, 0, 1);
    const v = (1 + c * x) ** 3;
    if (v > 0 && Math.log(Math.max(1e-300, chance())) < 0.5 * x * x + d - d * v + d * Math.log(v))
      return d * v;
  }
}

function beta(chance: Chance, a: number, b: number): number {
  const one = gamma(chance, a);
  return one / (one + gamma(chance, b));
}

/** Successes of so many tries, by waiting times: geometric gaps. */
function binomial(chance: Chance, tries: number, p: number): number {
  if (p <= 0) return 0;
  if (p >= 1) return tries;
  let hits = -1;
  let at = 0;
  while (at <= tries) {
    at += Math.floor(Math.log(Math.max(1e-300, chance())) / Math.log1p(-p)) + 1;
    hits += 1;
  }
  return hits;
}

/** Parts that so many placements really take. */
function picksFor(chance: Chance, placements: number, loss: number): number {
  return placements + binomial(chance, Math.round(placements / (1 - loss)), loss);
}

interface Trial {
  readonly said: 'sure' | 'probably' | 'no';
  readonly chance: number;
  readonly isEnough: boolean;
}

test('a row is one part that the setup places, with the moisture level that any of its slots states', () => {
  const story = beginStory();
  tellPlant(story);
  story.tell('setup.taken', {
    setup: 'rows',
    product: 'Brook',
    side: 'top',
    revision: 'A',
    line: 'L1',
    source: 'test',
    slots: [
      wantedSlot('M1-F-001', 'R-100'),
      wantedSlot('M1-F-002', 'R-100', { msl: '3' }),
      wantedSlot('M1-F-003', 'C-200', { perPanel: 0 }),
      wantedSlot('M1-F-004', 'U-300', { perPanel: 1 }),
    ],
  });
  // One slot has its reel already: two are brought for 10 000 parts, though one of 20 000 would be enough.
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { setup: 'rows', reel: 'K1', quantity: 100 }));
  const facts = { supplierPart: null, lot: null, dateCode: null, place: 'A', via: 'wedge' } as const;
  for (const reel of ['K2', 'K3'])
    story.tell('reel.put', { ...facts, reel, part: 'R-100', quantity: 20_000 });
  const floor = story.floor();
  const setup = floor.setups.get('rows') as Setup; // told above
  const rows = kitList(floor, setup, { panels: 100, loss: 0, nowMs: startMs });
  expect(rows.map(({ part, msl, reels }) => [part, msl, reels.length])).toEqual([
    ['R-100', '3', 1],
    ['U-300', null, 0],
  ]);
});

function trial(chance: Chance): Trial {
  const loss = beta(chance, LOSS * STRENGTH, (1 - LOSS) * STRENGTH);
  const skip = beta(chance, 2, 14);
  const perPanel = 8 * (1 + chanceBelow(chance, 3));
  const story = beginStory();
  tellPlant(story, { rules: { loss: LOSS } });
  story.tell('setup.taken', {
    setup: 'eight',
    product: 'Eight',
    side: 'top',
    revision: 'A',
    line: 'L1',
    source: '',
    boardsPerPanel: BOARDS,
    slots: [wantedSlot('M1-F-001', 'R-100', { perPanel })],
  });
  story.tell('setup.chosen', { line: 'L1', setup: 'eight' });
  const isSpliced = chance() < 0.5;
  const labels = [3000 + chanceBelow(chance, 3000), 3000 + chanceBelow(chance, 3000)];
  const truths = labels.map((label) => chanceNormal(chance, label, 0.0025 * label));
  const [first = 0, second = 0] = labels;
  const [firstTrue = 0, secondTrue = 0] = truths;
  const done = 20 + chanceBelow(chance, 60);
  const toGo = chanceBelow(chance, 40);
  story.tell('run.started', started('run-1', { setup: 'eight', panelsWanted: done + toGo }));
  const of = { setup: 'eight', reel: 'K-1', quantity: first };
  story.tell('reel.verified', verified('M1-F-001', 'R-100', of));
  // Of some panels somebody enters which boards were skipped, of others nobody does.
  const entered = 10 + chanceBelow(chance, done - 10);
  let skipped = 0;
  for (let panel = 1; panel <= done; panel++) {
    const off = binomial(chance, BOARDS, skip);
    skipped += off;
    const count = counted('run-1', 1);
    story.tell('panels.counted', panel <= entered ? { ...count, skipped: off } : count);
  }
  if (isSpliced)
    story.tell(
      'reel.verified',
      verified('M1-F-001', 'R-100', { ...of, act: 'splice', reel: 'K-2', quantity: second }),
    );
  else {
    story.tell('reel.put', {
      reel: 'K-2',
      part: 'R-100',
      place: 'A1',
      supplierPart: null,
      quantity: second,
      lot: null,
      dateCode: null,
      via: 'typed' as const,
    });
  }
  const perBoard = perPanel / BOARDS;
  const later = toGo * BOARDS - binomial(chance, toGo * BOARDS, skip);
  const placed = (done * BOARDS - skipped + later) * perBoard;
  const left = Math.max(0, firstTrue + secondTrue - picksFor(chance, placed, loss));
  // Wanted about as much as there should be: where it is doubtful.
  const expected = Math.max(50, first + second - (done + toGo) * perPanel * (1 - skip));
  const share = 0.9 + 0.12 * chance();
  const panels = Math.max(1, Math.floor((expected * share) / (perPanel * (1 - skip))));
  const wanted = (panels * BOARDS - binomial(chance, panels * BOARDS, skip)) * perBoard;
  const [row] = kitList(story.floor(), story.floor().setups.get('eight') as Setup, {
    panels,
    loss: LOSS,
    nowMs: startMs,
  });
  return {
    said: row?.enough ?? 'no',
    chance: row?.chance ?? 0,
    isEnough: left >= picksFor(chance, wanted, loss),
  };
}

test('"enough" is right in at least 95 of 100 simulated truths, and a chance that is told is the chance that it has', () => {
  const chance = seededChance(20_260_302);
  const trials = Array.from({ length: 500 }, () => trial(chance));
  const sure = trials.filter(({ said }) => said === 'sure');
  expect(sure.length).toBeGreaterThan(40);
  expect(sure.filter(({ isEnough }) => isEnough).length / sure.length).toBeGreaterThanOrEqual(0.95);
  const doubtful = trials.filter(({ said }) => said !== 'sure');
  expect(doubtful.length).toBeGreaterThan(100);
  const told = doubtful.reduce((sum, each) => sum + each.chance, 0) / doubtful.length;
  const seen = doubtful.filter(({ isEnough }) => isEnough).length / doubtful.length;
  // Three deviations of a share out of so many.
  expect(Math.abs(told - seen)).toBeLessThan(3 * Math.sqrt(0.25 / doubtful.length));
});
