// Two lanes take from one reel: a panel of either carries what it took in truth, and nothing is called sure that is not so. Played panel by panel.

import { describe, expect, test } from 'vitest';
import { laneLine } from '../../../shared/floor/lanes.ts';
import { chanceBelow, seededChance } from '../../../shared/kit/chance.ts';
import { entryId } from '../../../shared/log/entry.ts';
import { latest, latestTo } from '../../../shared/trace/order.ts';
import { traceLog } from '../../../shared/trace/stretches.ts';
import { suspectPanels } from '../../../shared/trace/suspects.ts';
import {
  beginStory,
  brookSetup,
  started,
  tellPlant,
  unloaded,
  verified,
  wantedSlot,
} from '../floor/story.ts';

const lane2 = laneLine('L1', 2);
const slot = 'M1-F-001';
const perPanel: Readonly<Record<string, number>> = { L1: 2, [lane2]: 3 };
const setupOf = (line: string) => (line === 'L1' ? 'brook-top-a' : 'fell-top-a');

/** What a panel took its parts from in truth. */
interface Truth {
  readonly run: string;
  readonly panel: number;
  readonly reels: ReadonlySet<string>;
}

/** A shift of both lanes, counted as each panel is built; splices come while the old tape still feeds. */
function shift(seed: number) {
  const chance = seededChance(seed);
  const pick = (below: number) => chanceBelow(chance, below);
  const story = beginStory();
  tellPlant(story);
  const line = story.floor().lines.get('L1');
  if (!line) throw new TypeError('Cannot tell a lane as its line must be told first: current value is none');
  // Every other shift the second lane is told while the first builds already, in some of them by the start of its run alone.
  const toldAt = seed % 2 === 0 ? pick(60) : 0;
  for (const each of ['L1', lane2]) {
    const machines = [{ machine: 'M1', least: 0, most: 0 }];
    story.tell('line.panels-ruled', { line: each, machines, missed: 0 });
  }
  const slots = [wantedSlot(slot, 'R-100', { perPanel: perPanel[lane2] ?? 0 })];
  story.tell('setup.taken', { ...brookSetup, setup: 'fell-top-a', product: 'Fell', line: lane2, slots });
  const truth: Truth[] = [];
  const runs = new Map<string, { run: string; done: number }>();
  const tapes: { reel: string; left: number }[] = [];
  let names = 0;
  const bring = (act: 'load' | 'splice', on: string) => {
    names += 1;
    const reel = `K${names}`;
    const quantity = 12 + pick(60);
    const panels = runs.get(on)?.done ?? 0;
    const facts = {
      act,
      line: on,
      setup: setupOf(on),
      run: runs.get(on)?.run ?? null,
      reel,
      quantity,
      lot: reel,
      panels,
    };
    story.tell('reel.verified', verified(slot, 'R-100', facts));
    tapes.push({ reel, left: quantity });
  };
  for (let act = 0; act < 120; act++) {
    if (act === toldAt && seed % 6 !== 0)
      story.tell('line.defined', { ...line, line: lane2, name: 'Lane 2' });
    const on = act < toldAt || pick(2) === 0 ? 'L1' : lane2;
    const run = runs.get(on);
    const left = tapes.reduce((sum, tape) => sum + tape.left, 0);
    const kind = pick(12);
    if (run === undefined) {
      names += 1;
      runs.set(on, { run: `run-${names}`, done: 0 });
      story.tell('run.started', started(`run-${names}`, { line: on, setup: setupOf(on) }));
    } else if (tapes.length === 0) bring('load', on);
    else if (kind === 0) {
      story.tell('run.ended', { run: run.run, line: on, panels: run.done, note: '' });
      runs.delete(on);
    } else if (kind === 1 && tapes.length < 3 && (tapes[0]?.left ?? 0) > 0) bring('splice', on);
    else if (kind === 2) {
      story.tell('reel.unloaded', unloaded(slot, { line: on, run: run.run, panels: run.done }));
      tapes.length = 0;
    } else if (left >= (perPanel[on] ?? 0)) {
      const reels = new Set<string>();
      for (let placed = 0; placed < (perPanel[on] ?? 0); placed++) {
        while (tapes[0]?.left === 0) tapes.shift();
        const [tape] = tapes;
        if (!tape) break;
        tape.left -= 1;
        reels.add(tape.reel);
      }
      run.done += 1;
      truth.push({ run: run.run, panel: run.done, reels });
      story.tell('panels.counted', {
        run: run.run,
        line: on,
        add: 1,
        panels: run.done,
        serial: null,
        via: 'typed',
      });
    }
  }
  return { story, truth };
}

