// A floor to practise on: what a line is and has at this moment, told anew as entries of a log of their own. Copied is what a person meets there:
// the line, its rules and setups, the people, what stands on the slots, the run. No history: a copy of entries would carry the real ones' names.
// Refused: going on from a copy of the folded state, which a log without these entries could neither show nor trace.

import { chunksOf } from '../kit/chunks.ts';
import { panelsToGo } from './building.ts';
import type { EntryKind, PayloadOf, SetupSlot } from './kinds.ts';
import { standingAt } from './lanes.ts';
import { partByMakers, productAndPart } from './maker-lists.ts';
import { blocksForPractice } from './practice-blocks.ts';
import { hasOwnId, ownIdOf } from './reel-id.ts';
import { slotLeft } from './remaining.ts';
import type { FloorState, Person, SlotState, Tape } from './state.ts';

/** One thing to write down, in the order of writing. */
export type ToldEntry = {
  [K in EntryKind]: { readonly kind: K; readonly payload: PayloadOf<K> };
}[EntryKind];

/** Parts of the plant's list in one entry: few enough for the longest texts. */
const LISTED_AT_ONCE = 100;

/** The run of a practice floor. */
const PRACTICE_RUN = 'practice-run';

/**
 * The line as entries that fold to it: what its slots have left (parts) is put on as reels, and the panels still wanted are a run of
 * their own that begins with the first panel. `line`: one that the state knows; else nothing is answered. Not copied: history, holds,
 * disagreements, open checklists, changeovers, floor life so far, reels that lie nowhere.
 */
export function copyForPractice(state: FloorState, line: string): readonly ToldEntry[] {
  const defined = state.lines.get(line);
  if (!defined) return [];
  const slots = standingAt(state, line);
  const reels = [...slots.flatMap((slot) => reelsOn(state, slot, line)), ...reelsInStore(state)];
  return [
    ...[...state.plant.values()].map((payload): ToldEntry => ({ kind: 'plant.named', payload })),
    ...peopleAndParts(state, reels),
    { kind: 'line.defined', payload: defined },
    ...rulesOf(state, line),
    ...setupsOf(state, line),
    ...approvedByHand(state),
    ...runOf(state, line),
    ...reels,
  ];
}

function peopleAndParts(state: FloorState, copied: readonly ToldEntry[]): ToldEntry[] {
  const told: ToldEntry[] = [];
  for (const [key, secret] of state.badgeKeys) told.push({ kind: 'badges.keyed', payload: { key, secret } });
  for (const person of state.people.values()) told.push({ kind: 'person.added', payload: toldAgain(person) });
  for (const payload of state.feeders.values()) told.push({ kind: 'feeder.known', payload });
  for (const payload of state.feederTypes.values()) told.push({ kind: 'feeder-type.known', payload });
  for (const payload of state.typed.values()) told.push({ kind: 'feeder.typed', payload });
  told.push(...careRules(state));
  for (const [feeder, { reason }] of state.setAside)
    told.push({ kind: 'feeder.set-aside', payload: { feeder, reason } });
  for (const [reel, pack] of state.packs)
    if (hasOwnId(reel))
      told.push({ kind: 'reel.packed', payload: { reel, part: null, via: 'practice', ...pack } });
  for (const [rule, { rule: definition, by }] of state.labelRules)
    told.push({ kind: 'label.taught', payload: { rule, version: definition.version, definition, by } });
  for (const versions of state.templates.values())
    for (const payload of versions)
      told.push({
        kind: 'checklist.template',
        payload: payload as unknown as PayloadOf<'checklist.template'>, // as the fold read it
      });
  told.push(...blocksForPractice(state, copied));
  for (const { part, measured, weighed } of state.fullReels.values()) {
    const none = { outerMm: null, hubMm: null, massG: null, emptyG: null };
    if (measured) told.push({ kind: 'reel.calibrated', payload: { ...none, part, ...measured } });
    if (weighed) told.push({ kind: 'reel.calibrated', payload: { ...none, part, ...weighed } });
  }
  for (const part of state.parts.values()) told.push({ kind: 'part.described', payload: part });
  told.push(...listedParts(state), ...pricedParts(state), ...placeAirs(state));
  for (const { ruled } of state.moisture.values()) told.push({ kind: 'moisture.ruled', payload: ruled });
  return told;
}

