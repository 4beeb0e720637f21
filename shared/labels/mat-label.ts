// The MAT-Label, a public European label for purchased production parts: MH10.8.2 identifiers, some with a meaning agreed
// in its specification. Source: MAT-Label 2.6 (2014) and the published guide to generating it, tables 1 to 23.

import type { LabelElement } from './elements.ts';

/** Title of the second lot on a MAT-Label; where it is filled, the reel holds two lots. */
export const SECOND_LOT = 'second lot';

const MEANINGS: Readonly<Record<string, Partial<LabelElement>>> = {
  '6D': { title: 'date of manufacturing YYYYMMDD', field: 'dateCode', rank: 5, kind: 'qualified-date' },
  Z: { title: 'moisture sensitivity level', field: 'msl', rank: 1, kind: 'msl' },
  '30P': { title: 'RoHS' },
  '31P': { title: 'ordering code' },
  '12V': { title: 'manufacturer number' },
  '10V': { title: 'manufacturer location' },
  '2P': { title: 'revision index' },
  '20P': { title: 'additional part information' },
  '16K': { title: 'shipping note number' },
  '20T': { title: 'count of lots' },
  '1T': { title: 'first lot' },
  '2T': { title: SECOND_LOT },
  '1Z': { title: 'supplier data' },
};

/** Gives the elements of one envelope the MAT-Label's meanings where it names itself by its version (12S, digits). */
export function asMatLabel(elements: readonly LabelElement[]): readonly LabelElement[] {
  let named = false;
  for (const { id, value } of elements) {
    if (id === '12S' && value.length <= 6 && /^\d+$/.test(value)) named = true;
  }
  if (!named) return elements;
  return elements.map((element) => ({ ...element, ...MEANINGS[element.id] }));
}
