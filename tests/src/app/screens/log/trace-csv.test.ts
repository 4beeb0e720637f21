// A trace saved for a spreadsheet: read back by another reader of CSV, the same in every language.

import Papa from 'papaparse/papaparse.min.js';
import { beforeAll, describe, expect, test } from 'vitest';
import { tracePlaces } from '../../../../../shared/trace/ask.ts';
import { traceLog } from '../../../../../shared/trace/stretches.ts';
import { placesToCsv } from '../../../../../src/app/screens/log/trace-csv.ts';
import { fetchEveryArea } from '../../../../../src/app/words/fetch.ts';
import { language, languages } from '../../../../../src/app/words/words.ts';
import { beginStory, counted, started, tellPlant, verified } from '../../../../shared/floor/story.ts';

beforeAll(async () => {
  await Promise.all(languages.map(fetchEveryArea));
});

function csvIn(code: (typeof languages)[number]): string {
  language.value = code;
  const story = beginStory();
  tellPlant(story);
  story.tell('line.panels-ruled', {
    line: 'L1',
    machines: [{ machine: 'M1', least: 0, most: 0 }],
    missed: 0,
  });
  story.tell('person.added', { person: 'ana', name: 'Ana', role: 'lead', badge: 'B-1', pin: null });
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { lot: '=LA', quantity: 9000 }));
  story.tell('run.started', started('r1'));
  story.tell('panels.counted', counted('r1', 1250));
  const csv = placesToCsv(tracePlaces(traceLog(story.entries), { lot: '=la' }), story.floor());
  language.value = 'en';
  return csv;
}

describe('placesToCsv()', () => {
  test('has these columns, in this order', () => {
    expect(csvIn('en').slice(1).split('\r\n')[0]?.replaceAll('"', '')).toBe(
      'line,lineName,run,runStarted,product,slot,feeder,reel,part,supplierPart,lot,dateCode,sureFirst,sureLast,possibleFirst,possibleLast,serials,at,who,whoName,guessed,madeOf',
    );
  });

  test('has plain numbers, ISO moments and names beside ids', () => {
    const [head = [], ...rows] = Papa.parse(csvIn('en').slice(1).trimEnd(), {
      newline: '\r\n',
      delimiter: ',',
    }).data;
    const data = rows.map((row) => Object.fromEntries(head.map((name, at) => [name, row[at] ?? ''])));
    expect(data).toMatchObject([
      {
        line: 'L1',
        lineName: 'Brae line 1',
        run: 'r1',
        lot: "'=LA",
        who: 'ana',
        whoName: 'Ana',
        sureFirst: '1',
        sureLast: '1250',
        possibleLast: '1250',
      },
    ]);
    expect(data[0]?.['runStarted']).toMatch(/^2026-03-02T06:00:\d\d\.000Z$/);
    expect(data[0]?.['at']).toMatch(/^2026-03-02T06:00:\d\d\.000Z$/);
    expect(csvIn('en')).toContain(',1,1250,1,1250,');
  });

  test('is the same in every language', () => {
    expect(new Set(languages.map(csvIn)).size).toBe(1);
  });
});
