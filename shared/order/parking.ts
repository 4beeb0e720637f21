// Which feeders must be parked off the machine so that all moves can be carried out one at a time?
// Method: move i waits for move j where i's new place overlaps j's old one. Parking a feeder frees its old place, so the
// fewest parked feeders are a smallest set that meets every cycle of waiting (a minimum feedback vertex set). Moves that
// nobody waits for or that wait for nobody drop out; a move with one way in or out is bridged (Levy and Low 1988,
// J. Algorithms 9, 470); what is left is split into its cycles' components and searched exactly, bounded below by
// disjoint cycles. With feeders of one position every cycle stands alone and nothing is left to search.
// Refused: parking one feeder per cycle found; wide feeders sit on several cycles at once.

/** The answer: which moves park, and whether fewer were proven impossible. */
export interface ParkingChoice {
  readonly parked: readonly number[];
  readonly isProven: boolean;
}

type Graph = Map<number, { readonly out: Set<number>; readonly into: Set<number> }>;

/**
 * Smallest set of moves to park. `waits[i]` lists the moves that must leave their place before i can be put down; i itself
 * may be listed and is ignored. `mostNodes` bounds the search (whole, >= 1); beyond it the best found is given unproven.
 */
export function fewestParked(waits: readonly (readonly number[])[], mostNodes = 20_000): ParkingChoice {
  const core = movesOnCycles(waits);
  const graph: Graph = new Map(core.map((at) => [at, { out: new Set(), into: new Set() }]));
  for (const at of core) {
    for (const other of waits[at] ?? []) if (other !== at && graph.has(other)) link(graph, at, other);
  }
  const budget = { nodes: mostNodes };
  const parked = solve(graph, Number.POSITIVE_INFINITY, budget) ?? [];
  return { parked: parked.sort((x, y) => x - y), isProven: budget.nodes > 0 };
}

/** Moves that can be neither the first nor the last of any chain: they lie on cycles or between cycles. */
export function movesOnCycles(waits: readonly (readonly number[])[]): number[] {
  const awaited: number[][] = waits.map(() => []);
  const outs = waits.map((list, at) => {
    const others = new Set(list.filter((other) => other !== at));
    for (const other of others) awaited[other]?.push(at);
    return others.size;
  });
  const ins = awaited.map((list) => list.length);
  const isGone = waits.map(() => false);
  const queue = waits.map((_, at) => at);
  for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
    if (isGone[at] === true || (outs[at] !== 0 && ins[at] !== 0)) continue;
    isGone[at] = true;
    for (const other of new Set(waits[at])) {
      if (other === at) continue;
      ins[other] = (ins[other] ?? 0) - 1;
      queue.push(other);
    }
    for (const other of awaited[at] ?? []) {
      outs[other] = (outs[other] ?? 0) - 1;
      queue.push(other);
    }
  }
  return waits.map((_, at) => at).filter((at) => isGone[at] === false);
}

/** Number of the group of connected cycles that each move lies in; -1 where it lies in none. */
export function cycleGroups(waits: readonly (readonly number[])[]): Int32Array {
  const core = movesOnCycles(waits);
  const groups = new Int32Array(waits.length).fill(-1);
  for (const at of core) groups[at] = at;
  const rootOf = (at: number): number => {
    let root = at;
    while (groups[root] !== root) root = groups[root] ?? root;
    return root;
  };
  for (const at of core) {
    for (const other of waits[at] ?? []) {
      if ((groups[other] ?? -1) >= 0) groups[rootOf(other)] = rootOf(at);
    }
  }
  for (const at of core) groups[at] = rootOf(at);
  return groups;
}

function link(graph: Graph, from: number, to: number): void {
  graph.get(from)?.out.add(to);
  graph.get(to)?.into.add(from);
}

function remove(graph: Graph, at: number): void {
  const node = graph.get(at);
  if (node === undefined) return;
  for (const other of node.out) graph.get(other)?.into.delete(at);
  for (const other of node.into) graph.get(other)?.out.delete(at);
  graph.delete(at);
}

/** Smallest set with fewer than `below` members, or null; changes `graph`. */
function solve(graph: Graph, below: number, budget: { nodes: number }): number[] | null {
  const forced = reduce(graph);
  if (forced.length >= below) return null;
  if (graph.size === 0) return forced;
  const parts = components(graph);
  if (parts.length === 1) {
    const rest = branch(graph, below - forced.length, budget);
    return rest === null ? null : [...forced, ...rest];
  }
  const all = forced;
  for (const part of parts) {
    const rest = branch(part, below - all.length, budget);
    if (rest === null) return null;
    all.push(...rest);
  }
  return all.length < below ? all : null;
}

