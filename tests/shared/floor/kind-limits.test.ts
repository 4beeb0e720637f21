// How long a text and how large a number of an entry may be: asked of the check itself, field by field, with the examples of every kind. What a
// log holds is read for good, so a limit that is narrowed by accident would make old entries unreadable.

import { expect, test } from 'vitest';
import * as z from 'zod/mini';
import { type EntryKind, entryKinds, schemaOf } from '../../../shared/floor/kinds.ts';
import { payloadExamples } from './examples.ts';

type Path = readonly (string | number)[];

const fits = (kind: EntryKind, payload: unknown) => z.safeParse(schemaOf(kind), payload).success;

/** The payload with another value at a place. */
function withValue(payload: unknown, [key, ...rest]: Path, value: unknown): unknown {
  if (key === undefined) return value;
  if (Array.isArray(payload))
    return payload.map((each, at) => (at === key ? withValue(each, rest, value) : each));
  const record = payload as Readonly<Record<string | number, unknown>>; // a path leads through objects and lists only
  return { ...record, [key]: withValue(record[key], rest, value) };
}

/** Every text and number of a payload, with its place. */
function* leavesOf(
  value: unknown,
  path: Path = [],
): Generator<{ readonly path: Path; readonly value: unknown }> {
  if (typeof value === 'string' || typeof value === 'number') yield { path, value };
  else if (value !== null && typeof value === 'object')
    for (const [key, each] of Object.entries(value))
      yield* leavesOf(each, [...path, Array.isArray(value) ? Number(key) : key]);
}

/** Fields by name, each once, with one place of the example that it stands at. */
function fieldsOf(
  kind: EntryKind,
  type: 'string' | 'number',
): ReadonlyMap<string, { path: Path; value: unknown }> {
  const found = new Map<string, { path: Path; value: unknown }>();
  for (const leaf of leavesOf(payloadExamples[kind])) {
    const place = leaf.path.map((key) => (typeof key === 'number' ? '[]' : key)).join('.');
    if (typeof leaf.value === type) found.set(`${kind} ${place.replaceAll('.[]', '[]')}`, leaf);
  }
  return found;
}

/** Limits -> fields, as the check has them. `of`: null for a field that has none. */
function byLimits(
  type: 'string' | 'number',
  of: (isTaken: (value: unknown) => boolean, value: unknown) => string | null,
): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  for (const kind of entryKinds)
    for (const [name, { path, value }] of fieldsOf(kind, type)) {
      const limits = of((other) => fits(kind, withValue(payloadExamples[kind], path, other)), value);
      if (limits !== null) found.set(limits, [...(found.get(limits) ?? []), name]);
    }
  return found;
}

const lines = (text: string) =>
  text
    .trim()
    .split('\n')
    .map((line) => line.trim())
    .sort();

test('a name that others refer to has 1 to 64 characters, a text up to 200, and these have limits of their own', () => {
  const found = byLimits('string', (isTaken) => {
    const isLong = (length: number) => isTaken('x'.repeat(length));
    // A word of a closed list, or a text of a form of its own.
    if (!isLong(2)) return null;
    const most = [20, 40, 64, 100, 200, 253, 500, 1364, 2000, 3000, 4000].find(
      (length) => isLong(length) && !isLong(length + 1),
    );
    return `${isLong(0) ? 0 : isLong(1) ? 1 : 2}–${most ?? '?'}`;
  });
  expect(found.get('1–64')?.length).toBeGreaterThan(150);
  expect(found.get('0–200')?.length).toBeGreaterThan(80);
  const others = [...found].filter(([limits]) => limits !== '1–64' && limits !== '0–200');
  expect(others.flatMap(([limits, names]) => names.map((name) => `${limits} ${name}`)).sort()).toEqual(
    lines(`
      0–20 checklist.template steps[].unit
      0–2000 conflict.settled conflict
      0–2000 log.exported filter
      0–2000 log.fetched filter
      0–2000 panels.contained codes[]
      0–40 jar.told from
      0–2000 reel.sighted codes[]
      0–40 reel.aired from
      0–40 station.silent since
      0–40 warning.raised due
      0–4000 label.taught definition.examples[].codes[]
      0–4000 label.taught definition.examples[].reads.part
      0–500 checklist.template steps[].group.en
      0–500 checklist.template steps[].text.en
      0–2000 shift.handed left[].of
      0–2000 shift.taken came[].of
      0–500 shift.handed note
      0–? reel.verified reasons[].wanted
      0–? tablet.opened key.kty
      1–100 label.taught definition.codes[].pieces[].text
      1–1364 passkey.added credential
      1–1364 passkey.removed credential
      1–200 panel.seen serial
      1–200 panels.corrected reason
      1–200 recipe.known recipe
      1–200 station.recipe recipe
      1–200 station.finding-cleared finding
      1–200 station.finding-cleared reason
      1–200 unproven.settled entries[]
      1–253 passkey.added host
      1–3000 ticket.taken ticket`),
  );
});

