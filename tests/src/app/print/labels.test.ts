// What the plant's labels say: what the log knows of a package now, names in the order in which people walk, and that a label is a reprint.

import { expect, test } from 'vitest';
import { packageIdOf } from '../../../../shared/floor/package-name.ts';
import { parseLabel } from '../../../../shared/labels/label.ts';
import {
  jarLabel,
  nameLabel,
  namesOf,
  type Printing,
  packageLabel,
} from '../../../../src/app/print/labels.ts';
import { beginStory, idOf, type Story, tellPlant, unloaded, verified } from '../../../shared/floor/story.ts';

function told(): { readonly story: Story; readonly id: string; readonly was: string } {
  const story = beginStory();
  tellPlant(story);
  const facts = { lot: 'L-7', dateCode: '2618', supplierPart: 'SUP-300' };
  const loaded = story.tell('reel.verified', verified('M1-F-010', 'U-300', facts));
  story.tell(
    'reel.unloaded',
    unloaded('M1-F-010', { part: 'U-300', lot: 'L-7', quantity: 640, sd: 8, basis: 'weighed' }),
  );
  return { story, id: packageIdOf(idOf(loaded)), was: `~${idOf(loaded)}` };
}

const from = (story: Story): Printing => ({
  floor: story.floor(),
  line: 'L1',
  nowMs: Date.UTC(2026, 2, 2, 7, 0),
  zone: 'Europe/London',
  isPractice: false,
});
const texts = (label: ReturnType<typeof packageLabel>) =>
  Object.fromEntries(label.lines.map(({ name, text }) => [name, text]));

test('a package’s label says what the log knows of it, to a person and to a reader', () => {
  const { story, id, was } = told();
  const printing = from(story);
  const reel = printing.floor.reels.get(was);
  if (!reel) throw new Error('Cannot test as the reel must be known: current one is none');
  const label = packageLabel(reel, id, printing);
  expect(texts(label)).toEqual({
    id,
    part: 'U-300',
    left: '640 ± 8 left',
    lot: 'Lot L-7',
    dateCode: 'Date code 2618',
    supplierPart: 'SUP-300',
    printed: 'as of 2 Mar, 07:00',
  });
  const read = parseLabel([label.code]);
  expect(read).toMatchObject({
    reel: id,
    part: 'U-300',
    quantity: 640,
    lot: 'L-7',
    dateCode: '2618',
    ambiguous: [],
  });
});

test('the label of a jar of paste names paste, lot and date, and reads as that jar again', () => {
  const { story, id } = told();
  const jar = { jar: id, paste: 'SP-1', lot: 'LP-1', expires: '2027-01-01', via: 'wedge' } as const;
  const label = jarLabel(jar, from(story));
  expect(Object.keys(texts(label))).toEqual(['id', 'part', 'lot', 'expires', 'printed']);
  expect(parseLabel([label.code])).toMatchObject({
    reel: id,
    part: 'SP-1',
    lot: 'LP-1',
    expires: '2027-01-01',
    quantity: null,
    ambiguous: [],
  });
});

test('a reprint says so, and so does a label of the practice floor; neither is left out for want of room', () => {
  const { story, id, was } = told();
  story.tell('labels.printed', { what: 'reel', line: 'L1', reel: id, names: [id], again: [], size: 'Shelf' });
  const printing = { ...from(story), isPractice: true };
  const reel = printing.floor.reels.get(was);
  if (!reel) throw new Error('Cannot test as the reel must be known: current one is none');
  const last = packageLabel(reel, id, printing).lines.at(-1);
  expect(last).toMatchObject({ text: 'PRACTICE · Reprint 2 · as of 2 Mar, 07:00', keep: true });
});

test('slots come in walking order, those of the chosen setup and whatever stands loaded, each once', () => {
  const { story } = told();
  story.tell('reel.verified', verified('M1-F-002', 'C-200', { reel: 'K-9' }));
  const names = namesOf(story.floor(), 'slot', 'L1').map(({ name }) => name);
  expect([...names].sort()).toEqual(['M1-F-001', 'M1-F-002', 'M1-F-010', 'M1-R-003']);
  expect(names.slice(0, 3)).toEqual(['M1-F-001', 'M1-F-002', 'M1-F-010']);
});

test('a badge’s label shows the person, and only its code carries the badge', () => {
  const { story } = told();
  story.tell('person.added', {
    person: 'p1',
    name: 'Ana Prado',
    role: 'operator',
    badge: 'BADGE-1',
    pin: null,
  });
  const printing = from(story);
  const [badge] = namesOf(printing.floor, 'badge', null);
  if (!badge) throw new Error('Cannot test as there must be a badge: current list is empty');
  // What a badge says is drawn as it is printed, whatever the log knows of the one before.
  expect(badge.code).toBe('');
  const label = nameLabel('badge', { ...badge, code: 'BADGE-2' }, printing);
  expect([label.name, label.code]).toEqual(['p1', 'BADGE-2']);
  expect(label.lines.map(({ text }) => text)).toEqual(['Ana Prado', 'Badge']);
});

test.each([
  ['refill', 'bulk'],
  ['splice', 'cut-tape'],
] as const)('after a %s the label names both lots to a person, and none to a reader', (act, comesIn) => {
  const story = beginStory();
  tellPlant(story);
  const facts = { comesIn, lot: 'L-7', reel: 'K1' } as const;
  story.tell('reel.verified', verified('M1-F-010', 'U-300', facts));
  story.tell('reel.verified', verified('M1-F-010', 'U-300', { ...facts, act, lot: 'L-8', reel: 'K2' }));
  const printing = from(story);
  const reel = printing.floor.reels.get('K2');
  if (!reel) throw new Error('Cannot test as the reel must be known: current one is none');
  const label = packageLabel(reel, 'K2', printing);
  expect(texts(label)['lot']).toBe('Lot L-7 / L-8');
  expect(parseLabel([label.code])).toMatchObject({ reel: 'K2', part: 'U-300', lot: null });
});
