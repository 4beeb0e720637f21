import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { diffSetups, type PlacedFeeder, partsTwice, setupFaults } from '../../../shared/changeover/diff.ts';

const at = (slot: string, part: string, width = 1): PlacedFeeder => ({ slot, part, width });

function diff(loaded: PlacedFeeder[], wanted: PlacedFeeder[]) {
  const made = diffSetups(loaded, wanted);
  if (!made.ok) throw new Error(JSON.stringify(made.error));
  return made.value;
}

describe('setupFaults() where an address leaves something out', () => {
  const faultsOf = (slot: string, banks: Readonly<Record<string, number>>) =>
    setupFaults([at(slot, 'A', 2)], 'wanted', banks).map(({ code, last, over }) => [
      code,
      last ?? null,
      over ?? null,
    ]);

  test('takes the one bank that it can mean', () => {
    expect(faultsOf('19', { 'M1-F': 20 })).toEqual([]);
    expect(faultsOf('20', { 'M1-F': 20 })).toEqual([['slot-unknown', null, 1]]);
    expect(faultsOf('21', { 'M1-F': 20 })).toEqual([['slot-unknown', 20, null]]);
    expect(faultsOf('F-21', { 'M1-F': 20, 'M1-R': 30 })).toEqual([['slot-unknown', 20, null]]);
    expect(faultsOf('R-21', { 'M1-F': 20, 'M1-R': 30 })).toEqual([]);
  });

  test('knows none where several can be meant, or none is', () => {
    expect(faultsOf('5', { 'M1-F': 20, 'M1-R': 30 })).toEqual([['slot-unknown', null, null]]);
    expect(faultsOf('F-5', { 'M1-F': 20, 'M2-F': 20 })).toEqual([['slot-unknown', null, null]]);
    expect(faultsOf('M9-F-005', { 'M1-F': 20 })).toEqual([['slot-unknown', null, null]]);
  });
});

describe('diffSetups()', () => {
  test('keeps, moves, takes out and puts in', () => {
    const made = diff(
      [at('M1-F-001', 'A'), at('M1-F-002', 'B'), at('M1-F-003', 'C')],
      [at('M1-F-001', 'A'), at('M1-F-003', 'B'), at('M1-F-004', 'D')],
    );
    expect(made.keep).toEqual([at('M1-F-001', 'A')]);
    expect(made.move).toEqual([{ part: 'B', from: 'M1-F-002', to: 'M1-F-003', width: 1 }]);
    expect(made.takeOut).toEqual([at('M1-F-003', 'C')]);
    expect(made.putIn).toEqual([at('M1-F-004', 'D')]);
    expect(made.stay).toEqual([]);
  });

  test('leaves a feeder that hinders nobody, takes out the one whose tail is in the way', () => {
    const made = diff([at('M1-F-001', 'A', 2), at('M1-F-005', 'B')], [at('M1-F-002', 'C')]);
    expect(made.takeOut).toEqual([at('M1-F-001', 'A', 2)]);
    expect(made.stay).toEqual([at('M1-F-005', 'B')]);
  });

  test('moves the one of two equal feeders that is in the way', () => {
    const made = diff([at('M1-F-001', 'A'), at('M1-F-002', 'A')], [at('M1-F-002', 'B'), at('M1-F-009', 'A')]);
    expect(made.move).toEqual([{ part: 'A', from: 'M1-F-002', to: 'M1-F-009', width: 1 }]);
    expect(made.takeOut).toEqual([]);
    expect(made.stay).toEqual([at('M1-F-001', 'A')]);
  });

  test('changes the feeder where the same part is wanted in another width', () => {
    const made = diff([at('M1-F-001', 'A')], [at('M1-F-001', 'A', 2)]);
    expect(made).toMatchObject({
      keep: [],
      move: [],
      takeOut: [at('M1-F-001', 'A')],
      putIn: [at('M1-F-001', 'A', 2)],
    });
  });

  test.each<readonly [PlacedFeeder[], string, string]>([
    [[at('M1-F-001', 'A'), at('M1-F-1', 'B')], 'slot-twice', 'one slot in two spellings'],
    [[at('M1-F-001', 'A', 2), at('M1-F-002', 'B')], 'overlap', 'a wide feeder over its neighbour'],
    [[at('M1-F-001', 'A', 0)], 'width', 'no width'],
  ])('refuses %j with %s (%s)', (wanted, code, _why) => {
    const made = diffSetups([], wanted);
    expect(made.ok ? [] : made.error.map((fault) => [fault.code, fault.side])).toEqual([[code, 'wanted']]);
  });

  test('setupFaults() names slots that the line does not have, and by how much a feeder is over the end', () => {
    const wanted = [at('M1-F-039', 'A', 4), at('M2-F-001', 'B'), at('M1-F-043', 'C', 2)];
    const faults = setupFaults(wanted, 'wanted', { 'M1-F': 40 });
    expect(faults.map(({ code, slot, over, last }) => ({ code, slot, over, last }))).toEqual([
      { code: 'slot-unknown', slot: 'M1-F-039', over: 2, last: undefined },
      { code: 'slot-unknown', slot: 'M2-F-001', over: undefined, last: undefined },
      { code: 'slot-unknown', slot: 'M1-F-043', over: undefined, last: 40 },
    ]);
  });

  test('partsTwice() names a part on two slots', () => {
    expect(partsTwice([at('M1-F-2', 'A'), at('M1-F-1', 'A'), at('M1-F-3', 'B')])).toEqual([
      { part: 'A', slots: ['M1-F-1', 'M1-F-2'] },
    ]);
  });

  test('accounts for every feeder exactly once', () => {
    const layout = fc.uniqueArray(
      fc.record({ n: fc.integer({ min: 1, max: 12 }), p: fc.integer({ min: 0, max: 6 }) }),
      {
        selector: (one) => one.n,
      },
    );
    fc.assert(
      fc.property(layout, layout, (one, two) => {
        const loaded = one.map(({ n, p }) => at(`M1-F-${n}`, `P${p}`));
        const wanted = two.map(({ n, p }) => at(`M1-F-${n}`, `P${p}`));
        const made = diff(loaded, wanted);
        const left = [...made.keep, ...made.takeOut, ...made.stay].map((f) => f.slot);
        expect([...left, ...made.move.map((m) => m.from)].sort()).toEqual(loaded.map((f) => f.slot).sort());
        const filled = [...made.keep, ...made.putIn].map((f) => `${f.slot} ${f.part}`);
        expect([...filled, ...made.move.map((m) => `${m.to} ${m.part}`)].sort()).toEqual(
          wanted.map((f) => `${f.slot} ${f.part}`).sort(),
        );
      }),
    );
  });
});
