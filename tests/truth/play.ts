// Plays shifts on a line by chance: loads, splices, run-outs, wrong reels, holds cleared, reels moved, counted and swapped, scans lost and
// doubled, counts typed late or taken back, boards skipped, panels scrapped, runs that end and go on. Writes what an honest floor would
// write, and keeps the truth.

import { type Chance, chanceBelow, chanceNormal, seededChance } from '../../shared/kit/chance.ts';
import type { Entry } from '../../shared/log/entry.ts';
import { type Belt, createBelt, newReel, type Panel, type Reel, type Slot } from './belt.ts';
import { saidSkips, skippedBoards, usedBoards } from './boards.ts';
import { createWriter, type Writer } from './writer.ts';

/** A panel as it was counted; `isReal` false where the count was taken back. */
export interface Counted {
  readonly panel: Panel | null;
  isReal: boolean;
}

/** A reel that should not have been on its slot, and how it was found out. */
export interface Wrong {
  readonly reel: string;
  readonly slot: string;
  /** The verdict that found it, or the entry that put it on. */
  readonly entry: string;
  readonly how: 'found' | 'cleared';
  /** The epoch of the slot in which it stood there. */
  readonly epoch: number;
}

export interface Truth {
  /** Run -> panels in the order in which they were counted. */
  readonly runs: ReadonlyMap<string, readonly Counted[]>;
  /** Run -> slots from which its setup places. */
  readonly slots: ReadonlyMap<string, readonly string[]>;
  readonly wrongs: readonly Wrong[];
  /** True where the panels' codes were scanned. */
  readonly isScanned: boolean;
}

const LINE = 'L1';
const PITCH_MM = 4;

interface World {
  readonly chance: Chance;
  readonly writer: Writer;
  readonly belt: Belt;
  readonly share: number;
  readonly window: { readonly opens: number; readonly closes: number } | null;
  readonly mode: 'scan' | 'tap' | 'batch';
  readonly lost: number;
  /** Boards on a panel; 1 where the setup does not say. */
  readonly boards: number;
  /** The share of counts that say which boards were skipped. */
  readonly says: number;
  readonly runs: Map<string, Counted[]>;
  readonly wrongs: Wrong[];
  /** Wrong reels on slots: slot -> reel, not yet found. */
  readonly hidden: Map<string, Reel>;
  /** Reels off the line that can come back: what the log knows of them. */
  readonly shelf: { readonly reel: Reel; readonly quantity: number }[];
  /** What the log has on each slot, newest last. */
  readonly logged: Map<string, Reel[]>;
  run: string;
  setup: string;
  isEnded: boolean;
  pending: Panel[];
  reels: number;
  panels: number;
}

const between = (chance: Chance, low: number, high: number) => low + chanceBelow(chance, high - low + 1);
const happens = (world: World, share: number) => world.chance() < share;

/** Plays one seed. */
export function playShift(seed: number): { readonly entries: readonly Entry[]; readonly truth: Truth } {
  const world = buildWorld(seed);
  const slots = new Map<string, readonly string[]>();
  const runs = between(world.chance, 1, 3);
  for (const slot of world.belt.slots) loadNew(world, slot);
  for (let number = 1; number <= runs; number++) {
    startRun(world, number);
    slots.set(
      world.run,
      world.belt.slots.map((slot) => slot.name),
    );
    buildPanels(world, between(world.chance, 20, 90));
    const goesOn = number < runs && happens(world, 0.5);
    endRun(world, goesOn);
  }
  for (const slot of world.belt.slots) sweep(world, slot);
  const { entries } = world.writer;
  return {
    entries,
    truth: { runs: world.runs, slots, wrongs: world.wrongs, isScanned: world.mode === 'scan' },
  };
}

