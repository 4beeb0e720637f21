// What the maker's number on a label says for or against a slot that takes the part.

import type { PartComparison } from '../labels/part-numbers.ts';
import { compareText } from '../log/order.ts';
import type { FitReason } from './fits.ts';
import { makersApproved, makersListed } from './maker-lists.ts';
import { isApprovedMaker, partsOfMaker, productsWithMaker } from './makers.ts';
import type { FloorState } from './state.ts';

/** The setup that is asked, and how its line compares part numbers. */
export interface FitSetup {
  readonly setup: string;
  readonly comparison: PartComparison;
}

/** What the maker's number on a label says against the site's number beside it; null where it says nothing against it. `also`: the site part as which the slot takes the maker's number itself. */
export function makerDoubt(
  state: FloorState,
  at: FitSetup,
  label: { readonly part: string; readonly supplierPart: string | null; readonly printed: string },
  also: string | null,
): FitReason | null {
  const { part, supplierPart, printed } = label;
  const { setup, comparison } = at;
  if (supplierPart === null || isApprovedMaker(state, setup, { part, supplierPart }, comparison)) return null;
  const standsFor = partsOfMaker(state, supplierPart, comparison);
  if (standsFor.length > 0 && !standsFor.includes(part)) {
    const approvedFor = [...standsFor].sort(compareText);
    return { code: 'part-contradicts', part: printed, supplierPart, approvedFor };
  }
  // Some labels carry the site's number in both fields: that is no maker's number. Two of them contradict each other.
  if (also !== null)
    return also === part
      ? null
      : { code: 'part-contradicts', part: printed, supplierPart, approvedFor: [also] };
  if (makersListed(state, setup, part).length === 0) return null;
  return notListed(state, at, { part, supplierPart });
}

/** A maker's number that is not approved for the part in this setup, with the products that have it on their lists. */
export function notListed(
  state: FloorState,
  { setup, comparison }: FitSetup,
  found: { readonly part: string; readonly supplierPart: string },
): FitReason {
  const approvedFor = productsWithMaker(state, found, comparison);
  return {
    code: 'maker-not-listed',
    ...found,
    listed: makersApproved(state, setup, found.part),
    approvedFor,
  };
}