/** After how many placements feeders are due for care. */
export function careRules(state: FloorState): ToldEntry[] {
  return [...state.careRules].map(([type, placements]) => ({
    kind: 'feeder.care-ruled',
    payload: { type: type === '' ? null : type, placements },
  }));
}

/** Places with an air of their own. */
export function placeAirs(state: FloorState): ToldEntry[] {
  return [...state.placeAirs].map(([place, air]) => ({
    kind: 'place.described',
    payload: { place, ...air },
  }));
}

/** The plant's list, by where each part of it stands, so many parts an entry. */
export function listedParts(state: FloorState): ToldEntry[] {
  const told = wholeParts(state).flatMap(({ source, part }) =>
    partByMakers(part).map((each) => ({ source, part: each })),
  );
  return bySource(told).map(({ source, parts }) => ({ kind: 'parts.listed', payload: { source, parts } }));
}

/** What parts cost, by where it stands, so many parts an entry. */
export function pricedParts(state: FloorState): ToldEntry[] {
  const told = [...state.prices].map(([part, { source, each, currency }]) => ({
    source,
    part: { part, price: { each, currency } },
  }));
  return bySource(told).map(({ source, parts }) => ({ kind: 'parts.priced', payload: { source, parts } }));
}

/** Parts told together: from one source, and not more than an entry should hold. */
function bySource<P>(told: readonly { readonly source: string; readonly part: P }[]) {
  const found = new Map<string, P[]>();
  for (const { source, part } of told) {
    const parts = found.get(source) ?? [];
    found.set(source, parts);
    parts.push(part);
  }
  return [...found].flatMap(([source, all]) =>
    chunksOf(all, LISTED_AT_ONCE).map((parts) => ({ source, parts })),
  );
}

type ListedPart = PayloadOf<'parts.listed'>['parts'][number];

function wholeParts(state: FloorState): { readonly source: string; readonly part: ListedPart }[] {
  const makersOf = makersInProducts(state);
  return [...state.listed.values()].map(({ source, ...facts }) => {
    const {
      family = null,
      pins = null,
      bodyMm = null,
      bodyXMm = null,
      bodyYMm = null,
      msl = null,
    } = state.parts.get(facts.part) ?? {};
    const makers = makersOf.get(facts.part) ?? [];
    return { source, part: { ...facts, family, pins, bodyMm, bodyXMm, bodyYMm, msl, makers } };
  });
}

/** The list's makers for one product, by part. */
function makersInProducts(state: FloorState) {
  const byPart = new Map<string, { supplierPart: string; product: string }[]>();
  for (const [key, numbers] of state.productMakers) {
    const [product, part] = productAndPart(key);
    const makers = numbers.map((supplierPart) => ({ supplierPart, product }));
    byPart.set(part, [...(byPart.get(part) ?? []), ...makers]);
  }
  return byPart;
}

/** After the setups: what was withdrawn from one of them may be approved for the plant again. */
function approvedByHand(state: FloorState): ToldEntry[] {
  return [...state.approvedByHand].flatMap(([supplierPart, parts]) =>
    parts.map((part): ToldEntry => ({ kind: 'supplier.approved', payload: { supplierPart, part } })),
  );
}

