// Where do the feeders of the next job go on a bank, so that the fewest of those on it are handled?
// Method: the bank is passed position by position. At each one the feeder that stands there is kept, or a feeder of some
// width is put down, or the position stays empty; feeders of one width are interchangeable, so all that matters is the
// least cost for each count of feeders still to be put down, by width (dynamic programming). Exact as long as no more
// than a set number of such states stand side by side; above that the most promising go on and the answer is unproven.
// The place counts: free positions that do not lie side by side do not take a wide feeder (Crama and others 2007).
// Refused: fitting by free positions alone, which promises layouts that cannot be built.

import { fail, ok, type Result } from '../kit/result.ts';

/** A feeder on the bank, or wanted there. */
export interface BankFeeder {
  readonly id: string;
  /** Positions taken, whole, >= 1. */
  readonly width: number;
}

/** What stands on one bank and what must stand there next. */
export interface LayoutQuestion {
  /** Positions 1 … `positions`. */
  readonly positions: number;
  /** Feeders on the bank with their first position; they do not overlap. */
  readonly current: readonly (BankFeeder & { readonly start: number })[];
  /** Feeders that must be on the bank, anywhere; those of `current` are named by the same id. */
  readonly required: readonly BankFeeder[];
  /** What a handling costs, each > 0; a move at least as much as a take-out. Default 1 each. */
  readonly costs?: { readonly move: number; readonly takeOut: number; readonly putIn: number };
  /** Most states side by side, default 4000. */
  readonly mostStates?: number;
}

/** The cheapest layout found. Feeders that are not required and hinder nobody stay among `keep`. */
export interface LayoutAnswer {
  readonly cost: number;
  /** First position of every feeder on the bank afterwards, by id. */
  readonly starts: Readonly<Record<string, number>>;
  readonly keep: readonly string[];
  readonly move: readonly string[];
  readonly takeOut: readonly string[];
  readonly putIn: readonly string[];
  /** No layout costs less. */
  readonly isProven: boolean;
}

/** Why there is no layout: the required feeders are `over` positions wider than the bank (0: none found that fits). */
export interface LayoutFailure {
  readonly code: 'no-room';
  readonly over: number;
  /** Required feeders, widest first. */
  readonly feeders: readonly string[];
}

type Choice = 'keep' | 'blank' | number;

interface State {
  /** Feeders still to be put down, by width class; negative where room was made ahead of a feeder that moves. */
  readonly debts: readonly number[];
  readonly cost: number;
  readonly at: number;
  readonly choice: Choice;
  readonly before: State | null;
}

/** The cheapest layout of a bank that holds all required feeders. */
export function layoutFor(question: LayoutQuestion): Result<LayoutAnswer, LayoutFailure> {
  const costs = question.costs ?? { move: 1, takeOut: 1, putIn: 1 };
  const required = new Set(question.required.map((feeder) => feeder.id));
  const present = new Set(question.current.map((feeder) => feeder.id));
  const loads = question.required.filter((feeder) => !present.has(feeder.id));
  const widths = [...new Set(question.required.map((feeder) => feeder.width))].sort((x, y) => y - x);
  const over = question.required.reduce((sum, feeder) => sum + feeder.width, 0) - question.positions;
  const failure: LayoutFailure = {
    code: 'no-room',
    over: Math.max(0, over),
    feeders: [...question.required].sort((x, y) => y.width - x.width).map((feeder) => feeder.id),
  };
  if (over > 0) return fail(failure);
  const { end, isProven } = pass(question, widths, loads, required, costs);
  if (end === null) return fail(failure);
  return ok({
    ...readLayout(question, end, loads, required, widths),
    cost: end.cost + loads.length * costs.putIn,
    isProven,
  });
}