function buildWorld(seed: number): World {
  const chance = seededChance(seed * 7919 + 13);
  const boards = chance() < 0.4 ? between(chance, 2, 8) : 1;
  const how = chance();
  const isAlike = how < 0.5;
  const isHidden = boards > 1 && how > 0.85;
  const writer = createWriter();
  const machines = Array.from({ length: between(chance, 1, 3) }, (_, at) => ({
    name: `M${at + 1}`,
    room: between(chance, 1, 2),
    slots: Array.from({ length: between(chance, 1, 3) }, (__, place): Slot => {
      const used = usedBoards(chance, boards, { isAlike, isOdd: at === 0 && place === 0, isHidden });
      return {
        name: `M${at + 1}-F-00${place + 1}`,
        machine: `M${at + 1}`,
        tapes: [],
        epoch: 0,
        perPanel: used.length,
        boards: used,
        loss: chance() < 0.1 ? 0.07 : chance() * 0.02,
      };
    }),
  }));
  const skips = boards > 1 ? chance() * 0.4 : 0;
  let panels = 0;
  const belt = createBelt(
    { machines, countAt: between(chance, 0, machines.length), countRoom: between(chance, 1, 8) },
    chance,
    () => {
      panels += 1;
      const skipped = skippedBoards(chance, boards, skips);
      return { code: `P${seed}-${panels}`, skipped, carries: new Map(), epochs: new Map() };
    },
  );
  const isLong = chance() < 0.6;
  const window = isLong ? { opens: between(chance, 90, 250), closes: between(chance, 20, 80) } : null;
  const mode = (['scan', 'scan', 'tap', 'batch'] as const)[chanceBelow(chance, 4)] ?? 'scan';
  const isRuled = chance() < 0.75;
  const missed = chance() < 0.5 ? 0 : 0.02;
  const world: World = {
    chance,
    writer,
    belt,
    window,
    mode,
    run: '',
    setup: '',
    isEnded: true,
    pending: [],
    reels: 0,
    panels: 0,
    share: 0.0025,
    boards,
    says: [0, 0.5, 0.95, 1][chanceBelow(chance, 4)] ?? 1,
    lost: isRuled ? missed * chance() : 0,
    runs: new Map(),
    wrongs: [],
    hidden: new Map(),
    shelf: [],
    logged: new Map(),
  };
  tellLine(world, machines);
  if (isRuled)
    writer.write('line.panels-ruled', {
      line: LINE,
      machines: machines.map(({ name }) => ({ machine: name, ...belt.range(name) })),
      missed,
    });
  return world;
}

function tellLine(
  world: World,
  machines: readonly { readonly name: string; readonly slots: readonly Slot[] }[],
): void {
  const { writer, window } = world;
  writer.write('line.defined', {
    line: LINE,
    name: 'Line',
    zone: 'UTC',
    machines: machines.map(({ name }) => ({
      machine: name,
      name,
      banks: [{ bank: 'F', name: 'front', positions: 10 }],
    })),
  });
  writer.write('line.ruled', {
    line: LINE,
    leadSeconds: 600,
    walkSeconds: 60,
    spliceSeconds: 60,
    loss: 0.003,
    feedersKnown: false,
    hubToPickMm: window ? window.opens * PITCH_MM : null,
    intakeToPickMm: window ? window.closes * PITCH_MM : null,
    shifts: [],
    breaks: [],
    stops: [],
    comparison: { ignoreCase: false, ignoreSpaces: false, ignoreDashes: false, packingSuffixes: [] },
  });
  for (const setup of ['one', 'two'])
    writer.write('setup.taken', {
      setup,
      product: setup,
      side: 'top',
      revision: 'A',
      ...(world.boards > 1 ? { boardsPerPanel: world.boards } : {}),
      line: LINE,
      source: 'sheet',
      slots: world.belt.slots.map((slot) => ({
        slot: slot.name,
        part: partOf(slot),
        perPanel: slot.perPanel,
        tapeWidthMm: 8,
        pitchMm: PITCH_MM,
        positions: 1,
        alternates: [],
        supplierParts: [],
      })),
    });
}

const partOf = (slot: Slot) => `PART-${slot.name}`;
const doneOf = (world: World) => (world.runs.get(world.run) ?? []).filter((each) => each.isReal).length;

function makeReel(world: World, slot: Slot, panels: number): Reel {
  world.reels += 1;
  const label = Math.max(slot.perPanel * 3, Math.round(slot.perPanel * panels));
  const least = world.window ? world.window.opens + 40 : 0;
  return newReel(`R${world.reels}`, `LOT${world.reels}`, label + least, world.share, world.chance);
}

