// How far off is a forecast an hour ahead, fed by a station of which 2 % of the messages are lost, against one fed by hand with 3 % of the panels
// missed, in the same played shifts? Link's desk, fold and forecast are the product's own; the line is played here: panels of a pace of its
// own, stops that nobody foresees, parts lost at random at the rate that the line's rules have. A person enters no stops.
// Each reel is looked at an hour of the clock before it truly ends. Told are panels: by the line's working time, which a forecast can know; and by
// the clock, in which the stops of that hour are that nobody can; and by the clock with the stops to come put in as often as they were so far, which a
// slot says beside its run-out where a machine tells its stops. BENCH_SHIFTS: how many are played.

import { mkdtempSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import type { EntryKind, PayloadOf } from '../../shared/floor/kinds.ts';
import { createReplica, foldIn } from '../../shared/floor/replica.ts';
import { neverStopping } from '../../shared/forecast/working-time.ts';
import { chanceNormal, seededChance } from '../../shared/kit/chance.ts';
import { compareEntries } from '../../shared/log/order.ts';
import { lineOutlook } from '../../shared/outlook/line.ts';
import { runOutWithStops } from '../../shared/outlook/stops-to-come.ts';
import { openHeld } from '../../src/link/held.ts';
import { openStationDesk } from '../../src/link/station-desk.ts';
import {
  beginStory,
  counted,
  type Story,
  started,
  startMs,
  tellPlant,
  verified,
} from '../shared/floor/story.ts';
import { parameter, quantile } from './server-process.ts';

const SHIFTS = parameter('BENCH_SHIFTS', 24);
const SECONDS = 8 * 3600;
const NOMINAL_SECONDS = 30;
const LOSS = 0.003;
const LOST_MESSAGES = 0.02;
const MISSED_PANELS = 0.03;
const AHEAD_SECONDS = 3600;
const slots = [
  { slot: 'M1-F-001', part: 'R-100', perPanel: 2 },
  { slot: 'M1-F-002', part: 'C-200', perPanel: 2 },
  { slot: 'M1-F-010', part: 'U-300', perPanel: 1 },
  { slot: 'M1-R-003', part: 'R-100', perPanel: 4 },
] as const;

interface Shift {
  /** When each panel was done, s since the start. */
  readonly panels: readonly number[];
  readonly stops: readonly (readonly [from: number, to: number])[];
  readonly pace: number;
  /** Slot -> parts on its reel, and when they are used up. */
  readonly reels: readonly { readonly slot: string; readonly quantity: number; readonly endS: number }[];
}

function playShift(seed: number): Shift {
  const chance = seededChance(seed);
  const pace = 26 + 10 * chance();
  const panels: number[] = [];
  const stops: (readonly [number, number])[] = [];
  let second = 60;
  let nextStop = second - Math.log(1 - chance()) * 1500;
  while (second < SECONDS) {
    const takes = Math.max(10, chanceNormal(chance, pace, 1.5));
    if (second + takes > nextStop) {
      const lasts = Math.exp(chanceNormal(chance, Math.log(120), 0.8));
      stops.push([nextStop, nextStop + lasts]);
      second += lasts;
      nextStop = second + takes - Math.log(1 - chance()) * 1500;
    }
    second += takes;
    panels.push(second);
  }
  const reels = slots.map(({ slot, perPanel }) => {
    // Ends somewhere between one and three quarters of a shift and its end.
    const quantity = Math.round(((0.25 + 0.65 * chance()) * SECONDS * perPanel) / pace);
    let left = quantity;
    for (const [at, done] of panels.entries()) {
      for (let placed = 0; placed < perPanel; placed += 1) {
        left -= 1;
        while (chance() < LOSS) left -= 1;
        if (left <= 0) {
          const from = panels[at - 1] ?? 60;
          return { slot, quantity, endS: from + ((done - from) * (placed + 1)) / perPanel };
        }
      }
    }
    return { slot, quantity, endS: Number.POSITIVE_INFINITY };
  });
  return { panels, stops, pace, reels };
}

function begin(shift: Shift): Story {
  const story = beginStory();
  tellPlant(story, { rules: { loss: LOSS } });
  const known = { machine: 'M1', at: 'work', means: 'counter', version: '1', address: '' } as const;
  story.tell('station.known', { station: 'exit', line: 'L1', ...known }, { tablet: 'LINK', at: 10 });
  for (const { slot, quantity } of shift.reels) {
    const part = slots.find((each) => each.slot === slot)?.part ?? '';
    const reel = verified(slot, part, { reel: `K-${slot}`, quantity, basis: 'machine' });
    story.tell('reel.verified', reel, { at: 20 });
  }
  story.tell(
    'run.started',
    started('r1', { panelsWanted: 3000, panelSeconds: NOMINAL_SECONDS, panelSd: 3 }),
    { at: 60 },
  );
  return story;
}

/** As a device tells it: its total with each panel and every ten seconds, and whether the machine stands; some of it is lost. */
async function byStation(shift: Shift, seed: number, folder: string): Promise<Story> {
  const story = begin(shift);
  story.tell('line.counted-by', { line: 'L1', station: 'exit' }, { at: 61 });
  const chance = seededChance(seed + 1e6);
  const held = openHeld(folder, false);
  let second = 61;
  const write = async (kind: EntryKind, payload: object) =>
    story.tell(kind, payload as PayloadOf<EntryKind>, { tablet: 'LINK', who: null, at: second });
  const now = () => ({ ms: second * 1000, wallMs: startMs + second * 1000 });
  const desk = openStationDesk({ station: 'exit', line: 'L1' }, { held, write, start: now() });
  let total = 0;
  let stop = 0;
  for (second = 62; second < SECONDS; second += 1) {
    const before = total;
    while ((shift.panels[total] ?? Number.POSITIVE_INFINITY) <= second) total += 1;
    while ((shift.stops[stop]?.[1] ?? Number.POSITIVE_INFINITY) <= second) stop += 1;
    const stands = (shift.stops[stop]?.[0] ?? Number.POSITIVE_INFINITY) <= second;
    if ((total > before || second % 10 === 0) && chance() >= LOST_MESSAGES) {
      const state = stands ? 5200 : 1100;
      await desk.take({ boot: 'b', total, atMs: null, serial: null, skipped: null, state }, now());
    }
    await desk.tick(now());
  }
  await held.close();
  return story;
}

/** As people count: a panel in so many is forgotten. */
function byHand(shift: Shift, seed: number): Story {
  const story = begin(shift);
  const chance = seededChance(seed + 2e6);
  for (const second of shift.panels)
    if (second < SECONDS && chance() >= MISSED_PANELS)
      story.tell('panels.counted', counted('r1', 1), { at: Math.ceil(second) });
  return story;
}

/** Errors in panels, an hour before each reel ends. `stops`: by the clock with stops to come; null where nothing is said of them. */
interface Errors {
  readonly work: number;
  readonly clock: number;
  readonly stops: number | null;
}

function errorsOf(story: Story, shift: Shift): Errors[] {
  const entries = [...story.entries].sort(compareEntries);
  const replica = createReplica();
  let folded = 0;
  const errors: Errors[] = [];
  for (const { slot, endS } of [...shift.reels].sort((a, b) => a.endS - b.endS)) {
    const atS = endS - AHEAD_SECONDS;
    if (atS < 1200 || endS > SECONDS) continue;
    const nowMs = startMs + atS * 1000;
    let until = folded;
    while ((entries[until]?.hlc.ms ?? Number.POSITIVE_INFINITY) <= nowMs) until += 1;
    foldIn(replica, entries.slice(folded, until));
    folded = until;
    const outlook = lineOutlook(replica.state, 'L1', { nowMs, calendar: neverStopping });
    const found = outlook?.slots.find((each) => each.slot === slot);
    if (!outlook || !found) throw new Error(`nothing is foretold of ${slot}`);
    const withStops = runOutWithStops(outlook, found);
    const foretoldS = (found.forecast.runOutMs.expected - startMs) / 1000;
    const stood = shift.stops.reduce(
      (sum, [from, to]) => sum + Math.max(0, Math.min(to, endS) - Math.max(from, atS)),
      0,
    );
    errors.push({
      work: (foretoldS - (endS - stood)) / shift.pace,
      clock: (foretoldS - endS) / shift.pace,
      stops: withStops === null ? null : ((withStops - startMs) / 1000 - endS) / shift.pace,
    });
  }
  return errors;
}

const folder = mkdtempSync(join(tmpdir(), 'reelward-counts-bench-'));
const all = { station: [] as Errors[], hand: [] as Errors[] };
for (let seed = 1; seed <= SHIFTS; seed += 1) {
  const shift = playShift(seed);
  const data = mkdtempSync(join(folder, 'held-'));
  all.station.push(...errorsOf(await byStation(shift, seed, data), shift));
  all.hand.push(...errorsOf(byHand(shift, seed), shift));
}
rmSync(folder, { recursive: true, force: true });
console.log(`${SHIFTS} shifts of 8 h, load ${loadavg()[0]?.toFixed(1)}; errors in panels, an hour ahead`);
for (const [by, errors] of Object.entries(all)) {
  const figures = (of: readonly number[]) => {
    const sizes = of.map(Math.abs);
    const mean = of.reduce((sum, each) => sum + each, 0) / of.length;
    return `median ${quantile(sizes, 0.5).toFixed(2)}, 95 % ${quantile(sizes, 0.95).toFixed(2)}, on average ${mean.toFixed(2)}`;
  };
  console.log(
    `  by ${by}, ${errors.length} reels: ${figures(errors.map(({ work }) => work))} by working time; ${figures(errors.map(({ clock }) => clock))} by the clock`,
  );
  const said = errors.filter(({ stops }) => stops !== null);
  if (said.length > 0)
    console.log(
      `  with stops to come, said of ${said.length} of them: ${figures(said.map(({ stops }) => stops ?? 0))}; without, of the same: ${figures(said.map(({ clock }) => clock))}`,
    );
}
