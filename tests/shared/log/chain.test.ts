// The chain check: whatever is done to a log, the first link that does not hold is named; what a file alone cannot show needs
// a checkpoint or a signature from elsewhere.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Checkpoint, verifyChains } from '../../../shared/log/chain.ts';
import { type Entry, entryId } from '../../../shared/log/entry.ts';
import { sealEntry } from '../../../shared/log/seal.ts';
import { makeChain } from '../../contract/entries.ts';

const length = 12;
const chains = ['a', 'b', 'c'].map((tablet) => makeChain({ tablet, count: length }));
const whole = chains.flat();
const heads: readonly Checkpoint[] = verifyChains(whole).heads;
const place = fc.record({ chain: fc.nat(2), at: fc.nat(length - 1) });

/** The log with one chain put in place of another. */
const withChain = (chain: number, changed: readonly Entry[]) =>
  chains.flatMap((one, at) => (at === chain ? changed : one));
/** A chain with one entry put in place of another, or dropped. */
const replaced = (chain: number, at: number, entries: readonly Entry[]) =>
  (chains[chain] ?? []).flatMap((entry, index) => (index === at ? entries : [entry]));
const entryAt = (chain: number, at: number) => chains[chain]?.[at] as Entry; // within bounds by the generators

describe('`verifyChains()`', () => {
  it('finds nothing in a whole log, whatever the order of its lines', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(whole, { minLength: whole.length }), (entries) => {
        expect(verifyChains(entries, { checkpoints: heads })).toMatchObject({
          ok: true,
          entries: 36,
          tablets: 3,
          omitted: 0,
          firstBroken: null,
        });
      }),
      { numRuns: 20 },
    );
  });

  it('names an entry whose content was changed', () => {
    fc.assert(
      fc.property(place, fc.constantFrom('payload', 'who', 'at', 'kind'), ({ chain, at }, field) => {
        const entry = entryAt(chain, at);
        const changed = { ...entry, [field]: field === 'payload' ? { text: 'other' } : `${entry.kind}x` };
        const report = verifyChains(withChain(chain, replaced(chain, at, [changed])));
        expect(report.firstBroken).toMatchObject({ id: entryId(entry), fault: 'hash-differs' });
      }),
    );
  });

  it('names the entry after one that was changed and sealed anew', () => {
    fc.assert(
      fc.property(fc.record({ chain: fc.nat(2), at: fc.nat(length - 2) }), ({ chain, at }) => {
        const forged = sealEntry({ ...entryAt(chain, at), payload: { text: 'other' } });
        const report = verifyChains(withChain(chain, replaced(chain, at, [forged])));
        expect(report.firstBroken).toMatchObject({
          id: entryId(entryAt(chain, at + 1)),
          fault: 'prev-differs',
        });
      }),
    );
  });

  it('names the entry after one that was dropped', () => {
    fc.assert(
      fc.property(fc.record({ chain: fc.nat(2), at: fc.nat(length - 2) }), ({ chain, at }) => {
        const report = verifyChains(withChain(chain, replaced(chain, at, [])));
        const wanted = {
          id: entryId(entryAt(chain, at + 1)),
          fault: 'missing',
          wanted: String(at + 1),
          found: String(at + 2),
        };
        expect(report.firstBroken).toMatchObject(wanted);
      }),
    );
  });

  it('names an entry that is there twice', () => {
    fc.assert(
      fc.property(place, ({ chain, at }) => {
        const report = verifyChains([...whole, entryAt(chain, at)]);
        expect(report.firstBroken).toMatchObject({ id: entryId(entryAt(chain, at)), fault: 'doubled' });
      }),
    );
  });

  it('names the first of two entries that changed places', () => {
    fc.assert(
      fc.property(fc.nat(2), fc.nat(length - 2), fc.nat(length - 1), (chain, one, step) => {
        const two = one + 1 + (step % (length - 1 - one));
        const changed = (chains[chain] ?? []).map((entry) => {
          if (entry.seq === one + 1) return { ...entryAt(chain, two), seq: one + 1 };
          return entry.seq === two + 1 ? { ...entryAt(chain, one), seq: two + 1 } : entry;
        });
        const report = verifyChains(withChain(chain, changed));
        expect(report.firstBroken).toMatchObject({ id: entryId(entryAt(chain, one)), fault: 'hash-differs' });
      }),
    );
  });

  it('cannot see a cut tail by itself, and sees it by a checkpoint', () => {
    fc.assert(
      fc.property(fc.nat(2), fc.nat(length - 1), (chain, kept) => {
        const cut = withChain(chain, (chains[chain] ?? []).slice(0, kept));
        expect(verifyChains(cut).ok).toBe(true);
        const report = verifyChains(cut, { checkpoints: heads });
        const wanted = {
          tablet: 'abc'[chain],
          seq: length,
          fault: 'truncated',
          wanted: String(length),
          found: String(kept),
        };
        expect(report.firstBroken).toMatchObject(wanted);
      }),
    );
  });

  it('cannot see a chain written anew by itself, and sees it by a checkpoint or by signatures', () => {
    const forged = withChain(
      1,
      makeChain({ tablet: 'b', count: length, payload: () => ({ text: 'another story' }) }),
    );
    expect(verifyChains(forged).ok).toBe(true);
    expect(verifyChains(forged, { checkpoints: heads }).firstBroken).toMatchObject({
      id: 'b/e1/12',
      fault: 'hash-differs',
    });
    const signed = forged.map((entry) => ({ ...entry, sig: 'A'.repeat(86) }));
    const real = new Set(whole.map((entry) => entry.hash));
    const report = verifyChains(signed, { signatureHolds: (entry) => real.has(entry.hash) });
    expect(report.firstBroken).toMatchObject({ id: 'b/e1/1', fault: 'signature-differs' });
  });

  it('walks across a stretch left out on purpose, but not across a false one', () => {
    const [first = []] = chains;
    const left = { tablet: 'a', epoch: 'e1', fromSeq: 3, toSeq: 6, hash: first[5]?.hash ?? '' };
    const entries = [...first.slice(0, 2), ...first.slice(6)];
    expect(verifyChains(entries, { omitted: [left] })).toMatchObject({ ok: true, omitted: 4 });
    expect(verifyChains(entries, { omitted: [{ ...left, hash: 'f'.repeat(64) }] }).firstBroken).toMatchObject(
      { id: 'a/e1/7', fault: 'prev-differs' },
    );
    expect(verifyChains(entries, { omitted: [{ ...left, toSeq: 5 }] }).firstBroken).toMatchObject({
      id: 'a/e1/7',
      fault: 'missing',
    });
  });

  it('of an empty log holds, and with a checkpoint does not', () => {
    expect(verifyChains([])).toMatchObject({ ok: true, entries: 0, tablets: 0, heads: [] });
    expect(verifyChains([], { checkpoints: heads }).firstBroken).toMatchObject({
      fault: 'truncated',
      found: '0',
    });
  });

  it('keeps two epochs of one tablet apart', () => {
    const second = makeChain({ tablet: 'a', epoch: 'e2', count: 3 });
    expect(verifyChains([...whole, ...second])).toMatchObject({ ok: true, tablets: 3 });
  });
});
