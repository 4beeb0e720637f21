// A second plant from the file of the first: what it tells folds to the same lines and rules, and names no person, reel or run.

import { describe, expect, test } from 'vitest';
import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import {
  countPlantFile,
  plantDrafts,
  plantFileKinds,
  plantFileText,
  readPlantFile,
} from '../../../shared/floor/plant-file.ts';
import { beginStory, tellPlant, verified } from './story.ts';

/** A plant at work: named, with people, a reel on the line and rules of its own. */
function firstPlant() {
  const story = beginStory();
  tellPlant(story);
  story.tell('plant.named', { name: 'Fell Works', zone: 'Europe/Berlin' });
  story.tell('person.added', {
    person: 'ana',
    name: 'Ana Fell',
    role: 'engineer',
    badge: 'BADGE-77',
    pinSet: 'p1',
  });
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'REEL-4711' }));
  story.tell('line.idle-ruled', { line: 'L1', minutes: 12 });
  story.tell('supplier.approved', { supplierPart: 'KP-77', part: 'R-100' });
  return story;
}

/** The same with a list of parts, and with rules of pictures, care, paste and places. */
function ruledPlant() {
  const story = firstPlant();
  story.tell('line.pictures-ruled', { line: 'L1', evidence: true, days: 30, megabytes: 200 });
  story.tell('feeder.care-ruled', { type: null, placements: 500_000 });
  story.tell('place.described', { place: 'DRY', air: 'dry', celsius: null, humidity: 5 });
  const hours = { thawHours: 4, outHours: 48, openHours: 24, stencilHours: 8 };
  story.tell('paste.ruled', { paste: 'P-1', ...hours, source: 'sheet' });
  story.tell('parts.listed', { source: 'parts.csv', parts: [listed('R-100', 3), listed('R-200', 0)] });
  story.tell('parts.priced', {
    source: 'parts.csv',
    parts: [{ part: 'R-100', price: { each: 0.012, currency: 'EUR' } }],
  });
  // More makers than one entry takes: told in two.
  for (const at of [0, 1])
    story.tell('parts.listed', { source: 'more.csv', parts: [listed('R-300', 200, at * 200)] });
  return story;
}

function listed(part: string, makers: number, from = 0): PayloadOf<'parts.listed'>['parts'][number] {
  const none = { bodyMm: null, bodyXMm: null, bodyYMm: null, tapeWidthMm: null, pitchMm: null };
  return {
    ...none,
    part,
    description: null,
    value: '100 Ω',
    tolerance: '1 %',
    package: null,
    family: null,
    pins: null,
    msl: '3',
    comesIn: 'tape',
    ageMonths: 24,
    orientation: 'pin 1 at the holes',
    makers: Array.from({ length: makers }, (_, at) => ({
      supplierPart: `KP-${from + at}`,
      product: at === 0 ? null : 'Brook',
    })),
  };
}

describe('the file of a plant', () => {
  test('tells a second plant the same lines, rules and parts, and leaves the name to it', () => {
    const first = firstPlant().floor();
    const read = readPlantFile(plantFileText(first));
    if (!read.ok) throw new Error(JSON.stringify(read.error));
    expect(read.value.name).toBe('Fell Works');
    const story = beginStory();
    for (const { kind, payload } of read.value.drafts) story.tell(kind, payload as never);
    const second = story.floor();
    expect(second.lines).toEqual(first.lines);
    expect(second.rules).toEqual(first.rules);
    expect(second.calendars).toEqual(first.calendars);
    expect(second.idles).toEqual(first.idles);
    expect(second.approvedByHand).toEqual(first.approvedByHand);
    expect(second.feederTypes).toEqual(first.feederTypes);
    expect(second.plant.size).toBe(0);
    expect([second.people.size, second.reels.size, second.setups.size, second.runs.size]).toEqual([
      0, 0, 0, 0,
    ]);
    expect(countPlantFile(read.value)).toMatchObject({ lines: first.lines.size, parts: 1 });
  });

  test('tells its part list, its paste, its places, and when feeders are due and pictures kept', () => {
    const first = ruledPlant().floor();
    const read = readPlantFile(plantFileText(first));
    if (!read.ok) throw new Error(JSON.stringify(read.error));
    const story = beginStory();
    for (const { kind, payload } of read.value.drafts) story.tell(kind, payload as never);
    const second = story.floor();
    for (const part of [
      'pictureRules',
      'listed',
      'prices',
      'parts',
      'productMakers',
      'approvedByHand',
      'careRules',
      'pasteRules',
      'placeAirs',
    ] as const)
      expect(new Map<string, unknown>(second[part])).toEqual(new Map<string, unknown>(first[part]));
    expect(second.listed.size).toBe(3);
    expect(second.prices.size).toBe(1);
  });

  test('says that it is newer than the first files, which are read still', () => {
    const file = JSON.parse(plantFileText(ruledPlant().floor()));
    expect(file.version).toBe(2);
    expect(readPlantFile(JSON.stringify({ ...file, version: 1 })).ok).toBe(true);
    expect(readPlantFile(JSON.stringify({ ...file, version: 3 }))).toEqual({
      ok: false,
      error: { code: 'newer' },
    });
  });

  test('names nobody and nothing of the floor', () => {
    const text = plantFileText(firstPlant().floor());
    for (const word of ['ana', 'Ana Fell', 'BADGE-77', 'REEL-4711', 'Brook'])
      expect(text).not.toContain(`"${word}`);
    for (const { kind } of plantDrafts(firstPlant().floor())) expect(plantFileKinds).toContain(kind);
  });
});

describe('a file that is not right is told', () => {
  const text = plantFileText(firstPlant().floor());
  const changed = (
    change: (file: { version: number; told: { kind: string; payload: Record<string, unknown> }[] }) => void,
  ) => {
    const file = JSON.parse(text);
    change(file);
    return readPlantFile(JSON.stringify(file));
  };

  test.each([
    ['', 'not-json'],
    [text.slice(0, -20), 'not-json'],
    ['[]', 'not-a-plant'],
    ['{"file":"other","told":[]}', 'not-a-plant'],
    ['{"file":"reelward-plant","version":99,"name":null,"told":[]}', 'newer'],
    ['{"file":"reelward-plant","version":1,"name":null,"told":[]}', 'no-lines'],
  ])('%.20s… is %s', (bad, code) => {
    expect(readPlantFile(bad)).toMatchObject({ ok: false, error: { code } });
  });

  test('an entry of another kind by its number and kind', () => {
    const read = changed(({ told }) => {
      told.splice(1, 0, { kind: 'person.added', payload: { person: 'eve' } });
    });
    expect(read).toEqual({ ok: false, error: { code: 'kind', at: 2, kind: 'person.added', where: '' } });
  });

  test('a damaged entry by its number, kind and place', () => {
    const read = changed(({ told }) => {
      const line = told.find(({ kind }) => kind === 'line.defined');
      if (line) line.payload['zone'] = 7;
    });
    expect(read).toMatchObject({
      ok: false,
      error: { code: 'payload', kind: 'line.defined', where: 'zone' },
    });
  });

  test('a byte order mark is passed over', () => {
    expect(readPlantFile(`\ufeff${text}`).ok).toBe(true);
  });
});