test('a number is none below nothing, a size is above it, and these have limits of their own', () => {
  const found = byLimits('number', (isTaken, value) => {
    const own = Number(value);
    const isWhole = Number.isInteger(own) && !isTaken(own + 0.5) && !isTaken(own - 0.5);
    const ends = [
      -500, -60, 0, 0.5, 1, 2, 3, 5, 6, 7, 8, 20, 30, 60, 100, 200, 500, 600, 1000, 1440, 2400, 3650, 10_000,
      25_000,
    ];
    const [less, more] = isWhole ? [-1, 1] : [-1e-6, 1e-6];
    const [below, above] = [isTaken(-1e9), isTaken(1e9)];
    const least = ends.find((end) => isTaken(end) && !isTaken(end + less));
    const open = ends.find((end) => !isTaken(end) && isTaken(end + more) && end + more <= own + 1e-6);
    const most = [...ends].reverse().find((end) => isTaken(end) && !isTaken(end + more));
    const before = [...ends].reverse().find((end) => !isTaken(end) && isTaken(end + less));
    const from = below ? '' : least === undefined ? `>${open ?? '?'}` : `${least}`;
    const to = above ? '' : most === undefined ? `<${before ?? '?'}` : `${most}`;
    return `${isWhole ? 'whole ' : ''}${from}…${to}`;
  });
  for (const [usual, count] of [
    ['whole 0…', 15],
    ['>0…', 20],
    ['0…', 15],
  ] as const)
    expect([usual, (found.get(usual)?.length ?? 0) >= count]).toEqual([usual, true]);
  const others = [...found].filter(([limits]) => !['whole 0…', '>0…', '0…'].includes(limits));
  expect(others.flatMap(([limits, names]) => names.map((name) => `${limits} ${name}`)).sort()).toEqual(
    lines(`
      -60…200 bake.approved celsius
      -60…200 place.described celsius
      0…0.5 line.panels-ruled missed
      0…100 line.climate-ruled humidity
      0…100 line.values-ruled percent
      0…100 place.described humidity
      0…100 reel.aired humidity
      0…1000 line.splices-ruled costs[].parts
      0…200 labels.sized gapXMm
      0…200 labels.sized gapYMm
      0…200 labels.sized leftMm
      0…200 labels.sized marginMm
      0…200 labels.sized topMm
      0…500 line.values-ruled guard
      0…60 line.climate-ruled celsius
      0…<1 line.ruled loss
      5…1000 labels.sized heightMm
      5…1000 labels.sized pageHeightMm
      5…1000 labels.sized pageWidthMm
      5…1000 labels.sized widthMm
      whole -500…5 line.panels-ruled machines[].least
      whole 0…1000 line.values-ruled digits
      whole 100…2400 labels.sized dpi
      whole 1… checklist.opened version
      whole 1… checklist.template version
      whole 1… feeder.care-ruled placements
      whole 1… feeder.known positions
      whole 1… label.taught definition.version
      whole 1… label.taught version
      whole 1… panels.contained runs[].possible.first
      whole 1… panels.contained runs[].possible.last
      whole 1… panels.counted skipped[]
      whole 1… panels.scrapped panels
      whole 1… parts.missed misses[].times
      whole 1… reel.sighted copies
      whole 1… reel.sighted looks
      whole 1… setup.taken slots[].positions
      whole 1… station.answered-again times
      whole 1… station.counted skipped[]
      whole 1…100 reel.packed tray.columns
      whole 1…100 reel.packed tray.rows
      whole 1…100 reel.packed tray.trays
      whole 1…10000 line.pictures-ruled megabytes
      whole 1…10000 part.described pins
      whole 1…10000 parts.listed parts[].pins
      whole 1…25000 picture.kept bytes
      whole 1…3650 line.pictures-ruled days
      whole 1…1440 line.idle-ruled minutes
      whole 1…3 checklist.template steps[].signatures
      whole 1…6 line.crewed operators
      whole 1…20 machine.loaded pages
      whole 1…20 setup.offered pages
      whole 1…30 labels.sized columns
      whole 1…60 labels.sized rows
      whole 1…600 line.age-ruled limits[].months
      whole 1…7 line.calendar-ruled weeks[][].breaks[].days[]
      whole 1…7 line.calendar-ruled weeks[][].days[]
      whole 1…7 line.ruled breaks[].days[]
      whole 1…7 line.ruled shifts[].days[]
      whole 1…8 feeder-type.known lanes
      whole 2…500 line.panels-ruled machines[].most
      whole … checklist.closed asked
      whole … checklist.closed done
      whole … panels.counted add
      whole … station.state code
      … checklist.template steps[].least
      … moisture.ruled bakes[].celsius
      … moisture.ruled lives[].celsius
      … moisture.ruled lives[].humidity
      … panel.measured least
      … panel.measured most
      … panel.measured quantity
      … reel.life-judged celsius
      … reel.life-judged humidity
      … reel.measured least
      … reel.measured most
      … reel.measured nominal
      … reel.measured quantity
      … step.answered value`),
  );
});

