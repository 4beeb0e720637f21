// Where moisture-sensitive reels were, stay by stay, for their floor life: as people told, and from the log itself: whoever loads
// a reel or makes it ready on a cart has opened its bag. What is no longer told (an entry taken back) never was.

import { entryId } from '../log/entry.ts';
import { type Airing, isLimited, type Stay } from './airing.ts';
import type { EntryOf, PayloadOf } from './kinds.ts';
import { reelByLabel } from './reel-places.ts';
import type { FloorState } from './state.ts';
import { wantedOn } from './wanted.ts';

/** A reel that goes where its bag must be open. */
type Opened = Pick<PayloadOf<'reel.verified'>, 'act' | 'setup' | 'slot' | 'reel'>;

/** Kinds that this fold handles. */
type AiringEntry = EntryOf<
  'reel.aired' | 'bake.approved' | 'reel.verified' | 'cart.filled' | 'hold.cleared' | 'entry.corrected'
>;

/** Applies one entry to the reels' stays. Must see a hold before its clearing takes it away. */
export function foldAirings(state: FloorState, entry: AiringEntry): void {
  const of = entryId(entry);
  switch (entry.kind) {
    case 'reel.aired':
      tell(state, entry.payload, { entry: of, atMs: entry.hlc.ms });
      return;
    case 'bake.approved':
      approve(state, entry.payload, { entry: of, atMs: entry.hlc.ms });
      return;
    case 'reel.verified':
      if (entry.payload.verdict === 'accepted') open(state, entry.payload, { entry: of, atMs: entry.hlc.ms });
      return;
    case 'cart.filled':
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
  if (!state.reels.has(reel)) state.reels.set(reel, reelByLabel(facts));
  // Nobody can tell what is still to come; a clock that runs ahead is not believed.
  const stay = { air, celsius, humidity, fromMs: Math.min(fromMs, told.atMs), entry: told.entry };
  add(state, reel, facts.msl, stay);
}

/** A reel that goes onto a slot or a cart is out on the floor, since then at the latest. */
function open(state: FloorState, facts: Opened, told: Told): void {
  if (facts.act === 'sweep') return;
  const wanted = facts.slot === null ? null : wantedOn(state, facts.setup, facts.slot);
  const reel = facts.reel ?? `~${told.entry}`;
  const described = wanted === null ? undefined : state.parts.get(wanted.part)?.msl;
  if (!isLimited(wanted?.msl) && !isLimited(described) && !state.airings.has(reel)) return;
  if (state.airings.get(reel)?.stays.at(-1)?.air === 'floor') return;
  const stay = { air: 'floor' as const, celsius: null, humidity: null, fromMs: told.atMs, entry: told.entry };
  add(state, reel, undefined, stay);
}

function add(state: FloorState, reel: string, msl: string | undefined, stay: Stay): void {
  const there: Airing = state.airings.get(reel) ?? { msl: null, stays: [] };
  // What is told later of the same moment is the newer word.
  const stays = [...there.stays, stay].sort((a, b) => a.fromMs - b.fromMs);
  state.airings.set(reel, { msl: msl ?? there.msl, stays });
}

/** A bake that nobody told of any more, or that is none, is not approved. */
function approve(state: FloorState, facts: PayloadOf<'bake.approved'>, told: Told): void {
  const airing = state.airings.get(facts.reel);
  if (!airing) return;
  const approved = { ...told, by: facts.by, hours: facts.hours };
  const stays = airing.stays.map((stay) =>
    stay.entry === facts.of && stay.air === 'bake' ? { ...stay, approved } : stay,
  );
  state.airings.set(facts.reel, { ...airing, stays });
}

function takeBack(state: FloorState, of: string): void {
  for (const [reel, airing] of state.airings) {
    const stays = airing.stays
      .filter((stay) => stay.entry !== of)
      .map((stay) => (stay.approved?.entry === of ? withoutApproval(stay) : stay));
    if (stays.length === airing.stays.length && stays.every((stay, at) => stay === airing.stays[at]))
      continue;
    if (stays.length === 0) state.airings.delete(reel);
    else state.airings.set(reel, { ...airing, stays });
  }
}

function withoutApproval({ approved: _, ...stay }: Stay): Stay {
  return stay;
}