function pass(
  question: LayoutQuestion,
  widths: readonly number[],
  loads: readonly BankFeeder[],
  required: ReadonlySet<string>,
  costs: { readonly move: number; readonly takeOut: number },
): { end: State | null; isProven: boolean } {
  const size = question.positions;
  const startsAt = new Map(question.current.map((feeder) => [feeder.start, feeder]));
  const classOf = new Map(widths.map((width, at) => [width, at]));
  const ahead = requiredAhead(question, widths, required);
  const mostStates = question.mostStates ?? 4000;
  const layers = Array.from({ length: size + 2 }, () => new Map<string, State>());
  const add = (state: State): void => {
    const layer = layers[state.at];
    if (layer === undefined) return;
    const need = state.debts.reduce((sum, debt, at) => sum + debt * (widths[at] ?? 0), 0);
    const isHopeless =
      need > size - state.at + 1 || state.debts.some((debt, at) => debt < -(ahead[state.at]?.[at] ?? 0));
    if (isHopeless) return;
    const key = state.debts.join(',');
    const known = layer.get(key);
    if (known === undefined || state.cost < known.cost) layer.set(key, state);
  };
  const debts = widths.map((width) => loads.filter((feeder) => feeder.width === width).length);
  add({ debts, cost: 0, at: 1, choice: 'blank', before: null });
  let isProven = true;
  for (let at = 1; at <= size; at++) {
    let states = [...(layers[at]?.values() ?? [])];
    if (states.length > mostStates) {
      isProven = false;
      states = promising(states, widths, freeAfter(question, at)).slice(0, mostStates);
    }
    for (const state of states) {
      const here = startsAt.get(at);
      if (here !== undefined) add({ ...state, at: at + here.width, choice: 'keep', before: state });
      const steps: [Choice, number, number][] = [['blank', 1, -1]];
      widths.forEach((width, kind) => {
        if (at + width <= size + 1) steps.push([kind, width, kind]);
      });
      for (const [choice, length, kind] of steps) {
        const next = [...state.debts];
        if (kind >= 0) next[kind] = (next[kind] ?? 0) - 1;
        let cost = state.cost;
        for (let position = at; position < at + length; position++) {
          const lifted = startsAt.get(position);
          if (lifted === undefined) continue;
          if (required.has(lifted.id)) {
            const kindLifted = classOf.get(lifted.width) ?? 0;
            next[kindLifted] = (next[kindLifted] ?? 0) + 1;
            cost += costs.move;
          } else cost += costs.takeOut;
        }
        add({ debts: next, cost, at: at + length, choice, before: state });
      }
    }
    layers[at] = new Map();
  }
  return { end: layers[size + 1]?.get(widths.map(() => 0).join(',')) ?? null, isProven };
}

/** Required feeders of each width class that start at a position or after it. */
function requiredAhead(
  question: LayoutQuestion,
  widths: readonly number[],
  required: ReadonlySet<string>,
): number[][] {
  const ahead = Array.from({ length: question.positions + 2 }, () => widths.map(() => 0));
  for (const feeder of question.current) {
    if (!required.has(feeder.id)) continue;
    const kind = widths.indexOf(feeder.width);
    for (let at = 0; at <= feeder.start; at++) {
      const row = ahead[at];
      if (row !== undefined) row[kind] = (row[kind] ?? 0) + 1;
    }
  }
  return ahead;
}

function freeAfter(question: LayoutQuestion, at: number): number {
  const taken = question.current
    .filter((feeder) => feeder.start >= at)
    .reduce((sum, feeder) => sum + feeder.width, 0);
  return question.positions - at + 1 - taken;
}

/** Cheapest first, where a position that is still short counts as half a handling. */
function promising(states: readonly State[], widths: readonly number[], free: number): State[] {
  const worth = (state: State) => {
    const need = state.debts.reduce((sum, debt, at) => sum + debt * (widths[at] ?? 0), 0);
    return state.cost + 0.5 * Math.max(0, need - free);
  };
  return [...states].sort((x, y) => worth(x) - worth(y));
}

function readLayout(
  question: LayoutQuestion,
  end: State,
  loads: readonly BankFeeder[],
  required: ReadonlySet<string>,
  widths: readonly number[],
) {
  const kept = new Set<string>();
  const holes: { start: number; width: number }[] = [];
  const startsAt = new Map(question.current.map((feeder) => [feeder.start, feeder]));
  for (let state = end; state.before !== null; state = state.before) {
    const start = state.before.at;
    if (state.choice === 'keep') kept.add(startsAt.get(start)?.id ?? '');
    else if (state.choice !== 'blank') holes.push({ start, width: widths[state.choice] ?? 1 });
  }
  const starts: Record<string, number> = {};
  for (const feeder of question.current) if (kept.has(feeder.id)) starts[feeder.id] = feeder.start;
  const moved = question.current.filter((feeder) => required.has(feeder.id) && !kept.has(feeder.id));
  holes.sort((x, y) => x.start - y.start);
  for (const feeder of [...moved, ...loads]) {
    const at = holes.findIndex((hole) => hole.width === feeder.width);
    const hole = holes.splice(at, 1)[0];
    if (hole !== undefined) starts[feeder.id] = hole.start;
  }
  return {
    starts,
    keep: [...kept],
    move: moved.map((feeder) => feeder.id),
    takeOut: question.current
      .filter((one) => !required.has(one.id) && !kept.has(one.id))
      .map((one) => one.id),
    putIn: loads.map((feeder) => feeder.id),
  };
}
