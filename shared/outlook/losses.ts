// What finished reels have taught about each feeder, and which feeder is getting worse. Pure: the floor in, lines of a table out.

import { compareSlots } from '../floor/address.ts';
import { sharesSlots, standingAt } from '../floor/lanes.ts';
import {
  ASSUMED_STRENGTH,
  assumedLoss,
  lossPrior,
  type PlacedEvidence,
  shownOn,
  unlikelyOn,
  updateLoss,
} from '../floor/remaining.ts';
import { type Finished, type FloorState, slotKey } from '../floor/state.ts';
import { lossEvidence, risingLoss } from '../forecast/loss.ts';
import { compareText } from '../log/order.ts';

/** Reels that count as recent. */
const RECENT = 3;
/** A feeder is compared with the others once it has shown this many picks. */
const FEWEST_PICKS = 500;

/** What one feeder's finished reels show. Shares are of picks. */
export interface FeederLoss {
  readonly feeder: string;
  /** Where it was last. */
  readonly slot: string;
  readonly parts: readonly string[];
  readonly mean: number;
  readonly low: number;
  readonly high: number;
  readonly reels: number;
  readonly picks: number;
  readonly lost: number;
  /** One deviation of `lost`: counts and splices that were not certain. */
  readonly lostSd: number;
  /** Loss of all other feeders together; null where there are none. */
  readonly others: number | null;
  /** True where the newest reels lost more than the ones before, or than the other feeders, beyond bad luck. */
  readonly rising: boolean;
  readonly recentMean: number | null;
  /** Reels among them whose panels' skipped boards nobody ever entered: lost parts and skipped boards look alike there. */
  readonly skipsUnknown: number;
  /** Newest first, for whoever wants to see what it rests on. */
  readonly evidence: readonly (PlacedEvidence & { readonly from: Finished })[];
}

/** The last answer, and what it was made of: a part's list of finished reels is another one once it has changed. */
let remembered: {
  readonly key: string;
  readonly lists: readonly (readonly Finished[])[];
  readonly losses: readonly FeederLoss[];
} | null = null;

/** `feederLosses`, computed anew only where a reel was finished or a rule changed: screens ask with every entry. */
export function knownLosses(floor: FloorState, line: string): readonly FeederLoss[] {
  const lists = [...floor.finished.values()];
  const costs = floor.spliceCosts.get(line) ?? [];
  const key = JSON.stringify([line, floor.rules.get(line)?.loss, costs]);
  const isKnown =
    remembered?.key === key &&
    remembered.lists.length === lists.length &&
    remembered.lists.every((list, at) => list === lists[at]);
  if (remembered === null || !isKnown) remembered = { key, lists, losses: feederLosses(floor, line) };
  return remembered.losses;
}

