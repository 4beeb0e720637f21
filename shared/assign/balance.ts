// Heavy users apart: of assignments with the same changes, one that spreads placements over the machines.
// Method: two stays of the same jobs and width, neither of them loaded, change places where that brings the machines' placements closer together.

import type { AssignModel } from './problem.ts';
import type { Stay } from './stays.ts';

const mostRounds = 20;

/** The same stays, on places of each other's. Changes nothing about what is put in when. */
export function spreadLoad(model: AssignModel, given: readonly Stay[]): readonly Stay[] {
  const stays = [...given];
  const machines = [...new Set(model.banks.map(({ machine }) => machine))];
  const machineOf = (start: number) => {
    const bank = model.banks.find(({ from, positions }) => start >= from && start < from + positions);
    return machines.indexOf(bank?.machine ?? '');
  };
  const load = new Float64Array(machines.length);
  const weight = (stay: Stay) => model.feeders[stay.feeder]!.perPanel * stay.uses.length; // a stay names a feeder of its model
  for (const stay of stays) load[machineOf(stay.start)]! += weight(stay);
  const groups = new Map<string, number[]>();
  for (const [index, stay] of stays.entries()) {
    if (stay.uses[0] === 0) continue;
    const key = `${model.feeders[stay.feeder]!.width} ${stay.uses[0]}-${stay.uses.at(-1)}`;
    groups.set(key, [...(groups.get(key) ?? []), index]);
  }
  for (let round = 0, isBetter = true; isBetter && round < mostRounds; round++) {
    isBetter = false;
    for (const group of groups.values())
      if (swapInGroup(stays, group, { load, machineOf, weight })) isBetter = true;
  }
  return stays;
}

function swapInGroup(
  stays: Stay[],
  group: readonly number[],
  site: {
    readonly load: Float64Array;
    readonly machineOf: (start: number) => number;
    readonly weight: (stay: Stay) => number;
  },
): boolean {
  let isBetter = false;
  for (const i of group) {
    for (const j of group) {
      const [a, b] = [stays[i]!, stays[j]!]; // numbers of the list
      const [from, to] = [site.machineOf(a.start), site.machineOf(b.start)];
      const more = site.weight(a) - site.weight(b);
      // Moving the heavier of the two helps as long as its machine stays the more loaded one.
      if (from === to || more <= 0 || site.load[from]! - site.load[to]! <= more) continue;
      stays[i] = { ...a, start: b.start };
      stays[j] = { ...b, start: a.start };
      site.load[from]! -= more;
      site.load[to]! += more;
      isBetter = true;
    }
  }
  return isBetter;
}