describe('the trace of two lanes', () => {
  test('has every panel’s reels among the possible, and calls sure only what is so, in 200 shifts', () => {
    let both = 0;
    let sure = 0;
    for (let seed = 1; seed <= 200; seed++) {
      const { story, truth } = shift(seed);
      const index = traceLog([...story.entries]);
      for (const { run, panel, reels } of truth) {
        const at = `seed ${seed}, ${run}, panel ${panel}`;
        const known = index.state.runs.get(run);
        if (!known) throw new TypeError(`Cannot look as ${run} must be known`);
        const own = index.stretches.filter((each) => each.run === run && each.slot === slot);
        for (const stretch of own) {
          const to = stretch.to;
          const isPossible = stretch.from.possible <= panel && (to === null || panel <= latestTo(known, to));
          const isSure =
            panel >= latest(known, stretch.from.sure, stretch.from.at) && (to === null || panel <= to.sure);
          const isOn = reels.has(stretch.reel ?? '');
          if (isOn) expect(isPossible, `${at}: ${stretch.reel} possible`).toBe(true);
          if (isSure) expect(isOn, `${at}: ${stretch.reel} sure`).toBe(true);
          if (isSure) sure += 1;
        }
        for (const reel of reels)
          expect(
            own.some((each) => each.reel === reel),
            `${at}: ${reel} traced`,
          ).toBe(true);
      }
      const runsOf = (reel: string) =>
        new Set(truth.filter(({ reels }) => reels.has(reel)).map(({ run }) => run));
      both += [...new Set(truth.flatMap(({ reels }) => [...reels]))].filter(
        (reel) => runsOf(reel).size > 1,
      ).length;
    }
    // The shifts are such that reels feed both lanes, and that something is known of them.
    expect(both).toBeGreaterThan(200);
    expect(sure).toBeGreaterThan(1000);
  });
});

/** A wrong reel on a slot of both lanes: which lane's tablet saw it right, found it, and took it off. */
function found(by: { readonly right: string; readonly wrong: string; readonly off: string }) {
  const begun = beginStory();
  tellPlant(begun);
  const line = begun.floor().lines.get('L1');
  if (!line) throw new TypeError('Cannot tell a lane as its line must be told first: current value is none');
  begun.tell('line.defined', { ...line, line: lane2, name: 'Lane 2' });
  for (const each of ['L1', lane2])
    begun.tell('line.panels-ruled', {
      line: each,
      machines: [{ machine: 'M1', least: 0, most: 2 }],
      missed: 0,
    });
  begun.tell('setup.taken', {
    ...brookSetup,
    setup: 'fell-top-a',
    line: lane2,
    slots: [wantedSlot(slot, 'R-100')],
  });
  begun.tell('reel.verified', verified(slot, 'R-100', { reel: 'K1', quantity: 5000 }));
  begun.tell('run.started', started('a'));
  begun.tell('run.started', started('b', { line: lane2, setup: 'fell-top-a' }));
  const count = (run: string, on: string, panels: number) => {
    for (let each = 0; each < panels; each++)
      begun.tell('panels.counted', { run, line: on, add: 1, panels: 0, serial: null, via: 'typed' });
  };
  const seen = (reel: string, isRight: boolean, on: string) =>
    begun.tell(
      'reel.verified',
      verified(slot, isRight ? 'R-100' : 'C-200', {
        act: 'sweep',
        reel,
        line: on,
        setup: setupOf(on),
        run: on === 'L1' ? 'a' : 'b',
        ...(isRight ? {} : { verdict: 'refused' as const, reasons: [{ code: 'not-the-loaded-reel' }] }),
      }),
    );
  count('a', 'L1', 20);
  count('b', lane2, 7);
  seen('K1', true, by.right);
  count('a', 'L1', 10);
  count('b', lane2, 5);
  const finding = entryId(seen('X1', false, by.wrong));
  begun.tell('reel.unloaded', unloaded(slot, { line: by.off, run: 'a', reel: 'K1', part: 'R-100' }));
  count('b', lane2, 30);
  return suspectPanels(traceLog([...begun.entries]), { cause: 'wrong-reel', finding }).runs;
}

describe('a wrong reel that is found on a slot', () => {
  const lanes = ['L1', lane2];
  const cases = lanes.flatMap((right) =>
    lanes.flatMap((wrong) => lanes.map((off) => ({ right, wrong, off }))),
  );
  test.each(cases)('holds the panels of both lanes since the last good check: %o', (by) => {
    const runs = found(by);
    expect(runs.map(({ run, line }) => [run, line])).toEqual([
      ['a', 'L1'],
      ['b', lane2],
    ]);
    // From the panel after the last good check to the last that may have passed the machine when it came off.
    for (const [at, first, last] of [
      [0, 21, 33],
      [1, 8, 15],
    ] as const) {
      expect(runs[at]?.possible.first, `first of ${at}`).toBe(first);
      expect(runs[at]?.possible.last, `last of ${at}`).toBeGreaterThanOrEqual(last - 1);
      expect(runs[at]?.possible.last, `last of ${at}`).toBeLessThanOrEqual(last + 1);
    }
  });
});
