// A shift that plays: a seeded simulation of the invented line that writes the app's own log. Method: panel by panel; between
// panels the hands' agenda moves on. The log knows labels and counts; the truth beside it knows tapes, losses and windows.

import type { StopReason } from '../shared/floor/vocabulary.ts';
import { chanceNormal, seededChance } from '../shared/kit/chance.ts';
import type { Entry } from '../shared/log/entry.ts';
import { createAgenda } from './agenda.ts';
import { feeders } from './feeders.ts';
import { changesFor, type Floor, loadSlot, shareOut, shiftHands, unloadSlot } from './hands.ts';
import { demoTablets, shiftStartOf, startLog } from './log.ts';
import { pasteOf } from './paste.ts';
import { peopleOf } from './people.ts';
import { placesOf } from './places.ts';
import { type Picking, placeParts } from './placing.ts';
import { breakSpans, draft, plantDrafts, shiftMinutes, storeDrafts } from './plant.ts';
import { type SplicePolicy, spliceByCount } from './policy.ts';
import { createReelStore } from './reels.ts';
import { lineId, products } from './setups.ts';
import { reloadDry, startWalk } from './walks.ts';
import { emptyTruth, type ShiftTruth, startQuantity } from './world.ts';

/** What a simulated shift is made from. */
export interface ShiftSettings {
  readonly seed: number;
  /** Hours from the start of the first run on. */
  readonly hours: number;
  /** When the first run starts, ms since 1970. The plant is set up and loaded in the two hours before. */
  readonly startMs: number;
  /** IANA zone of the plant; default UTC. */
  readonly zone?: string;
  /** Whom the hands obey; default `spliceByCount`. */
  readonly policy?: SplicePolicy;
  /** Names this life of the demo's tablets; default from seed and start. */
  readonly epoch?: string;
  /** A jar of paste is on the stencil as the first run starts; default none. */
  readonly paste?: boolean;
}

/** A shift as the log has it, and as it truly was. */
export interface SimulatedShift {
  readonly entries: readonly Entry[];
  readonly truth: ShiftTruth;
}

/** Working seconds a panel, and one panel's standard deviation. */
export const panelSeconds = 30;
export const panelSd = 1.2;
/** Panels wanted of each job, in the order of `products`; the jobs come round again. */
export const jobPanels = [720, 480, 600] as const;
/** Mean working seconds between two stops that nobody plans. */
const SECONDS_BETWEEN_STOPS = 4500;
/** Share of reels in the first kit whose date has passed. */
const EXPIRED = 0.015;
/** Seconds that one act at a slot takes when a line is loaded or changed over. */
const LOAD_SECONDS = 34;
const UNLOAD_SECONDS = 16;

interface Shift extends Floor {
  readonly policy: SplicePolicy;
  readonly inHand: Set<string>;
  /** When a shift of the plant began, ms since 1970. */
  readonly shiftStartMs: number;
  nowMs: number;
}

/** A shift that is played bit by bit. */
export interface ShiftPlay extends SimulatedShift {
  /** Plays on to a moment, ms since 1970: `entries` then has all that is written before it, and of what it ended in the midst of the rest. */
  readonly playTo: (endMs: number) => void;
}

/** Plays a shift. The same settings give the same entries and the same truth. Cost: about a second for eight hours. */
export function simulateShift(settings: ShiftSettings): SimulatedShift {
  const { entries, truth, playTo } = openShiftPlay(settings);
  playTo(settings.startMs + settings.hours * 3_600_000);
  return { entries, truth };
}

/** Opens a shift whose line is loaded; where a play stops on the way changes nothing of what is played. */
export function openShiftPlay(settings: Omit<ShiftSettings, 'hours'>): ShiftPlay {
  const shift = openShift(settings);
  if (settings.paste) putPasteOn(shift, settings.startMs);
  loadLine(shift, settings.startMs);
  const steps = playSteps(shift);
  return {
    entries: shift.log.entries,
    truth: shift.world.truth,
    playTo: (endMs) => {
      while (shift.nowMs < endMs && !steps.next().done);
    },
  };
}

