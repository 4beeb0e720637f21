// What a machine says beside its count and its tapes, and what of it goes into the log.

import { beforeEach, expect, test } from 'vitest';
import { checkPayload, type EntryKind } from '../../../../shared/floor/kinds.ts';
import { type Aside, type Asides, openAsides } from '../../../../src/link/ipc2591/asides.ts';
import { readEnvelopes } from '../../../../src/link/ipc2591/envelope.ts';
import { readSaid } from '../../../../src/link/ipc2591/messages.ts';
import * as said from './said.ts';

let entries: [string, Record<string, unknown>][] = [];
let asides: Asides;
let unread: string[] = [];
let second = 0;

const now = () => ({ ms: second * 1000, wallMs: said.START_MS + second * 1000 });
const slots = new Map([['SLOT22', 'M1-F-022']]);

function open(lane: number | null = null): void {
  asides = openAsides(
    { station: 'L1-placer', line: 'L1', counts: 'work-completed', lane, slots },
    async (kind: EntryKind, payload: object) =>
      entries.push([kind, checkPayload(kind, payload as never) as unknown as Record<string, unknown>]),
  );
}
beforeEach(() => {
  [entries, unread, second] = [[], [], 0];
  open();
});

/** A message that was so many seconds on its way. */
async function send(message: object, late = 0): Promise<void> {
  const [envelope] = readEnvelopes(Buffer.from(JSON.stringify(message)), false).envelopes;
  if (!envelope) throw new Error('no envelope');
  const told = readSaid(envelope);
  if (told.is === 'unread') unread.push(told.why);
  else if (told.is !== 'unused')
    await asides.take(told as Aside, { now: now(), atMs: (second - late) * 1000 });
}
async function pass(seconds: number): Promise<void> {
  second += seconds;
  await asides.tick(now(), false);
}
const of = (kind: string) => entries.flatMap(([each, payload]) => (each === kind ? [payload] : []));

test('the recipe that a machine has activated is told when it is another one, again after a kill, and not without a name', async () => {
  await send(said.recipeActivated('D:\\jobs\\BROOK-TOP.prg'));
  await send(said.recipeActivated('D:\\jobs\\BROOK-TOP.prg'));
  await send(said.recipeActivated('GLEN', null));
  await send(said.recipeActivated('  '));
  const told = (recipe: string, revision: string | null) => ({
    station: 'L1-placer',
    line: 'L1',
    recipe,
    revision,
  });
  expect(of('station.recipe')).toEqual([told('D:\\jobs\\BROOK-TOP.prg', 'B'), told('GLEN', null)]);
  expect(unread).toEqual(['no RecipeName']);
  open();
  await send(said.recipeActivated('GLEN', null));
  expect(of('station.recipe')).toHaveLength(3);
});

test('what it says of moisture-sensitive reels is told with when it was; half of it is not', async () => {
  await send(said.msd('MaterialsOpened', ['K1', 'K2', 'K1']));
  for (const what of ['PlacedInDryStorage', 'RemovedFromDryStorage', 'Expired', 'Restored'])
    await send(said.msd(`Materials${what}`, ['K1']), 120);
  await send(said.msd('MaterialsOpened', ['K1', null]));
  expect(of('parts.aired').map(({ says, late, reels }) => [says, late, reels])).toEqual([
    ['opened', 0, ['K1', 'K2']],
    ['put-dry', 120, ['K1']],
    ['taken-out', 120, ['K1']],
    ['expired', 120, ['K1']],
    ['restored', 120, ['K1']],
  ]);
  expect(unread).toEqual(['Materials without UniqueIdentifier']);
});

test('faults of picking are summed by place and told after five minutes; one that is told again before it is cleared is one', async () => {
  await send(said.faultOccurred('f-1'));
  await pass(100);
  await send(said.faultOccurred('f-1'));
  await send(said.faultCleared('f-1'));
  await send(said.faultOccurred('f-1'));
  await send(said.faultOccurred('f-2', { MaterialLocation: said.location('SLOT9', null, 5) }));
  await send(said.faultOccurred('f-3', {}, 'PlacementError'));
  expect(of('parts.missed')).toEqual([]);
  await pass(200);
  expect(of('parts.missed')).toEqual([
    {
      station: 'L1-placer',
      line: 'L1',
      late: 300,
      misses: [
        { slot: 'M1-F-022', reel: 'K1', feeder: 'F-22', times: 2 },
        { slot: 'SLOT9', reel: null, feeder: 'F-22', times: 1 },
      ],
    },
  ]);
  await send(said.faultOccurred('f-4'));
  await asides.tick(now(), true);
  expect(of('parts.missed').slice(1)).toMatchObject([{ late: 0, misses: [{ times: 1 }] }]);
});

test('of two lanes only what is said of its own is taken', async () => {
  open(2);
  await send(said.faultOccurred('f-1'));
  await send(said.recipeActivated('GLEN'));
  await asides.tick(now(), true);
  expect(entries).toEqual([]);
  await send(said.faultOccurred('f-2', { Lane: '2' }));
  await send(said.recipeActivated('GLEN', null, { Lane: 2 }));
  await asides.tick(now(), true);
  expect(entries.map(([kind]) => kind)).toEqual(['station.recipe', 'parts.missed']);
});
