// The table of traceability levels in the trace's README, against the columns that the exports really have.

import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { exportColumns } from '../../../../../shared/log/export-rows.ts';
import { compareEntries } from '../../../../../shared/log/order.ts';
import { tracePanel } from '../../../../../shared/trace/ask.ts';
import { traceLog } from '../../../../../shared/trace/stretches.ts';
import { heldColumns, heldCsv } from '../../../../../src/app/screens/log/held-model.ts';
import { placesToCsv, traceColumns } from '../../../../../src/app/screens/log/trace-csv.ts';
import { beginStory, counted, started, tellPlant, verified } from '../../../../shared/floor/story.ts';

const root = path.resolve(import.meta.dirname, '../../../../..');

/** Rows of the table: export, what it reaches, columns that it rests on, columns that it lacks. */
function rows() {
  const text = readFileSync(path.join(root, 'shared/trace/LEVELS.md'), 'utf8');
  const [, table = ''] = text.split('# Which level of IPC-1782 each export reaches');
  return table
    .split('\n')
    .filter((line) => line.startsWith('| ') && !line.startsWith('| ---') && !line.startsWith('| export'))
    .map((line) => {
      const [name = '', reaches = '', rests = '', lacks = ''] = line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim());
      const named = (cell: string) => [...cell.matchAll(/`([^`]+)`/g)].map(([, column = '']) => column);
      return { name, reaches, rests: named(rests), lacks: [...named(lacks), ...named(reaches)] };
    });
}

/** The columns of each export, read off what it really writes. */
function columnsBy(name: string): readonly string[] {
  const story = beginStory();
  tellPlant(story);
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', lot: 'LA' }));
  story.tell('run.started', started('r1'));
  story.tell('panels.counted', counted('r1', 1, 'PN1'));
  const floor = story.floor();
  const first = (csv: string) =>
    (csv.split('\r\n')[0] ?? '').replace('\ufeff', '').replaceAll('"', '').split(',');
  if (name.startsWith('log')) return exportColumns;
  if (name.startsWith('trace of a lot')) return first(placesToCsv([], floor));
  if (name.startsWith('held')) return first(heldCsv({ held: new Map() } as never, floor)); // its codes alone are read
  const panel = tracePanel(traceLog([...story.entries].sort(compareEntries)), 'PN1');
  return [
    ...Object.keys(panel ?? {}),
    ...Object.keys(panel?.slots[0] ?? {}),
    ...Object.keys(panel?.slots[0]?.lots[0] ?? {}),
  ];
}

test('each row rests on columns that are there, and lacks those that it says', () => {
  const all = rows();
  expect(all.map(({ name }) => name)).toEqual([
    'log (CSV, XLSX, JSON)',
    'log (CSV, XLSX, JSON)',
    'trace of a lot (CSV)',
    'trace of a panel (JSON)',
    'held panels (CSV)',
  ]);
  for (const { name, rests, lacks, reaches } of all) {
    const columns = columnsBy(name);
    expect(rests.length, `${name}: ${reaches}`).toBeGreaterThan(3);
    expect(
      rests.filter((column) => !columns.includes(column)),
      `${name} rests on what is not there`,
    ).toEqual([]);
    const there = lacks.filter((column) => columns.includes(column) && !['reel', 'lot'].includes(column));
    expect(there, `${name} has what it is said to lack`).toEqual([]);
  }
});

test('the columns that the trace and the list of held panels name are those that they write', () => {
  expect(columnsBy('trace of a lot')).toEqual([...traceColumns]);
  expect(columnsBy('held')).toEqual([...heldColumns]);
});

test('no level is claimed of which nothing was published: M3 and P3', () => {
  for (const { name, reaches } of rows()) expect(reaches, name).not.toMatch(/\b[MP]3\b/);
});
