// What a package's label says to a reader: this project's own reads the same package back, whatever the package is.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { IDENTIFIERS } from '../../../shared/labels/identifiers.ts';
import { parseLabel } from '../../../shared/labels/label.ts';
import { packageId } from '../../../shared/labels/package-id.ts';
import {
  type PrintedPackage,
  packageElements,
  packageMessage,
} from '../../../shared/labels/package-label.ts';
import { labelMsls } from '../../../shared/labels/reading.ts';

const reel = packageId('00112233445566778899', 42);
const plain: PrintedPackage = {
  reel,
  part: 'RC-0402',
  supplierPart: null,
  quantity: null,
  lot: null,
  dateCode: null,
  msl: null,
  expires: null,
};

/** Texts as part numbers and lots are written, and harder ones: letters in front like identifiers, accents, blanks inside. */
const text = fc.oneof(
  fc.stringMatching(/^[0-9A-Z][0-9A-Za-z./_+#-]{0,24}$/),
  fc.stringMatching(/^(P|1P|Q|1T|9D|10D|3S|06|\]|\^|@|\|)[0-9A-Za-z ]{0,8}[0-9A-Z]$/),
  fc.string({ unit: 'grapheme', minLength: 1, maxLength: 20 }),
);
const week = fc
  .tuple(fc.integer({ min: 15, max: 35 }), fc.integer({ min: 1, max: 52 }))
  .map(([year, number]) => `${year}${String(number).padStart(2, '0')}`);
const facts: fc.Arbitrary<PrintedPackage> = fc.record({
  reel: fc
    .tuple(fc.stringMatching(/^[0-9a-f]{16}$/), fc.integer({ min: 1, max: 900_000 }))
    .map(([hash, at]) => packageId(hash, at)),
  part: fc.option(text),
  supplierPart: fc.option(text),
  quantity: fc.option(fc.nat(200_000)),
  lot: fc.option(text),
  dateCode: fc.option(fc.oneof(week, fc.stringMatching(/^[0-9A-Z]{1,8}$/))),
  msl: fc.option(fc.constantFrom(...labelMsls)),
  expires: fc.option(
    fc
      .date({ min: new Date('2026-01-01'), max: new Date('2039-12-31'), noInvalidDate: true })
      .map((date) => date.toISOString().slice(0, 10)),
  ),
});

/** True for what an envelope can carry. */
const carries = (value: string) => value === value.trim() && !/[\u0000-\u001f\u007f-\u009f]/.test(value);

describe('the label of a package', () => {
  test('is read back as the same package, without a doubt', () => {
    fc.assert(
      fc.property(facts, (told) => {
        const read = parseLabel([packageMessage(told)]);
        const kept = (value: string | null) => (value !== null && carries(value) ? value : null);
        expect({
          reel: read.reel,
          part: read.part,
          supplierPart: read.supplierPart,
          quantity: read.quantity,
          lot: read.lot,
          dateCode: read.dateCode,
          msl: read.msl,
          expires: read.expires,
        }).toEqual({
          ...told,
          part: kept(told.part),
          supplierPart: kept(told.supplierPart),
          lot: kept(told.lot),
        });
        expect(read.ambiguous).toEqual([]);
        expect(read.unit).toBeNull();
      }),
      { numRuns: 500 },
    );
  });

  test('carries the identifiers of the published list, its own id first', () => {
    const all = packageElements({
      ...plain,
      supplierPart: 'AB 1',
      quantity: 12,
      lot: 'L',
      dateCode: '2618',
      msl: '3',
      expires: '2027-01-31',
    });
    expect(all.map(({ id }) => id)).toEqual(['3S', 'P', '1P', 'Q', '1T', '10D', '13E', '14D']);
    for (const { id } of all) expect(IDENTIFIERS.has(id)).toBe(true);
    expect(packageMessage({ ...plain, quantity: 12 })).toBe(
      `[)>\x1e06\x1d3S${reel}\x1dPRC-0402\x1dQ12\x1e\x04`,
    );
  });

  test('gives a date code that is no week as it stands', () => {
    expect(packageElements({ ...plain, dateCode: '2654' }).at(-1)).toEqual({ id: '9D', value: '2654' });
    expect(packageElements({ ...plain, dateCode: 'C4' }).at(-1)).toEqual({ id: '9D', value: 'C4' });
  });

  test('leaves out what would tear it, and nothing else', () => {
    const torn = packageElements({ ...plain, part: 'A\x1dB', lot: ' L', quantity: 7.5 });
    expect(torn).toEqual([{ id: '3S', value: reel }]);
  });
});