test('a list has an entry at least and so many at most only where these say so', () => {
  const MANY = 2001; // more than any list may have
  const found: string[] = [];
  const listsOf = function* (
    value: unknown,
    path: Path = [],
  ): Generator<readonly [Path, readonly unknown[]]> {
    if (Array.isArray(value)) yield [path, value];
    if (value !== null && typeof value === 'object')
      for (const [key, each] of Object.entries(value))
        yield* listsOf(each, [...path, Array.isArray(value) ? Number(key) : key]);
  };
  for (const kind of entryKinds)
    for (const [path, list] of listsOf(payloadExamples[kind])) {
      // What a taught label rule may hold is asked where rules are read.
      if (list.length === 0 || path[0] === 'definition') continue;
      const isTaken = (length: number) =>
        fits(kind, withValue(payloadExamples[kind], path, Array(length).fill(list[0])));
      const least = [0, 1, 2].find(isTaken);
      const most = isTaken(MANY)
        ? null
        : [1, 2, 60, 200, 500, 600, 1000, 2000].find((length) => isTaken(length) && !isTaken(length + 1));
      const place = path.map((key) => (typeof key === 'number' ? '[]' : key)).join('.');
      if (least !== 0 || most !== null)
        found.push(`${least}–${most ?? ''} ${kind} ${place.replaceAll('.[]', '[]')}`);
    }
  expect([...new Set(found)].sort()).toEqual(
    lines(`
      0– setup.offered wants
      0– setup.offered wants[].alternates
      0–1000 panels.counted skipped
      0–1000 station.counted skipped
      0–200 machine.loaded places
      0–200 moisture.ruled bakes
      0–200 parts.listed parts[].makers
      0–200 parts.used uses
      0–200 station.answered results
      0–500 plan.kept jobs
      0–60 shift.handed left
      0–60 shift.taken came
      0–600 moisture.ruled lives
      1– changeover.left-open left
      1– jar.held reasons
      1– jar.let reasons
      1– run.began-short short
      1–2 line.calendar-ruled weeks
      1–200 parts.aired reels
      1–200 parts.missed misses
      1–200 unproven.settled entries
      1–2000 labels.printed names
      1–500 parts.listed parts
      1–500 parts.priced parts`),
  );
});

test.each<readonly [EntryKind, Path, readonly unknown[], readonly unknown[]]>([
  ['setup.taken', ['boardsPerPanel'], [1, 1000], [0, 1001, 1.5]],
  ['setup.taken', ['slots', 0, 'turn'], [1, 2], [0, 1.5]],
  ['line.ruled', ['labelShare'], [0, 0.999], [-0.001, 1]],
  ['reel.aired', ['celsius'], [-60, 200], [-60.5, 200.5]],
  ['changeover.began', ['lastPanel'], ['x'.repeat(40)], ['x'.repeat(41)]],
  ['step.answered', ['value'], ['x'.repeat(400_000), 5, null], ['x'.repeat(400_001), true]],
  ['parts.used', ['uses', 0, 'used'], [0, 0.5, 1e10], [-1, 1e10 + 1]],
  ['containment.signed', ['codes'], [['PN7'], null], [[]]],
  [
    'reel.packed',
    ['tube'],
    [{ tubes: 1000, parts: 10_000 }],
    [{ tubes: 1001, parts: 1 }, { tubes: 1, parts: 0 }, null],
  ],
  ['reel.verified', ['comesIn'], ['tray', 'bulk'], ['reel', null]],
  ['reel.unloaded', ['purged'], [true], [false, null]],
  ['jar.told', ['onTop'], [true], [false, null]],
  ['station.state', ['late'], [0, 4000], [-1, 0.5]],
  ['run.stopped', ['code'], [5200, -1], [0.5, null]],
  ['station.counted', ['once'], [true], [false, null]],
  ['station.counted', ['skipped'], [[], Array(1000).fill(1)], [Array(1001).fill(1), [0]]],
])('%s takes no other values at %s, where its example has none', (kind, path, taken, refused) => {
  const isTaken = (value: unknown) => fits(kind, withValue(payloadExamples[kind], path, value));
  expect(taken.filter((value) => !isTaken(value))).toEqual([]);
  expect(refused.filter(isTaken)).toEqual([]);
});