/** The rules of a line as entries that set them. */
export function rulesOf(state: FloorState, line: string): ToldEntry[] {
  const told: ToldEntry[] = [];
  const rules = state.rules.get(line);
  if (rules) told.push({ kind: 'line.ruled', payload: rules });
  const climate = state.climates.get(line);
  if (climate) told.push({ kind: 'line.climate-ruled', payload: { line, ...climate } });
  const costs = state.spliceCosts.get(line);
  if (costs) told.push({ kind: 'line.splices-ruled', payload: { line, costs } });
  const weeks = state.calendars.get(line);
  if (weeks) told.push({ kind: 'line.calendar-ruled', payload: weeks });
  const tape = state.tapeRules.get(line);
  if (tape) told.push({ kind: 'line.tape-ruled', payload: tape });
  const limits = state.ageLimits.get(line);
  if (limits) told.push({ kind: 'line.age-ruled', payload: { line, limits: [...limits] } });
  const values = state.valueRules.get(line);
  if (values)
    told.push({ kind: 'line.values-ruled', payload: { line, ...values, begins: [...values.begins] } });
  const pictures = state.pictureRules.get(line);
  if (pictures) told.push({ kind: 'line.pictures-ruled', payload: { line, ...pictures } });
  const inLine = state.inLines.get(line);
  if (inLine) told.push({ kind: 'line.panels-ruled', payload: inLine });
  const operators = state.crews.get(line);
  if (operators !== undefined) told.push({ kind: 'line.crewed', payload: { line, operators } });
  return told;
}

function setupsOf(state: FloorState, line: string): ToldEntry[] {
  const told: ToldEntry[] = [];
  const taken = [...state.setups.values()].filter((setup) => setup.line === line);
  const withdrawn = new Map(
    taken.flatMap(({ withdrawn: gone = [] }) => gone.map((each) => [JSON.stringify(each), each] as const)),
  );
  // In the order in which it happened: a setup taken in after a withdrawal approves the maker anew.
  const inTime = [
    ...taken.map(({ takenMs: atMs, withdrawn: _, ...payload }) => ({
      atMs,
      told: { kind: 'setup.taken' as const, payload },
    })),
    ...[...withdrawn.values()].map(({ atMs, ...payload }) => ({
      atMs,
      told: { kind: 'supplier.withdrawn' as const, payload },
    })),
  ];
  told.push(...inTime.sort((a, b) => a.atMs - b.atMs).map((each) => each.told));
  const setup = state.chosen.get(line);
  if (setup !== undefined) told.push({ kind: 'setup.chosen', payload: { line, setup } });
  return told;
}

function runOf(state: FloorState, line: string): ToldEntry[] {
  const run = state.runs.get(state.current.get(line) ?? '');
  if (!run) return [];
  const { setup, product, panelSeconds, panelSd, panelPrefix } = run;
  const panelsWanted = Math.max(1, panelsToGo(run));
  const payload = {
    run: PRACTICE_RUN,
    line,
    setup,
    product,
    panelsWanted,
    panelSeconds,
    panelSd,
    panelPrefix,
  };
  return [{ kind: 'run.started', payload }];
}

/** The reels of a slot, the running one with what it has left; put on in the run of the line that is practised on. */
function reelsOn(state: FloorState, slot: SlotState, line: string): ToldEntry[] {
  const left = slotLeft(state, slot, state.rules.get(line)?.loss ?? 0);
  // A tape of which nothing is left is not put on again, unless it is all there is.
  const isOver = left.running !== null && Math.round(left.running) === 0;
  const isNext = isOver && left.runningIndex < slot.tapes.length - 1;
  const there = slot.tapes.slice(left.runningIndex + (isNext ? 1 : 0));
  const run = state.current.has(line) ? PRACTICE_RUN : null;
  return there.map((tape, index) => {
    const count = index === 0 && !isNext ? left.running : tape.count;
    const more = tape.comesIn === 'bulk' ? 'refill' : 'splice';
    return verified(slot, tape, { act: index === 0 ? 'load' : more, run, count });
  });
}

function verified(
  slot: SlotState,
  tape: Tape,
  as: {
    readonly act: 'load' | 'splice' | 'refill';
    readonly run: string | null;
    readonly count: number | null;
  },
): ToldEntry {
  const { setup, part, supplierPart, lot, dateCode, basis } = tape;
  return {
    kind: 'reel.verified',
    payload: {
      act: as.act,
      line: slot.line,
      setup,
      run: as.run,
      slot: slot.slot,
      feeder: slot.feeder,
      reel: ownIdOf(tape.reel),
      part,
      supplierPart,
      lot,
      dateCode,
      quantity: as.count === null ? null : Math.round(as.count),
      codes: [],
      verdict: 'accepted',
      reasons: [],
      panels: 0,
      via: 'practice',
      basis,
      ...(tape.comesIn === undefined ? {} : { comesIn: tape.comesIn }),
    },
  };
}

