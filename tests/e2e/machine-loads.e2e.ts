// A machine and the scans, seen from a tablet: a real link asks a machine over AMQP what it has loaded, the line says that something differs,
// Stations says it slot by slot, and the act beside it opens that slot; when the machine says otherwise it is gone. A lead is done with a
// finding and names the station; an engineer lets the link answer, and what a machine hears then is what the scans say;
// the setup that it asks for is read as any sheet.

import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { emptyState } from '../../shared/floor/state.ts';
import { makePin } from '../../src/app/device/pin.ts';
import { ask } from '../../src/link/ipc2591/ask.ts';
import { type RunningLink, startLink } from '../../src/link/link.ts';
import { tellPlant, verified } from '../shared/floor/story.ts';
import { type AnsweringMachine, startAnswering } from '../src/link/ipc2591/answering.ts';
import * as said from '../src/link/ipc2591/said.ts';
import { sendEnvelopes } from './support/amqp.ts';
import { startBrowser } from './support/browser.ts';
import { tellAt } from './support/colleague.ts';
import { openAt, openTablet, pad, readLog, signIn, type Tablet } from './support/floor.ts';
import { look } from './support/look.ts';
import { type PlantServer, startServe } from './support/serve.ts';

/** All that the machine is ever asked. */
const LOADED = 'CFX.Materials.Storage.GetLoadedMaterialsRequest';
const WANTED = 'CFX.Production.GetRequiredSetupRequest';
const [one, two] = ['M1-F-001', 'M1-F-002'];
let server: PlantServer;
let browser: Browser;
let machine: AnsweringMachine;
let folder: string;
let link: RunningLink;
/** What the machine has on its first place. */
let reel = 'K9';
let tablet: Tablet;
let at = '';

beforeAll(async () => {
  [server, browser] = await Promise.all([startServe(), startBrowser()]);
  folder = await mkdtemp(path.join(tmpdir(), 'reelward-link-'));
  machine = await startAnswering(({ MessageName, RequestID }) =>
    MessageName === LOADED
      ? said.loadedMaterials([said.location('P1', reel, 900), said.location('P2', 'K2', 900)], { RequestID })
      : said.requiredSetup([said.required('P1', 'R-100', ['R-101']), said.required('P2', 'C-200')], {
          RequestID,
        }),
  );
});
afterAll(async () => {
  await browser?.close();
  await link?.stop();
  await machine?.close();
  await server?.stop();
  await rm(folder, { recursive: true, force: true });
});

const stamp = () => ({ TimeStamp: new Date().toISOString() });
const goTo = (hash: string) => openAt(tablet.page, hash);

/** A plant with a line, two verified reels and an engineer; a tablet at it; a link that may ask and answer its machine. */
async function begin(): Promise<void> {
  const pin = await makePin('4401');
  await tellAt(server, (tell) => {
    tellPlant({ tell, entries: [], floor: emptyState });
    tell('reel.verified', verified(one, 'R-100', { reel: 'K1', lot: 'LOT-1' }));
    tell('reel.verified', verified(two, 'C-200', { reel: 'K2', lot: 'LOT-2' }));
    tell('person.added', { person: 'lea', name: 'Lea', role: 'engineer', badge: 'E-1', pin });
  });
  tablet = await openTablet(browser, server.url, { badge: null, hash: `#enrol=${server.firstCode}` });
  await tablet.page.getByTestId('enrol-name').fill('Line side');
  await tablet.page.getByTestId('enrol').click();
  const source = {
    kind: 'ipc2591' as const,
    handle: 'L1.Placer',
    listen: '127.0.0.1:0',
    ask: { connect: `amqp://${machine.at}` },
    answers: true as const,
    slots: { P1: one, P2: two },
  };
  link = await startLink(
    {
      server: server.url,
      code: await server.newCode(),
      data: folder,
      stations: [{ station: 'placer-1', line: 'L1', machine: 'M1', at: 'work', source }],
    },
    { version: '0.1.0', say: () => undefined },
  );
  at = link.listens[0]?.at ?? '';
  await sendEnvelopes(at, [said.heartbeat('00:01:00', stamp())]);
}

