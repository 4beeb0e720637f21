// Questions drawn by a seed, and ways through them that are as plain as can be.

import { chanceBelow, seededChance } from '../../../shared/kit/chance.ts';
import { modelOrder, type OrderModel, type OrderQuestion } from '../../../shared/order/problem.ts';

/** What a question is drawn by. */
export interface Drawn {
  readonly jobs: number;
  readonly parts: number;
  /** Most parts of a job; each has half of them at least. */
  readonly most: number;
  /** Positions of the widest feeder. */
  readonly widest?: number;
  /** Positions beyond what the widest job takes. */
  readonly spare?: number;
  /** How many parts are loaded before. */
  readonly loaded?: number;
}

/** A question, the same for a seed. */
export function questionBy(
  seed: number,
  { jobs, parts, most, widest = 1, spare = 1, loaded = 0 }: Drawn,
): OrderQuestion {
  const chance = seededChance(seed);
  const widths = Object.fromEntries(
    Array.from({ length: parts }, (_, part) => [`p${part}`, 1 + chanceBelow(chance, widest)]),
  );
  const sets = Array.from({ length: jobs }, () => {
    const set = new Set<string>();
    const size = Math.ceil(most / 2) + chanceBelow(chance, Math.floor(most / 2) + 1);
    while (set.size < size) set.add(`p${chanceBelow(chance, parts)}`);
    return [...set];
  });
  const taken = sets.map((set) => set.reduce((sum, part) => sum + widths[part]!, 0));
  return {
    capacity: Math.max(...taken) + spare,
    widths,
    jobs: sets.map((set, job) => ({ id: `j${job}`, parts: set })),
    loaded: sets[0]!.slice(0, loaded),
  };
}

/** The question in numbers. Throws where a job does not fit. */
export function modelled(question: OrderQuestion): OrderModel {
  const model = modelOrder(question);
  if (!model.ok) throw new Error(JSON.stringify(model.error));
  return model.value;
}

/** In numbers with every job bound to its place: none rides with another, and places are those of the list. */
export function inPlaces(question: OrderQuestion): OrderModel {
  return modelled({ ...question, locks: question.jobs.map(({ id }, place) => ({ job: id, place })) });
}

/** Jobs in the order of the list. */
export const ahead = ({ jobCount }: Pick<OrderModel, 'jobCount'>): Uint16Array =>
  Uint16Array.from({ length: jobCount }, (_, job) => job);

/** Every order of some numbers. */
export function* permutations(items: readonly number[]): Generator<number[]> {
  if (items.length === 0) yield [];
  for (const item of items)
    for (const rest of permutations(items.filter((other) => other !== item))) yield [item, ...rest];
}

/** All that a generator gives, and what it comes to. */
export function runOut<T, R>(run: Generator<T, R>): { readonly steps: readonly T[]; readonly end: R } {
  const steps: T[] = [];
  for (let step = run.next(); ; step = run.next()) {
    if (step.done === true) return { steps, end: step.value };
    steps.push(step.value);
  }
}