function verified(world: World, slot: Slot, reel: Reel, more: object = {}): object {
  return {
    act: 'load',
    line: LINE,
    setup: world.setup || 'one',
    run: world.isEnded ? null : world.run,
    slot: slot.name,
    feeder: null,
    reel: reel.id,
    part: partOf(slot),
    supplierPart: null,
    quantity: reel.label,
    lot: reel.lot,
    dateCode: null,
    codes: [],
    verdict: 'accepted',
    reasons: [],
    panels: doneOf(world),
    via: 'wedge',
    basis: 'label',
    ...more,
  };
}

function loadNew(world: World, slot: Slot): void {
  const back = world.shelf.findIndex((each) => each.reel.id.endsWith(`@${slot.name}`));
  const shelved = back >= 0 && happens(world, 0.5) ? world.shelf.splice(back, 1)[0] : undefined;
  if (shelved) {
    const facts = { quantity: shelved.quantity, basis: 'weighed' };
    world.writer.write('reel.verified', verified(world, slot, shelved.reel, facts));
    put(world, slot, shelved.reel);
    return;
  }
  const made = makeReel(world, slot, between(world.chance, 10, 50));
  const reel = { ...made, id: `${made.id}@${slot.name}` };
  if (happens(world, 0.1)) loadHeld(world, slot, reel);
  else {
    world.writer.write('reel.verified', verified(world, slot, reel));
    put(world, slot, reel);
  }
}

function put(world: World, slot: Slot, reel: Reel): void {
  slot.tapes = [reel];
  slot.epoch += 1;
  world.logged.set(slot.name, [reel]);
}

/** A reel is held, and put on before or after a lead clears it; sometimes the lead was wrong. */
function loadHeld(world: World, slot: Slot, reel: Reel): void {
  const reasons = [{ code: 'no-quantity' }];
  const held = world.writer.write('reel.verified', verified(world, slot, reel, { verdict: 'held', reasons }));
  const isEarly = happens(world, 0.5);
  if (isEarly) slot.tapes = [reel];
  // The rest of the line goes on meanwhile.
  goOn(world, 30);
  const cleared = world.writer.write('hold.cleared', {
    of: held,
    line: LINE,
    slot: slot.name,
    reason: 'seen',
    by: 'lead',
    checked: 'tablet',
  });
  if (!isEarly) slot.tapes = [reel];
  slot.epoch += 1;
  world.logged.set(slot.name, [reel]);
  if (happens(world, 0.5))
    world.wrongs.push({ reel: reel.id, slot: slot.name, entry: cleared, how: 'cleared', epoch: slot.epoch });
}

function unload(world: World, slot: Slot, quantity: number | null, sd = 0): void {
  const reel = world.logged.get(slot.name)?.at(-1);
  world.writer.write('reel.unloaded', {
    line: LINE,
    run: world.isEnded ? null : world.run,
    slot: slot.name,
    feeder: null,
    reel: reel?.id ?? null,
    part: partOf(slot),
    lot: reel?.lot ?? null,
    quantity,
    ...(quantity === null ? { basis: null } : { basis: 'weighed', sd }),
    panels: doneOf(world),
    via: 'wedge',
  });
  slot.tapes = [];
  slot.epoch += 1;
  world.logged.delete(slot.name);
}

const otherThan = (setup: string) => (setup === 'one' ? 'two' : 'one');

function startRun(world: World, number: number): void {
  // Another product waits till the line is empty.
  const setup =
    number === 1 ? 'one' : world.belt.isClear() && happens(world, 0.5) ? otherThan(world.setup) : world.setup;
  world.setup = setup;
  world.run = `run-${number}`;
  world.isEnded = false;
  world.runs.set(world.run, []);
  world.writer.write('run.started', {
    run: world.run,
    line: LINE,
    setup,
    product: setup,
    panelsWanted: 500,
    panelSeconds: 30,
    panelSd: 0,
    panelPrefix: null,
  });
}

/** Ends a run: the line goes on, or it is emptied first, or its last panels are counted after the end. */
function endRun(world: World, goesOn: boolean): void {
  const isEmptied = !goesOn && happens(world, 0.6);
  if (isEmptied) empty(world);
  flush(world);
  world.writer.write('run.ended', { run: world.run, line: LINE, panels: doneOf(world), note: '' });
  world.isEnded = true;
  if (goesOn) {
    for (const slot of world.belt.slots)
      if (happens(world, 0.1) && !world.hidden.has(slot.name)) exchange(world, slot);
    return;
  }
  if (!isEmptied) {
    // Tablets that have not heard of the end go on counting.
    empty(world);
    flush(world);
  }
}

