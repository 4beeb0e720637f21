// Exports: what a filter keeps, how tables read, and that no change of a file goes unseen.

import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { takeName } from '../../../shared/floor/people.ts';
import { verifyChains } from '../../../shared/log/chain.ts';
import { chainId, type Entry, entryId } from '../../../shared/log/entry.ts';
import { createExporter, exportLog, isOmitted } from '../../../shared/log/export.ts';
import { parseExport, parseExportRows } from '../../../shared/log/export-read.ts';
import {
  csvHeader,
  entryCellsOf,
  exportColumns,
  guardFormula,
  itemToCells,
  itemToCsv,
  itemToJson,
  itemToWorkbookRow,
  type PeopleNames,
  workbookHeader,
  workbookText,
} from '../../../shared/log/export-rows.ts';
import { verifyExport } from '../../../shared/log/export-verify.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { sealEntry } from '../../../shared/log/seal.ts';
import { beginStory, counted, started, startMs, tellPlant, verified } from '../floor/story.ts';

function twoTablets(): readonly Entry[] {
  const story = beginStory();
  tellPlant(story);
  story.tell('tablet.opened', { name: 'rear', app: '0.1.0', key: null, previous: null }, { tablet: 'T2' });
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { lot: '=1+1', reel: 'K1' }));
  story.tell(
    'reel.verified',
    verified('M1-F-002', 'X-9', { verdict: 'refused', reasons: [{ code: 'wrong-part' }] }),
    {
      tablet: 'T2',
      who: 'bo',
    },
  );
  story.tell('run.started', started('run-1'), { tablet: 'T2' });
  story.tell('panels.counted', counted('run-1', 5, 'BW-1'));
  story.tell('panels.counted', counted('run-1', 3), { tablet: 'T2' });
  story.tell('run.ended', { run: 'run-1', line: 'L1', panels: 8, note: 'a\tb "c", d\r\ne' });
  return story.entries;
}

const log = twoTablets();
const inOrder = [...log].sort(compareEntries);
const iso = (second: number) => new Date(startMs + second * 1000).toISOString();

describe('exportLog()', () => {
  test('keeps every entry in folding order and says nothing of omissions without a filter', () => {
    expect(exportLog([...log].reverse())).toEqual(inOrder);
  });

  test('keeps what every part of the filter fits', () => {
    const rows: readonly (readonly [
      filter: Parameters<typeof exportLog>[1],
      kept: (entry: Entry) => boolean,
    ])[] = [
      [{ from: iso(7) }, (entry) => entry.at >= iso(7)],
      [{ to: iso(7) }, (entry) => entry.at <= iso(7)],
      [
        { from: iso(7), to: '2026-03-02T07:00:08.000+01:00' },
        (entry) => entry.at >= iso(7) && entry.at <= iso(8),
      ],
      [{ line: 'L1' }, (entry) => entry.payload['line'] === 'L1'],
      [{ slot: 'M1-F-002' }, (entry) => entry.payload['slot'] === 'M1-F-002'],
      [{ who: 'bo' }, (entry) => entry.who === 'bo'],
      [{ verdict: 'refused' }, (entry) => entry.payload['verdict'] === 'refused'],
      [{ kinds: ['run.started', 'run.ended'] }, (entry) => entry.kind.startsWith('run.')],
      [{ line: 'L2' }, () => false],
    ];
    for (const [filter, kept] of rows) {
      const entries = exportLog(log, filter).filter((item) => !isOmitted(item));
      expect(entries, JSON.stringify(filter)).toEqual(inOrder.filter(kept));
    }
  });

  test('names each stretch left out by its ends and last hash', () => {
    const items = exportLog(log, { kinds: ['reel.verified'] });
    const stretches = items.filter(isOmitted).map(({ omitted }) => omitted);
    const own = log.filter((entry) => entry.tablet === 'T1');
    expect(stretches).toContainEqual({
      tablet: 'T1',
      epoch: 'T1-life-1',
      fromSeq: 1,
      toSeq: 5,
      hash: own[4]?.hash,
    });
    expect(items.findIndex((item) => isOmitted(item) && item.omitted.tablet === 'T1')).toBeLessThan(
      items.findIndex((item) => !isOmitted(item) && item.tablet === 'T1'),
    );
  });

  test('throws a RangeError where a limit is no moment', () => {
    expect(() => createExporter({ from: 'yesterday' })).toThrow(RangeError);
  });

  test('of an export of an export still joins every chain', () => {
    const once = exportLog(log, { line: 'L1' });
    const entries = once.filter((item): item is Entry => !isOmitted(item));
    const omitted = once.filter(isOmitted).map((item) => item.omitted);
    const twice = exportLog(entries, { kinds: ['reel.verified', 'run.ended'] }, omitted);
    const report = verifyExport(parseExport(twice.map((item) => `${itemToJson(item)}\n`).join('')));
    expect(report).toMatchObject({ ok: true, entries: 3, omitted: log.length - 3 });
  });
});