/** Drops and bridges what cannot matter; returns the members that every answer may take. */
function reduce(graph: Graph): number[] {
  const forced: number[] = [];
  const queue = [...graph.keys()];
  const inQueue = new Set(queue);
  const push = (at: number) => {
    if (graph.has(at) && !inQueue.has(at)) {
      inQueue.add(at);
      queue.push(at);
    }
  };
  for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
    inQueue.delete(at);
    const node = graph.get(at);
    if (node === undefined) continue;
    const around = [...node.out, ...node.into];
    if (node.out.has(at)) {
      forced.push(at);
      remove(graph, at);
    } else if (node.out.size === 0 || node.into.size === 0) {
      remove(graph, at);
    } else if (node.out.size === 1 || node.into.size === 1) {
      const { out, into } = node;
      const ways = [...into].flatMap((from) => [...out].map((to) => [from, to] as const));
      remove(graph, at);
      for (const [from, to] of ways) link(graph, from, to);
    } else continue;
    for (const other of around) push(other);
  }
  return forced;
}

/** Strongly connected components of more than one member, each as a graph of its own (Tarjan 1972). */
function components(graph: Graph): Graph[] {
  const index = new Map<number, number>();
  const lowest = new Map<number, number>();
  const stack: number[] = [];
  const onStack = new Set<number>();
  const found: Graph[] = [];
  const visit = (at: number): void => {
    index.set(at, index.size);
    lowest.set(at, index.get(at) ?? 0);
    stack.push(at);
    onStack.add(at);
    for (const other of graph.get(at)?.out ?? []) {
      if (!index.has(other)) {
        visit(other);
        lowest.set(at, Math.min(lowest.get(at) ?? 0, lowest.get(other) ?? 0));
      } else if (onStack.has(other)) {
        lowest.set(at, Math.min(lowest.get(at) ?? 0, index.get(other) ?? 0));
      }
    }
    if (lowest.get(at) !== index.get(at)) return;
    const members = new Set<number>();
    for (let other = stack.pop(); other !== undefined; other = stack.pop()) {
      onStack.delete(other);
      members.add(other);
      if (other === at) break;
    }
    if (members.size > 1) found.push(restrict(graph, members));
  };
  for (const at of graph.keys()) if (!index.has(at)) visit(at);
  return found;
}

function restrict(graph: Graph, members: ReadonlySet<number>): Graph {
  const part: Graph = new Map();
  for (const at of members) {
    const node = graph.get(at);
    part.set(at, {
      out: new Set([...(node?.out ?? [])].filter((other) => members.has(other))),
      into: new Set([...(node?.into ?? [])].filter((other) => members.has(other))),
    });
  }
  return part;
}

function copy(graph: Graph): Graph {
  return new Map([...graph].map(([at, node]) => [at, { out: new Set(node.out), into: new Set(node.into) }]));
}

/** Either the busiest move parks, or it does not and is bridged. */
function branch(graph: Graph, below: number, budget: { nodes: number }): number[] | null {
  if (disjointCycles(graph) >= below) return null;
  let pick = -1;
  let most = -1;
  for (const [at, node] of graph) {
    const busy = node.out.size * node.into.size;
    if (busy > most) {
      most = busy;
      pick = at;
    }
  }
  budget.nodes--;
  const without = copy(graph);
  remove(without, pick);
  const taken = solve(without, below - 1, budget);
  let best = taken === null ? null : [pick, ...taken];
  if (budget.nodes <= 0 && best !== null) return best;
  const bridged = copy(graph);
  const node = bridged.get(pick);
  const ways = [...(node?.into ?? [])].flatMap((from) =>
    [...(node?.out ?? [])].map((to) => [from, to] as const),
  );
  remove(bridged, pick);
  for (const [from, to] of ways) link(bridged, from, to);
  const left = solve(bridged, best?.length ?? below, budget);
  if (left !== null) best = left;
  return best;
}

/** A lower bound: short cycles taken one after the other, none sharing a move. */
function disjointCycles(graph: Graph): number {
  const rest = copy(graph);
  let count = 0;
  for (;;) {
    const cycle = shortestCycle(rest);
    if (cycle === null) return count;
    count++;
    for (const at of cycle) remove(rest, at);
  }
}

function shortestCycle(graph: Graph): number[] | null {
  let best: number[] | null = null;
  for (const start of graph.keys()) {
    const cameFrom = new Map<number, number>();
    let layer = [start];
    for (let depth = 1; layer.length > 0 && (best === null || depth < best.length); depth++) {
      const next: number[] = [];
      for (const at of layer) {
        for (const other of graph.get(at)?.out ?? []) {
          if (other === start) {
            const cycle = [at];
            for (let back = cameFrom.get(at); back !== undefined; back = cameFrom.get(back)) cycle.push(back);
            best = cycle;
            next.length = 0;
            break;
          }
          if (cameFrom.has(other)) continue;
          cameFrom.set(other, at);
          next.push(other);
        }
        if (best !== null && best.length <= depth) break;
      }
      if (best !== null && best.length <= depth) break;
      layer = next;
    }
    if (best !== null && best.length <= 2) return best;
  }
  return best;
}