it('a slot of which machine and scans say different things is told on the line and in Stations until it is cured', async () => {
  await begin();
  const { page } = tablet;
  const believes = page.getByTestId('machine-believes');
  // A tablet that has just joined goes to a screen of its own choice.
  await expect
    .poll(
      async () => {
        await goTo('#/line');
        return believes.isVisible();
      },
      { timeout: 60_000 },
    )
    .toBe(true);
  await look(page);
  await expect.poll(() => believes.textContent()).toContain('The machine and the scans differ on 1 slot.');
  await believes.getByRole('link').click();
  const row = page.getByTestId(`loads-${one}`);
  await row.waitFor();
  await look(page);
  await expect
    .poll(() => row.textContent())
    .toContain(
      `${one}: the machine believes K9 (R-100), the scans say K1 (R-100). Open the slot and scan the reel there.`,
    );
  await expect.poll(() => page.getByTestId('loads').textContent()).toContain('1 slot is as the scans say.');
  await row.getByRole('link').click();
  await page.getByRole('dialog').waitFor();
  await expect.poll(() => page.getByRole('dialog').textContent()).toContain('K1');
  reel = 'K1';
  await sendEnvelopes(at, [said.materialsLoaded('K1')]);
  await goTo('#/plant/stations');
  await row.waitFor({ state: 'detached', timeout: 60_000 });
  await expect.poll(() => page.getByTestId('loads').textContent()).toContain('2 slots are as the scans say.');
  await expect
    .poll(() => new Set(machine.asked.map(({ MessageName }) => MessageName)))
    .toEqual(new Set([LOADED, WANTED]));
});

it('a lead is done with a finding, with a reason, and gives the station a name', async () => {
  const { page } = tablet;
  await sendEnvelopes(at, [said.splicePoint('K7', 'K8', 10, stamp())]);
  const finding = page.getByTestId('machine-differs');
  await finding.waitFor({ timeout: 60_000 });
  await finding.getByTestId('finding-clear').click();
  await page.getByTestId('badge').fill('E-1');
  await page.getByTestId('badge-enter').click();
  await pad(page, '4401');
  await page.getByTestId('clear-finding-reason').fill('Looked: the scan was right');
  await look(page);
  await page.getByTestId('clear-finding-yes').click();
  await finding.waitFor({ state: 'detached' });
  const log = await readLog(page, 'reelward-log');
  const cleared = log.find(({ kind }) => kind === 'station.finding-cleared');
  expect(cleared?.payload).toMatchObject({ by: 'lea', reason: 'Looked: the scan was right' });
  await signIn(page, 'E-1');
  await page.getByTestId('rename-placer-1').click();
  await page.getByTestId('station-name').fill('First placer');
  await look(page);
  await page.getByTestId('station-name-yes').click();
  await page.getByRole('heading', { name: 'First placer' }).waitFor();
  await expect.poll(() => page.getByTestId('station-placer-1').textContent()).toContain('placer-1');
});

it('an engineer lets the link answer, and the machine then hears what the scans say', async () => {
  const { page } = tablet;
  const door = { connect: `amqp://${at}`, address: 'reelward.placer-1' };
  const places = [said.location('P1', 'K1', 10), said.location('P2', 'K1', 10)];
  const question = {
    name: 'CFX.InformationSystem.TopicValidation.ValidateTopicRequest',
    body: { ValidationTopic: 'Materials', ValidationTopicData: { ValidationTopicData: places } },
    from: 'L1.Placer',
  };
  expect(await ask(door, question)).toEqual({ ok: false, why: 'CFX.NotSupportedResponse: not turned on' });
  await page.getByTestId('answers-failed').click();
  await page.getByTestId('notice').waitFor();
  await expect.poll(() => page.getByTestId('answers').textContent()).toContain('not a safety function');
  const answered = async () => {
    const answer = await ask(door, question);
    return answer.ok ? answer.envelope.body['Result'] : answer.why;
  };
  await expect
    .poll(answered, { timeout: 60_000 })
    .toMatchObject([{ Result: 'Success' }, { Result: 'Failed' }]);
  const last = page.getByTestId('answers-last');
  await last.waitFor({ timeout: 60_000 });
  await expect.poll(() => last.textContent()).toContain('1 right, 0 warned, 1 no.');
  await expect
    .poll(() => page.getByTestId('answers').textContent())
    .toContain('another reel was verified there');
  await look(page);
});

it('the setup that the machine asks for is read as any sheet', async () => {
  const { page } = tablet;
  await goTo('#/plant/sheet');
  const offers = page.getByTestId('offers');
  await offers.waitFor({ timeout: 60_000 });
  await look(page);
  await expect
    .poll(() => offers.textContent())
    .toContain('2 slots of BROOK-TOP C, asked for by First placer.');
  await page.getByTestId('offer-placer-1').click();
  await page.getByTestId('sheet-count').waitFor();
  await expect.poll(() => page.getByTestId('sheet-count').textContent()).toContain('2');
  expect((await readLog(page, 'reelward-log')).filter(({ kind }) => kind === 'setup.taken')).toHaveLength(1);
  await tablet.putAway();
});