describe('guardFormula()', () => {
  test('puts an apostrophe before every text that a spreadsheet would compute', () => {
    // OWASP "CSV Injection": = + - @ tab CR LF and full-width forms.
    for (const first of ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠'])
      expect(guardFormula(`${first}1`)).toBe(`'${first}1`);
    for (const plain of ['1=1', 'M1-F-001', ' =1', "'=1", '']) expect(guardFormula(plain)).toBe(plain);
  });
});

/** Each record written with the names that the log has told up to it. */
function withNames<T>(
  items: ReturnType<typeof exportLog>,
  write: (item: ReturnType<typeof exportLog>[number], names: PeopleNames) => T,
): readonly T[] {
  const names = new Map<string, string>();
  return items.map((item) => {
    if (!isOmitted(item)) takeName(names, item);
    return write(item, names);
  });
}

const csvOf = (items: ReturnType<typeof exportLog>) => [csvHeader(), ...withNames(items, itemToCsv)].join('');
const jsonOf = (items: ReturnType<typeof exportLog>) => items.map((item) => `${itemToJson(item)}\n`).join('');
function rowsOf(items: ReturnType<typeof exportLog>): string[][] {
  const width = items.reduce((most, item) => Math.max(most, entryCellsOf(item)), 1);
  const rows = withNames(items, (item, names) => itemToWorkbookRow(item, width, names));
  return [workbookHeader(width), ...rows].map((row) => row.map(workbookText));
}

describe('tables', () => {
  test('a CSV read by another reader has the columns, the facts and a guarded lot', () => {
    const { data } = Papa.parse<Record<string, string>>(csvOf(inOrder).trimEnd(), { header: true });
    expect(Object.keys(data[0] ?? {})).toEqual([...exportColumns]);
    const loaded = data.find((row) => row['reel'] === 'K1');
    expect(loaded).toMatchObject({ lot: "'=1+1", slot: 'M1-F-001', verdict: 'accepted', quantity: '1000' });
    expect(data.find((row) => row['verdict'] === 'refused')).toMatchObject({
      reasons: 'wrong-part',
      who: 'bo',
    });
    expect(JSON.parse(loaded?.['entry'] ?? '')).toEqual(
      inOrder.find((entry) => entry.payload['reel'] === 'K1'),
    );
  });

  test('every line of a CSV is one record, whatever its texts hold', () => {
    expect(csvOf(inOrder).trimEnd().split('\r\n')).toHaveLength(inOrder.length + 1);
  });

  test('a stretch left out shows its chain, its ends and its last hash', () => {
    const omitted = { tablet: 'T1', epoch: 'e', fromSeq: 3, toSeq: 9, hash: 'a'.repeat(64) };
    expect(itemToCells({ omitted })).toMatchObject({
      tablet: 'T1',
      epoch: 'e',
      seq: '3..9',
      hash: omitted.hash,
    });
  });

  test('a record too long for one workbook cell goes on in the next and reads back whole', () => {
    const story = beginStory();
    const note = `${'é😀 _x0041_ '.repeat(40)}`.slice(0, 200);
    const slots = Array.from({ length: 400 }, (_, at) => ({
      slot: `M1-F-${at}`,
      part: `P ${at}`,
      perPanel: 1,
      tapeWidthMm: 8,
      pitchMm: 4,
      positions: 1,
      alternates: [],
      supplierParts: [],
      note,
    }));
    story.tell('setup.taken', {
      setup: 's',
      product: 'Brook',
      side: 'top',
      revision: 'A',
      line: 'L1',
      source: 'x',
      slots,
    });
    const rows = rowsOf(story.entries);
    expect(rows[0]?.length).toBeGreaterThan(exportColumns.length);
    for (const cell of rows.flat()) {
      expect(cell.length).toBeLessThanOrEqual(32_767);
      expect(cell).toBe(cell.trim());
    }
    expect(parseExportRows(rows)).toEqual({ entries: story.entries, omitted: [], faults: [] });
  });
});

describe('parseExport()', () => {
  test('reads every form back to the same records', () => {
    for (const filter of [{}, { line: 'L1' }, { kinds: ['run.ended'] }]) {
      const items = exportLog(log, filter);
      const wanted = {
        entries: items.filter((item) => !isOmitted(item)),
        omitted: items.filter(isOmitted).map(({ omitted }) => omitted),
        faults: [],
      };
      expect(parseExport(jsonOf(items))).toEqual(wanted);
      expect(parseExport(csvOf(items))).toEqual(wanted);
      expect(parseExport(`\ufeff${csvOf(items)}`)).toEqual(wanted);
      expect(
        parseExport(Papa.unparse(Papa.parse(csvOf(items).trimEnd()).data as string[][], { delimiter: ';' })),
      ).toEqual(wanted);
      expect(parseExportRows(rowsOf(items))).toEqual(wanted);
    }
  });

  test('an empty text is an empty log', () => {
    expect(parseExport('')).toEqual({ entries: [], omitted: [], faults: [] });
  });

  test('tells row, column and code of what is no record', () => {
    const [first] = inOrder;
    const good = itemToJson(first as Entry); // the log is not empty
    const rows: readonly (readonly [text: string, fault: object, why: string])[] = [
      [`${good}\n{"v":`, { row: 2, code: 'not-json' }, 'a line that was cut'],
      [`${good}\n{"v":1}`, { row: 2, code: 'not-a-record', entry: null }, 'a document of another kind'],
      [
        good.replace('"who":"ana"', '"who":7'),
        { row: 1, code: 'not-a-record', column: 'who' },
        'a fact of another type',
      ],
      [
        good.replace('{"at"', '{"extra":1,"at"'),
        { row: 1, column: 'extra', entry: { seq: 1 } },
        'a key too many',
      ],
      ['part,slot\nR-100,M1-F-001', { row: 1, code: 'no-entry-column' }, 'another table'],
      [`{"omitted":{"tablet":"T1"}}`, { row: 1, code: 'not-a-record' }, 'half a stretch'],
    ];
    for (const [text, fault, why] of rows) expect(parseExport(text).faults[0], why).toMatchObject(fault);
  });

  test('finds every readable cell that was altered', () => {
    const rows = rowsOf(inOrder);
    for (let row = 1; row < rows.length; row += 1) {
      for (const [at, column] of exportColumns.slice(0, -1).entries()) {
        if (column === 'right') continue; // hangs on the whole log: not known from the row
        const changed = rows.map((cells) => [...cells]);
        const cells = changed[row] as string[]; // within bounds
        cells[at] = `${cells[at]}0`;
        const { faults } = parseExportRows(changed, { takeName });
        expect(faults).toEqual([
          {
            row: row + 1,
            column,
            code: 'cell-differs',
            found: cells[at],
            wanted: rows[row]?.[at],
            entry: expect.objectContaining({ seq: inOrder[row - 1]?.seq }),
          },
        ]);
      }
    }
  });
});

/** Which entry a change to a log must be named by: the first, in the order of chains, whose link no longer holds. */
type Change = (
  entries: Entry[],
  at: number,
) => { readonly entries: readonly Entry[]; readonly broken: string | null };

const replaced = <T>(list: readonly T[], at: number, value: T): T[] =>
  list.map((each, index) => (index === at ? value : each));
const without = <T>(list: readonly T[], at: number): T[] => list.filter((_, index) => index !== at);
const successor = (entries: readonly Entry[], entry: Entry): Entry | undefined =>
  entries.find((other) => chainId(other) === chainId(entry) && other.seq === entry.seq + 1);

const changes: Readonly<Record<string, Change>> = {
  'a changed fact': (entries, at) => {
    const entry = entries[at] as Entry; // within bounds
    const changed = { ...entry, payload: { ...entry.payload, lot: 'changed' } };
    return { entries: replaced(entries, at, changed), broken: entryId(entry) };
  },
  'a changed person': (entries, at) => {
    const entry = entries[at] as Entry; // within bounds
    return { entries: replaced(entries, at, { ...entry, who: 'eve' }), broken: entryId(entry) };
  },
  'a fact changed and sealed anew': (entries, at) => {
    const entry = entries[at] as Entry; // within bounds
    const forged = sealEntry({ ...entry, payload: { ...entry.payload, lot: 'forged' } });
    const next = successor(entries, entry);
    return { entries: replaced(entries, at, forged), broken: next ? entryId(next) : null };
  },
  'a dropped entry': (entries, at) => {
    const entry = entries[at] as Entry; // within bounds
    const next = successor(entries, entry);
    return { entries: without(entries, at), broken: next ? entryId(next) : null };
  },
  'a doubled entry': (entries, at) => {
    const entry = entries[at] as Entry; // within bounds
    return { entries: [...entries, entry], broken: entryId(entry) };
  },
  'lines in another order': (entries, at) => ({
    entries: [...entries.slice(at), ...entries.slice(0, at)].reverse(),
    broken: null,
  }),
  'an entry moved down its chain': (entries, at) => {
    const entry = entries[at] as Entry; // within bounds
    const next = successor(entries, entry);
    if (!next) return { entries, broken: null };
    const swapped = replaced(entries, at, { ...entry, seq: next.seq });
    swapped[entries.indexOf(next)] = { ...next, seq: entry.seq };
    return { entries: swapped, broken: entryId(entry) };
  },
};

describe('verifyExport()', () => {
  test('holds for every filtered export of a whole log, in every form', () => {
    const request = fc.record(
      {
        line: fc.constantFrom('L1', 'L2'),
        who: fc.constantFrom('ana', 'bo'),
        kinds: fc.subarray([...new Set(log.map(({ kind }) => kind))]),
        from: fc.integer({ min: 0, max: 14 }).map(iso),
        to: fc.integer({ min: 0, max: 14 }).map(iso),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(request, (filter) => {
        const items = exportLog(log, filter);
        for (const reading of [
          parseExport(jsonOf(items)),
          parseExport(csvOf(items)),
          parseExportRows(rowsOf(items)),
        ]) {
          const report = verifyExport(reading);
          expect(report).toMatchObject({ ok: true, firstBroken: null });
          expect(report.entries + report.omitted).toBe(log.length);
        }
      }),
    );
  });

  test('names the first link that a change breaks', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...Object.entries(changes)),
        fc.nat(inOrder.length - 1),
        fc.constantFrom('json', 'csv', 'rows'),
        ([name, change], at, form) => {
          const { entries, broken } = change([...inOrder], at);
          const text = form === 'csv' ? csvOf(entries) : jsonOf(entries);
          const reading = form === 'rows' ? parseExportRows(rowsOf(entries)) : parseExport(text);
          const report = verifyExport(reading);
          expect(report.firstBroken?.id ?? null, name).toBe(broken);
          expect(report.ok).toBe(broken === null);
        },
      ),
      { numRuns: 400 },
    );
  });

  test('finds a dropped entry of a filtered export too, and a stretch that was stretched', () => {
    const items = exportLog(log, { kinds: ['reel.verified', 'panels.counted', 'run.ended'] });
    for (const [at, item] of items.entries()) {
      if (!isOmitted(item)) {
        const next = items
          .slice(at + 1)
          .some((other) => (isOmitted(other) ? other.omitted : other).tablet === item.tablet);
        const report = verifyExport(parseExport(jsonOf(without(items, at))));
        expect(report.ok, entryId(item)).toBe(!next);
        continue;
      }
      const wider = { omitted: { ...item.omitted, toSeq: item.omitted.toSeq + 1 } };
      const isLast = !items.some(
        (other) =>
          !isOmitted(other) && other.tablet === item.omitted.tablet && other.seq > item.omitted.toSeq,
      );
      expect(verifyExport(parseExport(jsonOf(replaced(items, at, wider)))).ok).toBe(isLast);
      const forged = { omitted: { ...item.omitted, hash: 'f'.repeat(64) } };
      expect(verifyExport(parseExport(jsonOf(replaced(items, at, forged)))).ok).toBe(isLast);
    }
  });

  test('sees a cut-off end against heads kept elsewhere', () => {
    const { heads } = verifyChains(log);
    const last = inOrder.at(-1) as Entry; // the log is not empty
    const report = verifyExport(
      { entries: inOrder.slice(0, -1), omitted: [], faults: [] },
      { checkpoints: heads },
    );
    expect(report.firstBroken).toMatchObject({ fault: 'truncated', tablet: last.tablet, seq: last.seq });
  });

  test('names a missing signature where the tablet has a key, and the chain’s own fault first', () => {
    const report = verifyExport(
      { entries: inOrder, omitted: [], faults: [] },
      { mustBeSigned: (entry) => entry.tablet === 'T2' },
    );
    expect(report.firstBroken).toMatchObject({ fault: 'signature-missing', tablet: 'T2', seq: 1 });
  });
});
