// A small line of the invented plant whose conveyor has two lanes: two products at once, most of their parts from the same feeders. Method: the
// panels of both lanes in the order of their moments; after each, a hand splices what is inside its window by what both lanes have taken.
// Refused: the simulation of the large line, whose hands and feeders know one product at a time.

import { formatSlot } from '../shared/floor/address.ts';
import type { SetupSlot } from '../shared/floor/kinds.ts';
import { laneLine } from '../shared/floor/lanes.ts';
import { plantDay } from '../shared/floor/plant-day.ts';
import { slotLeft } from '../shared/floor/remaining.ts';
import { slotKey } from '../shared/floor/state.ts';
import type { VerifyAct } from '../shared/floor/vocabulary.ts';
import { type Chance, chanceNormal, seededChance } from '../shared/kit/chance.ts';
import { verifyReel } from '../shared/verdict/verify.ts';
import { type DemoLog, shiftStartOf, startLog } from './log.ts';
import { familyOf, supplierPartsOf } from './parts.ts';
import { peopleOf } from './people.ts';
import { windowParts } from './placing.ts';
import { draft, lineFigures, lineRules } from './plant.ts';
import { createReelStore, type ReelStore, readSymbols } from './reels.ts';
import type { ShiftPlay, ShiftSettings } from './simulate.ts';

/** The line that has the machine; no other line of the plant has this number. */
const line = 'L1';
const tablet = 'demo0-lanes';
const machines = [
  { machine: 'M1', name: 'Placer 1', banks: [{ bank: 'F', name: 'Front', positions: 20 }] },
] as const;

/** What each lane builds. `panelSeconds`: pace; `panels`: of each run. */
const lanes = [
  {
    line,
    name: 'Line 1, lane 1',
    setup: 'stile-counter-top-A',
    product: 'Stile counter',
    panelSeconds: 36,
    panels: 900,
  },
  {
    line: laneLine(line, 2),
    name: 'Line 1, lane 2',
    setup: 'weir-gauge-top-B',
    product: 'Weir gauge',
    panelSeconds: 44,
    panels: 700,
  },
] as const;

/** A part and what a panel of each lane takes of it, in the order of the lanes; 0 = not used. One slot each, from the left. */
const parts = [
  ['10-0402-103', 16, 12],
  ['10-0402-472', 8, 10],
  ['12-0402-104', 20, 18],
  ['12-0402-220', 6, 4],
  ['10-0603-000', 3, 2],
  ['12-0603-105', 4, 8],
  ['10-0402-331', 5, 0],
  ['12-0603-104', 6, 0],
  ['10-0603-472', 0, 4],
  ['12-0603-475', 0, 6],
] as const satisfies readonly (readonly [part: string, first: number, second: number])[];

/** Between two runs of one lane, ms. */
const PAUSE_MS = 600_000;
/** Before the first run: when the line is told and loaded, ms. */
const LOADED_BEFORE_MS = 1_800_000;
/** Share of the window that a hand lets pass first, since a count may be off. */
const INTO_WINDOW = 0.3;

const slotAt = (at: number) => formatSlot({ machine: 'M1', bank: 'F', position: at + 1 });

/** The slots of one lane's setup. */
function slotsOf(lane: number): readonly SetupSlot[] {
  return parts.flatMap(([part, ...usage], at) => {
    const perPanel = usage[lane] ?? 0;
    if (perPanel === 0) return [];
    const { tapeWidthMm, pitchMm, positions, bodyMm } = familyOf(part);
    const supplierParts = [...supplierPartsOf(part)];
    return [
      {
        slot: slotAt(at),
        part,
        perPanel,
        tapeWidthMm,
        pitchMm,
        positions,
        bodyMm,
        alternates: [],
        supplierParts,
      },
    ];
  });
}

interface Lanes {
  readonly log: DemoLog;
  readonly store: ReelStore;
  readonly lead: string;
  readonly operator: string;
}