function empty(world: World): void {
  for (let step = 0; step < 200_000 && !world.belt.isClear(); step++) {
    moveBelt(world, false);
    if (happens(world, 0.001)) handsAct(world);
  }
}

function buildPanels(world: World, panels: number): void {
  const until = world.panels + panels;
  for (let step = 0; step < 400_000 && world.panels < until; step++) {
    moveBelt(world, true);
    if (happens(world, 0.02)) handsAct(world);
  }
}

function moveBelt(world: World, feeds: boolean): void {
  world.writer.pass(0.5);
  const step = world.belt.step(feeds);
  if (step.is === 'counted') count(world, step.panel);
  else if (step.is === 'empty') runOut(world, step.slot);
}

/** The line goes on while hands are busy with something else, until a machine stands. */
function goOn(world: World, most: number): void {
  for (let step = chanceBelow(world.chance, most); step > 0; step--) {
    const moved = world.belt.step(!world.isEnded);
    if (moved.is === 'counted') count(world, moved.panel);
    else if (moved.is === 'empty') return;
  }
}

function count(world: World, panel: Panel): void {
  world.panels += 1;
  if (world.mode === 'batch') {
    world.pending.push(panel);
    if (world.pending.length >= 25 || happens(world, 0.15)) flush(world);
    return;
  }
  if (world.mode === 'scan' && happens(world, world.lost)) return;
  const code = world.mode === 'scan' ? panel.code : null;
  const again = () => tellCount(world, [panel], code, happens(world, 0.5) ? 'A' : 'B');
  again();
  world.runs.get(world.run)?.push({ panel, isReal: true });
  if (code !== null && happens(world, 0.05)) again();
  if (code === null && happens(world, 0.02)) countTwice(world);
  // A scrapped panel took its parts and was counted like any other.
  if (happens(world, 0.03)) scrap(world, code);
}

function scrap(world: World, serial: string | null): void {
  const scrapped = { run: world.run, line: LINE, panels: 1, serial, note: 'cracked', via: 'typed' };
  world.writer.write('panels.scrapped', scrapped);
}

/** Somebody taps once too often, and takes it back a little later. */
function countTwice(world: World): void {
  const counted: Counted = { panel: null, isReal: true };
  const of = tellCount(world, [null], null, 'A');
  world.runs.get(world.run)?.push(counted);
  const run = world.run;
  if (happens(world, 0.5)) goOn(world, 200);
  world.writer.write('entry.corrected', { of, line: LINE, slot: null, reason: `twice in ${run}` });
  counted.isReal = false;
}

function tellCount(
  world: World,
  counted: readonly (Panel | null)[],
  serial: string | null,
  tablet: string,
): string {
  const add = counted.length;
  const panels = doneOf(world) + add;
  const via = serial === null ? 'typed' : 'wedge';
  return world.writer.write(
    'panels.counted',
    { run: world.run, line: LINE, add, panels, serial, via, ...saidSkips(world, counted) },
    tablet,
  );
}

function flush(world: World): void {
  if (world.pending.length === 0) return;
  tellCount(world, world.pending, null, 'A');
  world.runs.get(world.run)?.push(...world.pending.map((panel) => ({ panel, isReal: true })));
  world.pending = [];
}

function runOut(world: World, slot: Slot): void {
  if (world.hidden.has(slot.name)) {
    find(world, slot);
    return;
  }
  unload(world, slot, happens(world, 0.5) ? 0 : null);
  loadNew(world, slot);
}

/** Hands do one thing on one slot. */
function handsAct(world: World): void {
  const slot = world.belt.slots[chanceBelow(world.chance, world.belt.slots.length)];
  if (!slot) return;
  const dice = world.chance();
  if (world.hidden.has(slot.name)) {
    if (dice < 0.2) sweep(world, slot);
    return;
  }
  if (dice < 0.06) sweep(world, slot);
  else if (dice < 0.09) exchange(world, slot);
  else if (dice < 0.11) swapUnseen(world, slot);
  else if (dice < 0.13) spliceWrongSlot(world, slot);
  else if (dice < 0.15) recount(world, slot);
  else splice(world, slot);
}