/** The jobs one after the other, for ever. At each step all is written that happened up to `nowMs`. */
function* playSteps(shift: Shift): Generator<undefined, never> {
  for (let job = 0; ; job += 1) {
    yield* playJob(shift, job);
    yield;
    changeOver(shift, job + 1);
    yield;
  }
}

function openShift(settings: Omit<ShiftSettings, 'hours'>): Shift {
  const { seed, startMs, zone = 'UTC' } = settings;
  const chance = seededChance(seed);
  const log = startLog({ epoch: settings.epoch ?? `shift-${seed}-${startMs.toString(36)}`, zone });
  const { fromMs: shiftStartMs, wallMinute: shiftStart } = shiftStartOf(zone, startMs);
  const openMs = startMs - 2 * 3_600_000;
  for (const tablet of demoTablets) {
    const name = tablet === 'demo0-line' ? 'Line 2' : 'Store';
    const opened = draft('tablet.opened', { name, app: 'demo', key: null, previous: null });
    log.write(opened, { atMs: openMs, who: null, tablet });
  }
  const engineer = peopleOf('engineer')[0]?.person ?? null;
  for (const one of plantDrafts({ zone, shiftStart })) {
    log.write(one, { atMs: openMs, who: log.state.people.has(engineer ?? '') ? engineer : null });
  }
  const handler = peopleOf('operator')[2]?.person ?? '';
  for (const one of storeDrafts()) log.write(one, { atMs: openMs, who: handler, tablet: 'demo0-store' });
  return {
    world: {
      chance,
      store: createReelStore(chance, startMs),
      slots: new Map(),
      stock: new Map(),
      freeFeeders: [...feeders],
      losses: new Map(),
      truth: emptyTruth(),
    },
    log,
    agenda: createAgenda(),
    hands: shiftHands(),
    lead: peopleOf('lead')[0]?.person ?? '',
    handler,
    setup: products[0].setup,
    run: null,
    panels: 0,
    policy: settings.policy ?? spliceByCount,
    inHand: new Set<string>(),
    shiftStartMs,
    nowMs: openMs,
  };
}

/** The plant's sheet of its paste, and the jar that is thawed, open and on the stencil before the line is loaded. Its hours end within the first run. */
function putPasteOn(shift: Shift, startMs: number): void {
  const { log, handler } = shift;
  const by = { atMs: startMs - 6_600_000, who: handler, tablet: 'demo0-store' as const };
  const { jar, paste, lot, sheet, told } = pasteOf(startMs);
  const engineer = peopleOf('engineer')[0]?.person ?? null;
  log.write(draft('paste.ruled', sheet), { atMs: by.atMs, who: engineer });
  log.write(draft('jar.known', { jar, paste, lot, expires: null, via: 'wedge' }), by);
  for (const { says, fromMs } of told) {
    const from = new Date(fromMs).toISOString();
    const line = says === 'on' ? lineId : null;
    log.write(draft('jar.told', { jar, says, from, line, lot, via: 'wedge' }), by);
  }
}

/** The end of the break that a moment lies in; null where it lies in none. A break lies within one shift. */
function breakEnd({ shiftStartMs, nowMs }: Shift): number | null {
  const shiftMs = shiftMinutes * 60_000;
  const beganMs = shiftStartMs + Math.floor((nowMs - shiftStartMs) / shiftMs) * shiftMs;
  for (const { from, minutes } of breakSpans) {
    const fromMs = beganMs + from * 60_000;
    const toMs = fromMs + minutes * 60_000;
    if (fromMs <= nowMs && nowMs < toMs) return toMs;
  }
  return null;
}