function reelsInStore(state: FloorState): ToldEntry[] {
  const told: ToldEntry[] = [];
  for (const { reel, part, supplierPart, lot, dateCode, count, at, place } of state.reels.values()) {
    if (at !== null || place === undefined || !hasOwnId(reel)) continue;
    const facts = { reel, part, supplierPart, lot, dateCode, quantity: count };
    told.push({ kind: 'reel.put', payload: { ...facts, place, via: 'practice' } });
    const expires = state.expiries.get(reel);
    if (expires !== undefined) told.push({ kind: 'reel.dated', payload: { reel, expires } });
  }
  return told;
}

/** What the invented line is called where people read it. */
export interface PracticeNames {
  readonly line: string;
  readonly machine: string;
  readonly bank: string;
  readonly product: string;
}

/** Slots of the invented line: slot, part, placements a panel, parts on the reel that is there already (null = to be loaded). */
const inventedSlots = [
  ['M1-F-001', 'RES-1001', 12, 420],
  ['M1-F-002', 'CAP-2002', 8, 5000],
  ['M1-F-003', 'CAP-2003', 6, null],
  ['M1-F-004', 'DIO-3004', 2, null],
  ['M1-F-006', 'IC-4006', 1, null],
  ['M1-F-008', 'CON-5008', 1, null],
] as const;

/**
 * A small line of our own where the plant has none yet: six slots on one machine, two of them loaded, one soon empty. Nothing on it is
 * taken from anywhere. `zone`: IANA zone of the tablet.
 */
export function inventPractice(names: PracticeNames, zone: string): readonly ToldEntry[] {
  const [line, setup] = ['practice', 'practice-a'];
  const wanted = inventedSlots.map(
    ([slot, part, perPanel]): SetupSlot => ({
      slot,
      part,
      perPanel,
      tapeWidthMm: 8,
      pitchMm: 4,
      positions: 1,
      alternates: [],
      supplierParts: [],
    }),
  );
  const setupFacts = { setup, line, product: names.product, side: 'top' as const, revision: 'A' };
  return [
    {
      kind: 'line.defined',
      payload: {
        line,
        name: names.line,
        zone,
        machines: [
          { machine: 'M1', name: names.machine, banks: [{ bank: 'F', name: names.bank, positions: 10 }] },
        ],
      },
    },
    { kind: 'setup.taken', payload: { ...setupFacts, slots: wanted, source: '' } },
    { kind: 'setup.chosen', payload: { line, setup } },
    ...inventedSlots.flatMap(([slot, part, , quantity], index): ToldEntry[] =>
      quantity === null
        ? []
        : [
            {
              kind: 'reel.verified',
              payload: {
                act: 'load',
                line,
                setup,
                run: null,
                slot,
                feeder: null,
                part,
                supplierPart: null,
                reel: `PR-10${index + 1}`,
                lot: `LOT-P${index + 1}`,
                dateCode: null,
                quantity,
                codes: [],
                verdict: 'accepted',
                reasons: [],
                panels: 0,
                via: 'practice',
                basis: 'label',
              },
            },
          ],
    ),
  ];
}

/** The entry that tells a person as the floor knows them. */
function toldAgain({ person, name, role, badge, badgeMark, pin, pinSet }: Person): PayloadOf<'person.added'> {
  const payload: PayloadOf<'person.added'> = { person, name, role };
  if (badge !== '') payload.badge = badge;
  else if (badgeMark) payload.badgeMark = { key: badgeMark.key, mark: badgeMark.mark };
  if (pinSet) payload.pinSet = pinSet.pin;
  else payload.pin = pin;
  return payload;
}
