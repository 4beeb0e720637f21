// Whose number is on the label, and is it approved here? Makers are approved for the product that names them: each setup has a list of its
// own for a part, and where it has one nothing else approves. What the plant approved by hand holds for the products that have none.
// Method: the state knows three things apart: every number that anybody named for a part (to read labels by), what was approved by hand,
// and of each setup what was withdrawn since it was taken in. Refused: one table for the plant; a maker approved for one customer's product
// would be taken for the next one's.

import { comparePartNumbers, type PartComparison } from '../labels/part-numbers.ts';
import { compareText } from '../log/order.ts';
import { makersApproved, makersListed } from './maker-lists.ts';
import type { FloorState } from './state.ts';

/** True where a list holds a maker's number, by the line's comparison. */
export function holdsMaker(
  list: readonly string[],
  supplierPart: string,
  comparison: PartComparison,
): boolean {
  return list.some((each) => comparePartNumbers(each, supplierPart, comparison) !== null);
}

/** True where a maker's number is approved for a part in this setup: by its own list, or by hand where it has none. */
export function isApprovedMaker(
  state: FloorState,
  setup: string,
  { part, supplierPart }: { readonly part: string; readonly supplierPart: string },
  comparison: PartComparison,
): boolean {
  if (makersListed(state, setup, part).length > 0)
    return holdsMaker(makersApproved(state, setup, part), supplierPart, comparison);
  return partsNamed(state.approvedByHand, supplierPart, comparison).includes(part);
}

/** The site parts for which anybody named a maker's number: what it stands for, whoever may use it. */
export function partsOfMaker(
  state: FloorState,
  supplierPart: string | null,
  comparison: PartComparison,
): readonly string[] {
  return supplierPart === null ? [] : partsNamed(state.approvals, supplierPart, comparison);
}

/** Products whose setups name a maker's number for a part, in order of their names. */
export function productsWithMaker(
  state: FloorState,
  { part, supplierPart }: { readonly part: string; readonly supplierPart: string },
  comparison: PartComparison,
): readonly string[] {
  const products = new Set<string>();
  for (const { setup, product } of state.setups.values())
    if (holdsMaker(makersApproved(state, setup, part), supplierPart, comparison)) products.add(product);
  return [...products].sort(compareText);
}

function partsNamed(
  named: ReadonlyMap<string, readonly string[]>,
  supplierPart: string,
  comparison: PartComparison,
): readonly string[] {
  const exact = named.get(supplierPart);
  if (exact) return exact;
  for (const [known, parts] of named) {
    if (comparePartNumbers(known, supplierPart, comparison) !== null) return parts;
  }
  return [];
}