/** Signs the hands in, chooses the first setup and loads it before the run starts. */
function loadLine(shift: Shift, startMs: number): void {
  const { log, world } = shift;
  const wanted = placesOf(log.state, shift.setup).filter((slot) => slot.perPanel > 0);
  const fromMs = startMs - 600_000 - (wanted.length * LOAD_SECONDS * 1000 * 1.1) / shift.hands.length;
  for (const person of [shift.lead, shift.handler, ...shift.hands.map((hand) => hand.person)]) {
    const tablet = person === shift.handler ? 'demo0-store' : 'demo0-line';
    log.write(draft('person.signed-in', { person, how: 'badge-and-pin', checked: 'tablet' }), {
      atMs: fromMs,
      who: person,
      tablet,
    });
  }
  log.write(draft('setup.chosen', { line: lineId, setup: shift.setup }), { atMs: fromMs, who: shift.lead });
  const loads = wanted.map((slot) => (by: { who: string; atMs: number }) => {
    const quantity = startQuantity(world.chance, slot);
    loadSlot(shift, slot, { ...by, quantity, expired: world.chance() < EXPIRED });
  });
  shareOut(shift, loads, { fromMs, seconds: LOAD_SECONDS });
  shift.agenda.advance(startMs);
  shift.nowMs = startMs;
}

/** Builds one job; a step between any two panels. */
function* playJob(shift: Shift, job: number): Generator<undefined, void> {
  const product = products[job % products.length] ?? products[0];
  const wanted = jobPanels[job % jobPanels.length] ?? 500;
  const run = `run-${job + 1}`;
  const prefix = `${product.product.slice(0, 2).toUpperCase()}${4471 + job}-`;
  shift.run = run;
  shift.panels = 0;
  shift.log.write(
    draft('run.started', {
      run,
      line: lineId,
      setup: product.setup,
      product: product.product,
      panelsWanted: wanted,
      panelSeconds,
      panelSd,
      panelPrefix: prefix,
    }),
    { atMs: shift.nowMs, who: shift.lead },
  );
  while (shift.panels < wanted) {
    yield;
    playPanel(shift, prefix);
  }
  shift.agenda.advance(shift.nowMs);
  const ended = draft('run.ended', { run, line: lineId, panels: shift.panels, note: '' });
  shift.log.write(ended, { atMs: shift.nowMs, who: shift.lead });
  shift.run = null;
}

/** One panel: what stops the line first, then its picks, then the count. */
function playPanel(shift: Shift, prefix: string): void {
  const { world, agenda, log } = shift;
  const pauseEndMs = breakEnd(shift);
  if (pauseEndMs !== null) stopLine(shift, 'break', { slot: null, resumeMs: () => pauseEndMs });
  if (world.chance() < panelSeconds / SECONDS_BETWEEN_STOPS) {
    const jam = world.chance() < 0.7;
    const seconds = jam ? 60 + 240 * world.chance() : 120 + 420 * world.chance();
    stopLine(shift, jam ? 'jam' : 'no-boards', { slot: null, resumeMs: (fromMs) => fromMs + seconds * 1000 });
  }
  // A panel now and then waits for a mark to be read again: the law has a long right side.
  const hesitation = world.chance() < 0.03 ? 10 * world.chance() : 0;
  const seconds =
    Math.max(panelSeconds * 0.9, chanceNormal(world.chance, panelSeconds, panelSd)) + hesitation;
  pickPanel(shift, seconds);
  agenda.advance(shift.nowMs);
  shift.panels += 1;
  const serial = `${prefix}${String(shift.panels).padStart(4, '0')}`;
  log.write(
    draft('panels.counted', {
      run: shift.run ?? '',
      line: lineId,
      add: 1,
      panels: shift.panels,
      serial,
      via: 'machine',
    }),
    { atMs: shift.nowMs, who: null },
  );
  world.truth.panelEndsMs.push(shift.nowMs);
  sendHands(shift);
}