/** Opens the line, told and loaded; it is played bit by bit. The same settings give the same entries, wherever a play stops on the way. */
export function openLanesPlay({
  seed,
  startMs,
  zone = 'UTC',
  epoch,
}: Omit<ShiftSettings, 'hours'>): Pick<ShiftPlay, 'entries' | 'playTo'> {
  const chance = seededChance(seed + 104_729);
  const log = startLog({ epoch: epoch ?? `lanes-${seed}-${startMs.toString(36)}`, zone });
  const floor: Lanes = {
    log,
    // The large line beside it numbers its reels alike.
    store: createReelStore(chance, startMs, { prefix: 'R-1-' }),
    lead: peopleOf('lead')[1]?.person ?? '',
    operator: peopleOf('operator')[3]?.person ?? '',
  };
  tellLine(floor, { atMs: startMs - LOADED_BEFORE_MS, zone });
  parts.forEach(([part], at) => {
    const quantity = Math.round(familyOf(part).full * (0.3 + 0.7 * chance()));
    putReel(floor, { act: 'load', slot: slotAt(at), part, quantity, atMs: startMs - 900_000 + at * 40_000 });
  });
  const turns = lanes.map((lane, at): Turn => ({ lane, atMs: startMs + at * 90_000, runs: 0, done: 0 }));
  return {
    entries: log.entries,
    playTo: (endMs) => {
      for (;;) {
        const turn = turns.reduce((first, each) => (each.atMs < first.atMs ? each : first));
        if (turn.atMs >= endMs) return;
        playTurn(floor, chance, turn);
      }
    },
  };
}

/** How far a lane is. */
interface Turn {
  readonly lane: Lane;
  atMs: number;
  runs: number;
  /** Panels of the present run. */
  done: number;
}

/** One panel of a lane, and the end of its run after the last. */
function playTurn(floor: Lanes, chance: Chance, turn: Turn): void {
  const { lane } = turn;
  const { panelSeconds } = lane;
  if (turn.done === 0) startRun(floor, lane, turn);
  turn.atMs += Math.max(panelSeconds * 0.9, chanceNormal(chance, panelSeconds, 1.2)) * 1000;
  turn.done += 1;
  countPanel(floor, lane, turn);
  spliceRipe(floor, turn.atMs);
  if (turn.done < lane.panels) return;
  const run = runOf(lane, turn.runs);
  const ended = { run, line: lane.line, panels: turn.done, note: '' };
  floor.log.write(draft('run.ended', ended), { atMs: turn.atMs, who: floor.lead, tablet });
  turn.runs += 1;
  turn.done = 0;
  turn.atMs += PAUSE_MS;
}

type Lane = (typeof lanes)[number];

const runOf = ({ setup }: Lane, runs: number) => `run-${setup}-${runs + 1}`;

/** The engineer's entries: both lanes, the rules of the line, a setup each. */
function tellLine({ log, lead }: Lanes, from: { readonly atMs: number; readonly zone: string }): void {
  const { atMs, zone } = from;
  const engineer = { atMs, who: peopleOf('engineer')[1]?.person ?? null, tablet } as const;
  log.write(draft('tablet.opened', { name: 'Line 1', app: 'demo', key: null, previous: null }), engineer);
  for (const lane of lanes) {
    const banks = machines.map((each) => ({ ...each, banks: each.banks.map((bank) => ({ ...bank })) }));
    log.write(draft('line.defined', { line: lane.line, name: lane.name, zone, machines: banks }), engineer);
  }
  // It feeds on through the breaks.
  const rules = { ...lineRules(shiftStartOf(zone, atMs).wallMinute), line, breaks: [], feedersKnown: false };
  log.write(draft('line.ruled', rules), engineer);
  const tape = { line, trailerMm: lineFigures.trailerMm, leaderMm: null };
  log.write(draft('line.tape-ruled', tape), engineer);
  lanes.forEach(({ setup, product, line: of }, at) => {
    const [revision = 'A'] = setup.split('-').slice(-1);
    const source = `${setup}.csv`;
    const slots = slotsOf(at).map((slot) => ({ ...slot }));
    log.write(
      draft('setup.taken', { setup, product, side: 'top', revision, line: of, slots, source }),
      engineer,
    );
    log.write(draft('setup.chosen', { line: of, setup }), { ...engineer, who: lead });
  });
}

