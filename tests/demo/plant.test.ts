// The invented plant holds together: what the fold takes in, what fits where, what a person can do with it.

import { pbkdf2Sync } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { feeders, takesTape } from '../../demo/feeders.ts';
import { startLog } from '../../demo/log.ts';
import { familyOf, partRows, supplierPartsOf } from '../../demo/parts.ts';
import { people } from '../../demo/people.ts';
import { lineRules, plantDrafts, storeDrafts } from '../../demo/plant.ts';
import { coveredPositions, lineId, products, takenSetup } from '../../demo/setups.ts';
import { beaconSetup, trayLift, traysPacked } from '../../demo/trays.ts';
import { parseSlot } from '../../shared/floor/address.ts';
import { kindOfPackage } from '../../shared/floor/packs.ts';
import { isOnLinePlace } from '../../shared/floor/place.ts';
import { setupProgress } from '../../shared/floor/progress.ts';
import { pocketsOf } from '../../shared/floor/tray.ts';
import { verifyChains } from '../../shared/log/chain.ts';
import { isTapeWidth, listedPitchesMm, positionsForWidth } from '../../shared/sheet/tapes.ts';

const setups = products.map(takenSetup);

function foldPlant() {
  const log = startLog({ epoch: 'test', zone: 'Europe/London' });
  for (const draft of [...plantDrafts({ zone: 'Europe/London', shiftStart: 360 }), ...storeDrafts()]) {
    log.write(draft, { atMs: Date.UTC(2026, 5, 1, 6), who: null });
  }
  return log;
}

describe('the plant in the log', () => {
  test('folds to one line, its people, feeders, setups and one blocked lot', () => {
    const { state, entries } = foldPlant();
    expect([...state.lines.keys()]).toEqual([lineId]);
    expect(state.lines.get(lineId)?.machines).toHaveLength(3);
    expect(state.people.size).toBe(people.length);
    expect(state.feeders.size).toBe(feeders.length + 1);
    expect([...state.setups.keys()]).toEqual([...products.map(({ setup }) => setup), beaconSetup.setup]);
    expect(state.blocks.size).toBe(1);
    expect(state.rules.get(lineId)?.leadSeconds).toBe(600);
    expect(verifyChains(entries).ok).toBe(true);
  });

  test('writes moments with the offset of the plant’s zone', () => {
    expect(foldPlant().entries[0]?.at).toBe('2026-06-01T07:00:00.000+01:00');
  });

  test('approves both suppliers’ numbers of every part on a setup, and each for one part only', () => {
    const { state } = foldPlant();
    for (const slot of setups.flatMap((setup) => setup.slots)) {
      for (const supplierPart of supplierPartsOf(slot.part)) {
        expect(state.approvals.get(supplierPart), supplierPart).toEqual([slot.part]);
      }
    }
  });
});

describe('trays and tubes', () => {
  test('a lift has a tray on each of its places, three of them in turn, and a feeder three lanes on one position', () => {
    const { state } = foldPlant();
    const line = state.lines.get(lineId);
    const lift = line?.machines
      .find(({ machine }) => machine === 'M3')
      ?.banks.find(({ bank }) => bank === 'T');
    expect(lift).toMatchObject({ holds: 'trays', positions: trayLift.positions });
    const { slots } = beaconSetup;
    const trays = slots.filter(({ comesIn }) => comesIn === 'tray');
    for (const { slot } of trays) expect(isOnLinePlace(state, lineId, slot), slot).toBe(true);
    expect(trays.map(({ turn }) => turn)).toEqual([1, 2, 3, undefined, undefined]);
    const lanes = slots.filter(({ comesIn }) => comesIn === 'tube').map(({ slot }) => parseSlot(slot));
    expect(lanes.map(({ position, lane }) => [position, lane])).toEqual([
      [50, '1'],
      [50, '2'],
      [50, '3'],
    ]);
  });

  test('a full tray of the store has as many parts as pockets', () => {
    const { state } = foldPlant();
    for (const { reel, tray } of traysPacked) {
      expect(tray && state.reels.get(reel)?.count, reel).toBe(tray && pocketsOf(tray));
      expect(kindOfPackage(state, reel)).toBe('tray');
    }
  });
});