/** All picks of a panel; where a slot is dry the line stands until it is loaded anew. Moves the clock to the panel's end. */
function pickPanel(shift: Shift, seconds: number): void {
  const { world } = shift;
  const pickingFrom = (fromMs: number): Picking => ({
    chance: world.chance,
    truth: world.truth,
    run: shift.run ?? '',
    panels: shift.panels,
    fromMs,
    toMs: fromMs + seconds * 1000,
  });
  let picking = pickingFrom(shift.nowMs);
  for (const slot of [...world.slots.keys()]) {
    let wanted = world.slots.get(slot)?.wanted.perPanel ?? 0;
    while (wanted > 0) {
      const there = world.slots.get(slot);
      const dry = there ? placeParts(there, wanted, picking) : null;
      if (!dry) break;
      wanted = dry.lacking;
      shift.nowMs = Math.max(shift.nowMs, dry.atMs);
      const stoppedMs = shift.nowMs;
      stopLine(shift, 'run-out', {
        slot,
        resumeMs: (atMs) => reloadDry(shift, slot, { atMs, inHand: shift.inHand, panelSeconds }),
      });
      // The rest of the panel is placed as much later as the line stood.
      picking = pickingFrom(picking.fromMs + shift.nowMs - stoppedMs);
    }
  }
  shift.nowMs = picking.toMs;
}

/** Stops the line, lets the hands go on, and starts it again. */
function stopLine(
  shift: Shift,
  reason: StopReason & ShiftTruth['stops'][number]['reason'],
  how: { readonly slot: string | null; readonly resumeMs: (fromMs: number) => number },
): void {
  const { log, agenda } = shift;
  const run = shift.run ?? '';
  const fromMs = shift.nowMs;
  agenda.advance(fromMs);
  const stopped = draft('run.stopped', { run, line: lineId, reason, note: how.slot ?? '' });
  log.write(stopped, { atMs: fromMs, who: shift.hands[0]?.person ?? null });
  const toMs = how.resumeMs(fromMs);
  agenda.advance(toMs);
  log.write(draft('run.resumed', { run, line: lineId }), { atMs: toMs, who: shift.hands[0]?.person ?? null });
  shift.world.truth.stops.push({ reason, slot: how.slot, fromMs, toMs });
  shift.nowMs = toMs;
}

/** Asks the policy who walks now. */
function sendHands(shift: Shift): void {
  const free = shift.hands.filter((hand) => hand.freeMs <= shift.nowMs);
  if (free.length === 0) return;
  const walks = shift.policy({
    nowMs: shift.nowMs,
    state: shift.log.state,
    line: lineId,
    run: shift.run ?? '',
    setup: shift.setup,
    panelSeconds,
    inHand: shift.inHand,
    freeHands: free.length,
  });
  walks.slice(0, free.length).forEach((slots, index) => {
    const hand = free[index];
    if (!hand || slots.length === 0) return;
    startWalk(shift, hand, { slots, nowMs: shift.nowMs, inHand: shift.inHand, panelSeconds });
  });
}

/** Takes the next job's setup onto the line. */
function changeOver(shift: Shift, job: number): void {
  const product = products[job % products.length] ?? products[0];
  // Whoever is on a walk comes back first.
  while (shift.hands.some((hand) => hand.freeMs === Number.POSITIVE_INFINITY)) {
    shift.nowMs += 15_000;
    shift.agenda.advance(shift.nowMs);
  }
  shift.inHand.clear();
  for (const hand of shift.hands) hand.freeMs = Math.min(hand.freeMs, shift.nowMs);
  shift.setup = product.setup;
  shift.log.write(draft('setup.chosen', { line: lineId, setup: product.setup }), {
    atMs: shift.nowMs,
    who: shift.lead,
  });
  const { off, on } = changesFor(shift, product.setup);
  const offs = off.map(
    (slot) => (by: { who: string; atMs: number }) => unloadSlot(shift, slot, { ...by, empty: false }),
  );
  shift.nowMs = shareOut(shift, offs, { fromMs: shift.nowMs, seconds: UNLOAD_SECONDS });
  const ons = on.map((slot) => (by: { who: string; atMs: number }) => loadSlot(shift, slot, by));
  shift.nowMs = shareOut(shift, ons, { fromMs: shift.nowMs, seconds: LOAD_SECONDS });
  // The first panel is looked over before the run.
  shift.nowMs += 300_000;
  shift.agenda.advance(shift.nowMs);
}