function splice(world: World, slot: Slot): void {
  const [running, ...others] = slot.tapes;
  if (!running || others.length > 0 || world.isEnded) return;
  const { window } = world;
  const mayNow = window
    ? running.left >= window.closes && running.left <= window.opens
    : running.left > 0 && running.left < slot.perPanel * 12;
  if (!mayNow) return;
  const made = makeReel(world, slot, between(world.chance, 10, 50));
  const reel = { ...made, id: `${made.id}@${slot.name}` };
  const spare = running.left - (window?.closes ?? 1);
  const cut = spare > 4 && happens(world, 0.3) ? between(world.chance, 1, Math.min(spare, 20)) : 0;
  const facts = { act: 'splice', ...(cut > 0 ? { cut } : {}) };
  world.writer.write('reel.verified', verified(world, slot, reel, facts));
  running.left -= cut;
  slot.tapes.push(reel);
  world.logged.set(slot.name, [...(world.logged.get(slot.name) ?? []), reel]);
}

/** A reel comes off before it is empty, weighed or not, and another goes on. */
function exchange(world: World, slot: Slot): void {
  const [running, ...others] = slot.tapes;
  if (!running || others.length > 0) return;
  const sd = Math.max(1, running.left * 0.01);
  const weighed = Math.max(0, Math.round(chanceNormal(world.chance, running.left, sd)));
  const isWeighed = happens(world, 0.7);
  unload(world, slot, isWeighed ? weighed : null, sd);
  if (isWeighed && weighed > 0) world.shelf.push({ reel: { ...running, label: weighed }, quantity: weighed });
  loadNew(world, slot);
}

function recount(world: World, slot: Slot): void {
  const [running, ...others] = slot.tapes;
  if (!running || others.length > 0 || world.isEnded) return;
  const sd = Math.max(1, running.left * 0.01);
  const quantity = Math.max(0, Math.round(chanceNormal(world.chance, running.left, sd)));
  world.writer.write('reel.counted', {
    line: LINE,
    slot: slot.name,
    reel: running.id,
    part: partOf(slot),
    lot: running.lot,
    quantity,
    sd,
    basis: 'weighed',
    panels: doneOf(world),
  });
}

/** A splice is written for a slot where nothing was done, and taken back. */
function spliceWrongSlot(world: World, slot: Slot): void {
  if (slot.tapes.length !== 1 || world.isEnded) return;
  const made = makeReel(world, slot, 30);
  const of = world.writer.write('reel.verified', verified(world, slot, made, { act: 'splice' }));
  goOn(world, 60);
  world.writer.write('entry.corrected', { of, line: LINE, slot: slot.name, reason: 'wrong slot' });
}

/** Somebody puts another reel on and tells nobody. */
function swapUnseen(world: World, slot: Slot): void {
  if (slot.tapes.length !== 1 || world.isEnded) return;
  const made = makeReel(world, slot, between(world.chance, 10, 40));
  const wrong = { ...made, id: `X${made.id}`, lot: `X${made.lot}` };
  slot.tapes = [wrong];
  world.hidden.set(slot.name, wrong);
}

/** The label on the slot is read again. */
function sweep(world: World, slot: Slot): void {
  if (world.hidden.has(slot.name)) {
    find(world, slot);
    return;
  }
  const reel = slot.tapes.at(-1);
  if (!reel || slot.tapes.length !== 1) return;
  world.writer.write('reel.verified', verified(world, slot, reel, { act: 'sweep' }));
  slot.epoch += 1;
}

/** A wrong reel is found, comes off, and the right part goes on. */
function find(world: World, slot: Slot): void {
  const wrong = world.hidden.get(slot.name);
  if (!wrong) return;
  const entry = world.writer.write(
    'reel.verified',
    verified(world, slot, wrong, {
      act: 'sweep',
      verdict: 'refused',
      part: 'OTHER',
      reasons: [{ code: 'not-the-loaded-reel' }],
    }),
  );
  world.wrongs.push({ reel: wrong.id, slot: slot.name, entry, how: 'found', epoch: slot.epoch });
  world.hidden.delete(slot.name);
  unload(world, slot, null);
  loadNew(world, slot);
}