describe('setups', () => {
  test('the largest has about 150 slots, and there are three', () => {
    expect(setups.map((setup) => setup.slots.length)).toEqual([150, expect.any(Number), expect.any(Number)]);
    for (const setup of setups) expect(setup.slots.length).toBeGreaterThan(80);
  });

  test.each(setups)(
    '$product: every slot is on the line and no feeder covers another’s positions',
    (setup) => {
      const { state } = foldPlant();
      const covered = new Map<string, string>();
      for (const slot of setup.slots) {
        for (const position of coveredPositions(slot)) {
          expect(isOnLinePlace(state, lineId, position), position).toBe(true);
          expect(covered.get(position), position).toBeUndefined();
          covered.set(position, slot.slot);
        }
      }
    },
  );

  test.each(setups)(
    '$product: widths, pitches and positions are those of EIA-481-D and common practice',
    (setup) => {
      for (const { slot, tapeWidthMm, pitchMm, positions } of setup.slots) {
        expect(isTapeWidth(tapeWidthMm ?? 0), slot).toBe(true);
        expect(listedPitchesMm(tapeWidthMm ?? 0), slot).toContain(pitchMm);
        expect(positions, slot).toBe(positionsForWidth(tapeWidthMm ?? 0));
      }
    },
  );

  test.each(setups)('$product: there are feeders for every slot at once', (setup) => {
    const free = [...feeders];
    for (const slot of setup.slots) {
      const { tapeWidthMm, pitchMm } = familyOf(slot.part);
      const at = free.findIndex((feeder) => takesTape(feeder, { tapeWidthMm, pitchMm }));
      expect(at, slot.slot).toBeGreaterThanOrEqual(0);
      free.splice(at, 1);
    }
  });

  test('products share parts, some of them on other slots, so that a changeover keeps, moves, takes out and puts in', () => {
    const [first, second] = setups;
    const places = new Map(first?.slots.map((slot) => [slot.part, slot.slot]));
    const shared = second?.slots.filter((slot) => places.has(slot.part)) ?? [];
    const moved = shared.filter((slot) => places.get(slot.part) !== slot.slot);
    expect(shared.length).toBeGreaterThan(40);
    expect(moved.length).toBeGreaterThan(4);
    expect(moved.length).toBeLessThan(shared.length / 2);
    expect(second?.slots.length).toBeGreaterThan(shared.length);
  });

  test('no part is listed twice, and every alternate is a part of the plant', () => {
    const parts = partRows.map((row) => row[0]);
    expect(new Set(parts).size).toBe(parts.length);
    for (const slot of setups.flatMap((setup) => setup.slots)) {
      for (const alternate of slot.alternates) expect(parts).toContain(alternate);
    }
  });

  test('nothing is loaded before anybody loads it', () => {
    const log = foldPlant();
    expect(setupProgress(log.state, lineId).verified).toBe(0);
  });
});

describe('people', () => {
  test('every PIN is the number on the badge (PBKDF2-HMAC-SHA-256 of Node’s own crypto)', () => {
    for (const { badge = '', pin, name } of people) {
      const salt = pin?.salt ?? '';
      const hash = pbkdf2Sync(badge.slice('BADGE-'.length), salt, pin?.rounds ?? 1, 32, 'sha256');
      expect(hash.toString('hex'), name).toBe(pin?.hash);
    }
  });

  test('every role has somebody', () => {
    expect(new Set(people.map((person) => person.role))).toEqual(new Set(['operator', 'lead', 'engineer']));
  });
});

describe('lineRules()', () => {
  test('three shifts follow each other round the clock, with two breaks in each', () => {
    const { shifts, breaks } = lineRules(400);
    expect(shifts.map((shift) => [shift.from, shift.to])).toEqual([
      ['06:40', '14:40'],
      ['14:40', '22:40'],
      ['22:40', '06:40'],
    ]);
    expect(breaks).toHaveLength(6);
    expect(breaks[5]).toMatchObject({ from: '03:40', to: '04:10' });
  });
});
