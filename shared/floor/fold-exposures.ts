// Where moisture-sensitive reels were, period by period, for their floor life: as people told, and from the log itself: whoever loads
// a reel or makes it ready on a cart or a feeder has opened its bag. What is no longer told (an entry taken back) never was.

import { entryId } from '../log/entry.ts';
import { type Exposure, type ExposurePeriod, isLimited } from './exposure.ts';
import { backInUse, reelOf, reelSeen } from './gone-reels.ts';
import type { EntryOf, PayloadOf } from './kinds.ts';
import { nameByEntry } from './reel-id.ts';
import { reelByLabel } from './reel-places.ts';
import type { FloorState } from './state.ts';
import type { AiredSays } from './vocabulary.ts';
import { wantedOn } from './wanted.ts';

/** A reel that goes where its bag must be open. */
type Opened = Pick<PayloadOf<'reel.verified'>, 'act' | 'setup' | 'slot' | 'reel' | 'part'>;

/** Kinds that this fold handles. */
type ExposureEntry = EntryOf<
  | 'reel.aired'
  | 'parts.aired'
  | 'bake.approved'
  | 'reel.verified'
  | 'cart.filled'
  | 'feeder.readied'
  | 'hold.cleared'
  | 'entry.corrected'
>;

/** Applies one entry to the reels' exposure. Must see a hold before its clearing takes it away. */
export function foldExposures(state: FloorState, entry: ExposureEntry): void {
  const of = entryId(entry);
  switch (entry.kind) {
    case 'reel.aired':
      tell(state, entry.payload, { entry: of, atMs: entry.hlc.ms });
      return;
    case 'parts.aired':
      hear(state, entry);
      return;
    case 'bake.approved':
      approve(state, entry.payload, { entry: of, atMs: entry.hlc.ms });
      return;
    case 'reel.verified':
      if (entry.payload.verdict === 'accepted') open(state, entry.payload, { entry: of, atMs: entry.hlc.ms });
      return;
    case 'cart.filled':
    case 'feeder.readied':
      open(state, { ...entry.payload, act: 'load' }, { entry: of, atMs: entry.hlc.ms });
      return;
    case 'hold.cleared': {
      const hold = state.holds.get(entry.payload.of);
      if (hold) open(state, hold.facts, { entry: of, atMs: entry.hlc.ms });
      return;
    }
    case 'entry.corrected':
      takeBack(state, entry.payload.of);
      return;
    default:
      entry satisfies never;
  }
}

interface Told {
  readonly entry: string;
  readonly atMs: number;
}

function tell(state: FloorState, facts: PayloadOf<'reel.aired'>, told: Told): void {
  const { reel, air, celsius, humidity } = facts;
  const fromMs = Date.parse(facts.from);
  if (Number.isNaN(fromMs)) return;
  state.reels.set(reel, reelSeen(state, reelByLabel(facts)));
  backInUse(state, reel);
  // Nobody can tell what is still to come; a clock that runs ahead is not believed.
  const period = { air, celsius, humidity, fromMs: Math.min(fromMs, told.atMs), entry: told.entry };
  add(state, reel, facts.msl, period);
}

const airOf: Readonly<Partial<Record<AiredSays, 'floor' | 'dry'>>> = {
  opened: 'floor',
  'taken-out': 'floor',
  'put-dry': 'dry',
};

/** A machine's word counts for reels that people have told of: it may have a register of its own. How it makes reels fit again nobody knows. */
function hear(state: FloorState, entry: EntryOf<'parts.aired'>): void {
  const { says, late, reels } = entry.payload;
  const air = airOf[says];
  if (air === undefined) return;
  const fromMs = entry.hlc.ms - late * 1000;
  const period = { air, fromMs, celsius: null, humidity: null, entry: entryId(entry) };
  for (const reel of reels) {
    const known = reelOf(state, reel);
    if (!known) continue;
    state.reels.set(reel, known);
    add(state, reel, undefined, period);
  }
}

/** A reel that goes onto a slot, a cart or a feeder is out on the floor, since then at the latest. */
function open(state: FloorState, facts: Opened, told: Told): void {
  if (facts.act === 'sweep') return;
  const wanted = facts.slot === null ? null : wantedOn(state, facts.setup, facts.slot);
  const reel = facts.reel ?? nameByEntry(told.entry);
  // An alternate may have a level where the slot's own part has none.
  const parts = wanted === null ? [] : [wanted.part, facts.part ?? ''];
  const isDescribed = parts.some((part) => isLimited(state.parts.get(part)?.msl));
  if (!isLimited(wanted?.msl) && !isDescribed && !state.exposures.has(reel)) return;
  if (state.exposures.get(reel)?.periods.at(-1)?.air === 'floor') return;
  const period = {
    air: 'floor' as const,
    celsius: null,
    humidity: null,
    fromMs: told.atMs,
    entry: told.entry,
  };
  add(state, reel, undefined, period);
}

function add(state: FloorState, reel: string, msl: string | undefined, period: ExposurePeriod): void {
  const there: Exposure = state.exposures.get(reel) ?? { msl: null, periods: [] };
  // What is told later of the same moment is the newer word.
  const periods = [...there.periods, period].sort((a, b) => a.fromMs - b.fromMs);
  state.exposures.set(reel, { msl: msl ?? there.msl, periods });
}

/** A bake that nobody told of any more, or that is none, is not approved. */
function approve(state: FloorState, facts: PayloadOf<'bake.approved'>, told: Told): void {
  const exposure = state.exposures.get(facts.reel);
  if (!exposure) return;
  const approved = { ...told, by: facts.by, hours: facts.hours };
  const periods = exposure.periods.map((period) =>
    period.entry === facts.of && period.air === 'bake' ? { ...period, approved } : period,
  );
  state.exposures.set(facts.reel, { ...exposure, periods });
}

function takeBack(state: FloorState, of: string): void {
  for (const [reel, exposure] of state.exposures) {
    const periods = exposure.periods
      .filter((period) => period.entry !== of)
      .map((period) => (period.approved?.entry === of ? withoutApproval(period) : period));
    if (
      periods.length === exposure.periods.length &&
      periods.every((period, at) => period === exposure.periods[at])
    )
      continue;
    if (periods.length === 0) state.exposures.delete(reel);
    else state.exposures.set(reel, { ...exposure, periods });
  }
}

function withoutApproval({ approved: _, ...period }: ExposurePeriod): ExposurePeriod {
  return period;
}
