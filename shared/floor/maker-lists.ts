// Which makers' numbers does each list hold? What the log said of makers: named in a setup, approved by hand, withdrawn; written by the fold,
// read by the questions in makers.ts. Apart from them, since a fold compares no part numbers.

import { chunksOf } from '../kit/chunks.ts';
import { mostMakers } from './kinds-parts.ts';
import type { FloorState, Setup } from './state.ts';

/** A maker's number taken off a setup's list after the setup was taken in. */
export interface WithdrawnMaker {
  readonly supplierPart: string;
  readonly part: string;
  readonly atMs: number;
}

/** Each setup's lists, made once: a setup's record is replaced and never changed. */
const listsOf = new WeakMap<Setup, ReadonlyMap<string, readonly string[]>>();

function lists(setup: Setup): ReadonlyMap<string, readonly string[]> {
  const known = listsOf.get(setup);
  if (known) return known;
  const made = new Map<string, string[]>();
  for (const { part, supplierParts } of setup.slots) {
    const list = made.get(part) ?? [];
    for (const each of supplierParts) if (!list.includes(each)) list.push(each);
    made.set(part, list);
  }
  listsOf.set(setup, made);
  return made;
}

/** A part of the list as often as its makers need, so many a time as one entry takes: told one after the other they add up. */
export function partByMakers<T extends { readonly makers: readonly unknown[] }>(part: T): readonly T[] {
  if (part.makers.length === 0) return [part];
  return chunksOf(part.makers, mostMakers).map((makers) => ({ ...part, makers }));
}

/** Where the list's makers of a part in one product stand in the map. */
export function makerKey(product: string, part: string): string {
  return `${product}\n${part}`;
}

/** Product and part of a `makerKey`. */
export function productAndPart(key: string): readonly [product: string, part: string] {
  const at = key.lastIndexOf('\n');
  return [key.slice(0, at), key.slice(at + 1)];
}

/**
 * The makers' numbers that a setup names for a part, withdrawn ones too, and those that the plant's list has for its product; empty where neither
 * has a list for it.
 */
export function makersListed(state: FloorState, setup: string, part: string): readonly string[] {
  const taken = state.setups.get(setup);
  if (!taken) return [];
  const own = lists(taken).get(part) ?? [];
  const more = state.productMakers.get(makerKey(taken.product, part)) ?? [];
  return more.length === 0 ? own : [...new Set([...own, ...more])];
}

/** Those of a setup's list for a part that nobody withdrew. */
export function makersApproved(state: FloorState, setup: string, part: string): readonly string[] {
  const withdrawn = state.setups.get(setup)?.withdrawn ?? [];
  return makersListed(state, setup, part).filter(
    (each) => !withdrawn.some((gone) => gone.part === part && gone.supplierPart === each),
  );
}

/** Somebody approved a maker's number for a part by hand: for the plant, and again for the setups from which it was withdrawn. */
export function approveMaker(state: FloorState, supplierPart: string, part: string): void {
  nameMaker(state.approvals, supplierPart, part);
  nameMaker(state.approvedByHand, supplierPart, part);
  for (const setup of state.setups.values()) approveAgain(state, setup, { supplierPart, part });
}

/** The plant's list approves a maker's number for a part in one product: in its setups, those to come and those from which it was withdrawn. */
export function approveMakerIn(
  state: FloorState,
  product: string,
  { supplierPart, part }: Pick<WithdrawnMaker, 'supplierPart' | 'part'>,
): void {
  nameMaker(state.approvals, supplierPart, part);
  nameMaker(state.productMakers, makerKey(product, part), supplierPart);
  for (const setup of state.setups.values())
    if (setup.product === product) approveAgain(state, setup, { supplierPart, part });
}

function approveAgain(
  state: FloorState,
  setup: Setup,
  { supplierPart, part }: Pick<WithdrawnMaker, 'supplierPart' | 'part'>,
): void {
  const left = setup.withdrawn?.filter((gone) => gone.part !== part || gone.supplierPart !== supplierPart);
  if (left && left.length !== setup.withdrawn?.length)
    state.setups.set(setup.setup, { ...setup, withdrawn: left });
}

/** A setup that is taken in names makers for its own product; what was withdrawn before is approved anew there, and there alone. */
export function nameMakers(state: FloorState, { slots }: Pick<Setup, 'slots'>): void {
  for (const { part, supplierParts } of slots)
    for (const supplierPart of supplierParts) nameMaker(state.approvals, supplierPart, part);
}

/** Somebody withdrew a maker's number for a part: for the plant, and from every setup that is known by now. */
export function withdrawMaker(state: FloorState, gone: WithdrawnMaker): void {
  const { supplierPart, part } = gone;
  for (const named of [state.approvals, state.approvedByHand]) {
    const left = (named.get(supplierPart) ?? []).filter((each) => each !== part);
    if (left.length > 0) named.set(supplierPart, left);
    else named.delete(supplierPart);
  }
  for (const setup of state.setups.values()) {
    if (!makersApproved(state, setup.setup, part).includes(supplierPart)) continue;
    state.setups.set(setup.setup, { ...setup, withdrawn: [...(setup.withdrawn ?? []), gone] });
  }
  for (const [key, numbers] of state.productMakers) {
    if (productAndPart(key)[1] !== part || !numbers.includes(supplierPart)) continue;
    state.productMakers.set(
      key,
      numbers.filter((each) => each !== supplierPart),
    );
  }
}

function nameMaker(named: Map<string, readonly string[]>, supplierPart: string, part: string): void {
  const there = named.get(supplierPart) ?? [];
  if (!there.includes(part)) named.set(supplierPart, [...there, part]);
}
