// Tells what happened on an invented line as real, sealed entries, so that tests fold what tablets would have written.

import { applyAll } from '../../../shared/floor/fold.ts';
import { checkPayload, type EntryKind, type PayloadOf, type SetupSlot } from '../../../shared/floor/kinds.ts';
import { emptyState, type FloorState } from '../../../shared/floor/state.ts';
import { mergeClock, tickClock } from '../../../shared/log/clock.ts';
import {
  type ClockReading,
  type Entry,
  entryId,
  firstPrev,
  type JsonObject,
} from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { sealEntry } from '../../../shared/log/seal.ts';

/** 2026-03-02T06:00:00Z. */
export const startMs = 1_772_431_200_000;

/** Where and when a thing is told from. */
export interface Telling {
  readonly tablet?: string;
  readonly who?: string | null;
  /** Seconds since the start; a second after the entry before where absent. */
  readonly at?: number;
  /** The tablet has seen this entry of another tablet. */
  readonly seen?: Entry;
}

interface Chain {
  seq: number;
  hash: string;
  hlc: ClockReading | null;
}

/** A log in the making. */
export interface Story {
  /** Writes an entry; its payload is checked as the app checks it. */
  readonly tell: <K extends EntryKind>(kind: K, payload: PayloadOf<K>, telling?: Telling) => Entry;
  /** In the order of telling. */
  readonly entries: readonly Entry[];
  /** The floor after folding all, in folding order. */
  readonly floor: () => FloorState;
}

/** Begins a story. */
export function beginStory(): Story {
  const entries: Entry[] = [];
  const chains = new Map<string, Chain>();
  let second = 0;
  return {
    entries,
    floor: () => applyAll(emptyState(), [...entries].sort(compareEntries)),
    tell: (kind, payload, { tablet = 'T1', who = 'ana', at, seen } = {}) => {
      second = at ?? second + 1;
      const chain = chains.get(tablet) ?? { seq: 0, hash: firstPrev, hlc: null };
      const wallMs = startMs + second * 1000;
      const last = seen ? mergeClock(chain.hlc, seen.hlc) : chain.hlc;
      const hlc = tickClock(last, wallMs);
      const entry = sealEntry({
        v: 1,
        tablet,
        epoch: `${tablet}-life-1`,
        seq: chain.seq + 1,
        hlc,
        who,
        kind,
        prev: chain.hash,
        at: new Date(wallMs).toISOString(),
        payload: checkPayload(kind, payload),
      } as const);
      chains.set(tablet, { seq: entry.seq, hash: entry.hash, hlc });
      entries.push(entry);
      return entry;
    },
  };
}

/** An entry's id, short for tests. */
export const idOf = entryId;

/** One wanted slot with the plain values filled in. */
export function wantedSlot(slot: string, part: string, more: Partial<SetupSlot> = {}): SetupSlot {
  return {
    slot,
    part,
    perPanel: 2,
    tapeWidthMm: 8,
    pitchMm: 4,
    positions: 1,
    alternates: [],
    supplierParts: [],
    ...more,
  };
}

/** The invented line, its rules and one setup of four slots, chosen. */
export function tellPlant(
  story: Story,
  more: { readonly rules?: Partial<PayloadOf<'line.ruled'>> } = {},
): void {
  story.tell('tablet.opened', { name: 'Line 1 front', app: '0.1.0', key: null, previous: null });
  story.tell('line.defined', {
    line: 'L1',
    name: 'Brae line 1',
    zone: 'Europe/London',
    machines: [
      {
        machine: 'M1',
        name: 'first',
        banks: [
          { bank: 'F', name: 'front', positions: 20 },
          { bank: 'R', name: 'rear', positions: 20 },
        ],
      },
    ],
  });
  story.tell('line.ruled', {
    line: 'L1',
    leadSeconds: 600,
    walkSeconds: 60,
    spliceSeconds: 60,
    hubToPickMm: null,
    intakeToPickMm: null,
    loss: 0,
    shifts: [],
    breaks: [],
    stops: [],
    feedersKnown: false,
    comparison: { ignoreCase: false, ignoreSpaces: false, ignoreDashes: false, packingSuffixes: [] },
    ...more.rules,
  });
  story.tell('setup.taken', brookSetup);
  story.tell('setup.chosen', { line: 'L1', setup: 'brook-top-a' });
}

/** The setup of the invented product "Brook". */
export const brookSetup: PayloadOf<'setup.taken'> = {
  setup: 'brook-top-a',
  product: 'Brook',
  side: 'top',
  revision: 'A',
  line: 'L1',
  source: 'brook.csv',
  slots: [
    wantedSlot('M1-F-001', 'R-100'),
    wantedSlot('M1-F-002', 'C-200', { alternates: ['C-201'] }),
    wantedSlot('M1-F-010', 'U-300', { supplierParts: ['SUP-300'], perPanel: 1 }),
    wantedSlot('M1-R-003', 'R-100', { perPanel: 4 }),
  ],
};

/** The payload of a verdict with the plain values filled in. */
export function verified(
  slot: string | null,
  part: string | null,
  more: Partial<PayloadOf<'reel.verified'>> = {},
): PayloadOf<'reel.verified'> {
  return {
    act: 'load',
    line: 'L1',
    setup: 'brook-top-a',
    run: null,
    slot,
    feeder: null,
    part,
    reel: null,
    supplierPart: null,
    quantity: 1000,
    lot: null,
    dateCode: null,
    codes: [],
    verdict: 'accepted',
    reasons: [],
    panels: 0,
    via: 'wedge',
    basis: 'label',
    ...more,
  };
}

/** The payload of a started run with the plain values filled in. */
export function started(run: string, more: Partial<PayloadOf<'run.started'>> = {}): PayloadOf<'run.started'> {
  return {
    run,
    line: 'L1',
    setup: 'brook-top-a',
    product: 'Brook',
    panelsWanted: 500,
    panelSeconds: 30,
    panelSd: 0,
    panelPrefix: null,
    ...more,
  };
}

/** The payload of counted panels. */
export function counted(run: string, add: number, serial: string | null = null): PayloadOf<'panels.counted'> {
  return { run, line: 'L1', add, panels: Math.max(0, add), serial, via: 'typed' };
}

/** The payload of an unload. */
export function unloaded(
  slot: string,
  more: Partial<PayloadOf<'reel.unloaded'>> = {},
): PayloadOf<'reel.unloaded'> {
  return {
    line: 'L1',
    run: null,
    slot,
    feeder: null,
    reel: null,
    part: null,
    lot: null,
    quantity: null,
    basis: null,
    panels: 0,
    via: 'typed',
    ...more,
  };
}

/** A payload as plain JSON, for tests that write by hand. */
export function asJson(payload: object): JsonObject {
  return JSON.parse(JSON.stringify(payload)) as JsonObject; // parsed from an object
}