function startRun(
  { log, lead }: Lanes,
  lane: Lane,
  turn: { readonly atMs: number; readonly runs: number },
): void {
  const started = {
    run: runOf(lane, turn.runs),
    line: lane.line,
    setup: lane.setup,
    product: lane.product,
    panelsWanted: lane.panels,
    panelSeconds: lane.panelSeconds,
    panelSd: 1.2,
    panelPrefix: prefixOf(lane, turn.runs),
  };
  log.write(draft('run.started', started), { atMs: turn.atMs, who: lead, tablet });
}

const prefixOf = ({ product }: Lane, runs: number) => `${product.slice(0, 2).toUpperCase()}${2101 + runs}-`;

function countPanel(
  { log }: Lanes,
  lane: Lane,
  { atMs, runs, done }: { readonly atMs: number; readonly runs: number; readonly done: number },
): void {
  const serial = `${prefixOf(lane, runs)}${String(done).padStart(4, '0')}`;
  const counted = { run: runOf(lane, runs), line: lane.line, add: 1, panels: done, serial };
  log.write(draft('panels.counted', { ...counted, via: 'machine' }), { atMs, who: null, tablet });
}

/** A hand splices each slot that is well inside its window by the count of both lanes. */
function spliceRipe(floor: Lanes, atMs: number): void {
  const { state } = floor.log;
  for (const [at, [part]] of parts.entries()) {
    const slot = slotAt(at);
    const loaded = state.slots.get(slotKey(line, slot));
    if (!loaded) continue;
    const left = slotLeft(state, loaded, lineFigures.loss);
    if (left.parts === null || left.runningIndex < loaded.tapes.length - 1) continue;
    const { pitchMm, full } = familyOf(part);
    const { opens, closes } = windowParts(pitchMm);
    if (left.parts > opens - (opens - closes) * INTO_WINDOW) continue;
    putReel(floor, { act: 'splice', slot, part, quantity: full, atMs });
  }
}

/** Puts a new reel to the verdict and writes what it says; throws where it is not taken, a fault of the plant. */
function putReel(
  { log, store, operator }: Lanes,
  put: {
    readonly act: VerifyAct;
    readonly slot: string;
    readonly part: string;
    readonly quantity: number;
    readonly atMs: number;
  },
): void {
  const { act, slot, atMs } = put;
  const { symbols } = store.next(put.part, { quantity: put.quantity });
  const facts = readSymbols(symbols);
  const asker = lanes.find((_, at) => slotsOf(at).some((each) => each.slot === slot)) ?? lanes[0];
  const answer = verifyReel(log.state, {
    act,
    line: asker.line,
    setup: asker.setup,
    slot,
    feeder: null,
    reel: facts,
    today: plantDay(log.state, line, atMs),
    floorLife: null,
  });
  if (answer.verdict !== 'accepted')
    throw new RangeError(`Cannot load as reel must be accepted: current value is ${answer.reasons[0]?.code}`);
  const run = log.state.current.get(asker.line) ?? null;
  log.write(
    draft('reel.verified', {
      act,
      line: asker.line,
      setup: asker.setup,
      run,
      slot,
      feeder: null,
      reel: facts.reel,
      part: answer.part,
      supplierPart: facts.supplierPart,
      quantity: facts.quantity,
      lot: facts.lot,
      dateCode: facts.dateCode,
      codes: symbols.map(({ text }) => text),
      verdict: answer.verdict,
      reasons: answer.reasons.map((reason) => ({ ...reason })),
      panels: log.state.runs.get(run ?? '')?.done ?? 0,
      via: 'wedge',
      basis: 'label',
    }),
    { atMs, who: operator, tablet },
  );
}
