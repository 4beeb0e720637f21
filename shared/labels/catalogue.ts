// Numbers of sellers and catalogues: what they mean for the plant its setup alone knows. Where a label states no part number of its own kind
// and such a number stands in the setup or among what it approves, it is that part. Refused: taking one in place of a part number
// that the label states, since the two may be of different parts.

import type { Basket, LabelElement } from './elements.ts';
import type { LabelExpectation } from './reading.ts';

/** Identifiers of MH10.8.2 for items, and keys of sellers' labels, that are nobody's part number by themselves. */
const CATALOGUE: ReadonlySet<string> = new Set([
  '3P',
  '4P',
  '20P',
  '21P',
  '25P',
  '30P',
  '31P',
  '32P',
  'pc',
  'PC',
]);

/** Gives the fields of part numbers that the label leaves open the catalogue numbers that the setup knows; several different ones give none. */
export function settleCatalogue(
  { elements, warnings }: Basket,
  expected: LabelExpectation | undefined,
): void {
  if (expected === undefined) return;
  for (const [field, known] of [
    ['part', expected.parts],
    ['supplierPart', expected.supplierParts],
  ] as const) {
    if (elements.some((element) => element.field === field)) continue;
    const found = elements.filter(
      ({ id, field: own, value }) => own === null && CATALOGUE.has(id) && known.has(value),
    );
    const [first, ...others] = found;
    if (first === undefined || others.some(({ value }) => value !== first.value)) continue;
    const told: LabelElement = { ...first, field };
    elements[elements.indexOf(first)] = told;
    warnings.push({ code: 'confirmed-by-setup', field, value: first.value });
  }
}