/** What a line's feeders lose, worst first. */
export function feederLosses(floor: FloorState, line: string): readonly FeederLoss[] {
  const byFeeder = new Map<string, (PlacedEvidence & { readonly from: Finished })[]>();
  for (const reels of floor.finished.values()) {
    for (const reel of reels) {
      const shown = sharesSlots(reel.line, line) ? shownOn(floor, reel) : null;
      if (!shown || shown.feeder === '') continue;
      const list = byFeeder.get(shown.feeder);
      if (list) list.push(shown);
      else byFeeder.set(shown.feeder, [shown]);
    }
  }
  const prior = assumedLoss(floor, line);
  const learnt = [...byFeeder.entries()].map(([feeder, reels]) => {
    const inOrder = [...reels].sort((a, b) => a.from.atMs - b.from.atMs);
    return { feeder, inOrder, shown: lossEvidence(inOrder.reduce(updateLoss, prior)) };
  });
  // By what each feeder is believed to lose: a splice bounds a count within its window, and the middle of a window is no loss.
  const believedLost = ({ mean, picks }: { readonly mean: number; readonly picks: number }) => mean * picks;
  const allLost = learnt.reduce((sum, { shown }) => sum + believedLost(shown), 0);
  const allPicks = learnt.reduce((sum, { shown }) => sum + shown.picks, 0);
  return learnt
    .map(({ feeder, inOrder, shown }): FeederLoss => {
      const others =
        learnt.length === 1
          ? null
          : {
              mean:
                (prior.alpha + allLost - believedLost(shown)) / (ASSUMED_STRENGTH + allPicks - shown.picks),
            };
      const earlier = inOrder.slice(0, -RECENT).reduce(updateLoss, others ? carried(others) : prior);
      const recent = certain(inOrder.slice(-RECENT));
      const rise = shown.picks < FEWEST_PICKS ? null : risingLoss(earlier, recent);
      return {
        feeder,
        slot: inOrder.at(-1)?.slot ?? '',
        parts: [...new Set(inOrder.map((reel) => reel.part))].sort(compareText),
        mean: shown.mean,
        low: shown.low,
        high: shown.high,
        reels: shown.reels,
        picks: shown.picks,
        lost: shown.lost,
        lostSd: Math.hypot(...inOrder.map((reel) => reel.sd ?? 0)),
        others: others?.mean ?? null,
        rising: rise?.rising ?? false,
        recentMean: rise?.recentMean ?? null,
        skipsUnknown: inOrder.filter(({ from }) => from.skipsUnknown).length,
        evidence: inOrder.reverse(),
      };
    })
    .sort(
      (a, b) => Number(b.rising) - Number(a.rising) || b.mean - a.mean || compareText(a.feeder, b.feeder),
    );
}

/** What all other feeders show, as the start for one feeder, with no more weight than a few reels. */
function carried(others: { readonly mean: number }) {
  return lossPrior({ mean: Math.max(1e-4, others.mean), strength: 2000 });
}

/** Only what the counts surely show is held against a feeder: two deviations of the counts are taken off. */
function certain(reels: readonly PlacedEvidence[]) {
  return reels.map((reel) => ({ picks: reel.picks, lost: Math.max(0, reel.lost - 2 * (reel.sd ?? 0)) }));
}

/** Finished reels of a line that showed more than any feeder loses, newest first: set aside, nothing was learnt from them. */
export function unlikelyLosses(
  floor: FloorState,
  line: string,
): readonly { readonly from: Finished; readonly share: number }[] {
  return [...floor.finished.values()]
    .flat()
    .flatMap((from) => {
      const share = sharesSlots(from.line, line) ? unlikelyOn(floor, from) : null;
      return share === null ? [] : [{ from, share }];
    })
    .sort((a, b) => b.from.atMs - a.from.atMs);
}

/** Feeders whose loss is rising. */
export function risingFeeders(losses: readonly FeederLoss[]): readonly FeederLoss[] {
  return losses.filter((loss) => loss.rising);
}

/** Faults of picking on a slot, as a machine told them while the line's present run is built. */
export interface ToldFaults {
  readonly slot: string;
  readonly feeder: string | null;
  /** One or more. */
  readonly times: number;
  /** When the first of them was, ms since 1970. */
  readonly sinceMs: number;
}

/** What a machine told of faults of picking on a slot with the feeder that stands there now, in the present run; null where nothing. */
export function pickFaultsOn(floor: FloorState, line: string, slot: string): ToldFaults | null {
  const key = slotKey(line, slot);
  const told = floor.pickFaults.get(key);
  const there = floor.slots.get(key);
  if (!told || !there || there.feeder !== told.feeder) return null;
  if (told.run !== (floor.current.get(line) ?? null)) return null;
  return { slot, feeder: told.feeder, times: told.times, sinceMs: told.sinceMs };
}

/** Such slots of a line, the most faults first, of equal ones in walking order. */
export function pickFaults(floor: FloorState, line: string): readonly ToldFaults[] {
  return standingAt(floor, line)
    .flatMap(({ slot }) => pickFaultsOn(floor, line, slot) ?? [])
    .sort((a, b) => b.times - a.times || compareSlots(a.slot, b.slot));
}
