// The tour of a line that a machine counts: a real link beside the plant's server, a device that tells its total, falls silent, comes back.

import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { ask } from '../../../../src/link/ipc2591/ask.ts';
import { type RunningLink, startLink } from '../../../../src/link/link.ts';
import { clock, startMachine } from '../../../src/link/hermes/machine.ts';
import { startAnswering } from '../../../src/link/ipc2591/answering.ts';
import * as said from '../../../src/link/ipc2591/said.ts';
import { until } from '../../../src/server/tablets.ts';
import { sendEnvelopes } from '../amqp.ts';
import { readLog, scan } from '../floor.ts';
import type { PlantServer } from '../serve.ts';
import { closeDialogs, confirm, goThere, type Here, type Leg, openBy } from './here.ts';

const SECRET = 'the secret of the exit';
const STATION = 'exit-1';
/** What passes for the link between two messages: enough for it to keep a total, too little to miss the device. */
const BETWEEN_MS = 18_000;

/** A device at the end of the line, with its link. */
interface Device {
  readonly say: (message: object) => Promise<number>;
  /** Nothing was heard for so long. */
  readonly hush: (ms: number) => Promise<void>;
  readonly stop: () => Promise<void>;
}

async function startDevice(server: PlantServer, page: Page, line: string): Promise<Device> {
  const folder = await mkdtemp(path.join(tmpdir(), 'reelward-link-'));
  let aheadMs = 0;
  // What was touched on tour has moved the tablet's clock on: the link goes by the same time.
  let apartMs = 0;
  const source = { kind: 'counter' as const, listen: '127.0.0.1:0', secret: SECRET };
  const link: RunningLink = await startLink(
    {
      server: server.url,
      code: await server.newCode(),
      data: folder,
      stations: [{ station: STATION, line, machine: null, at: 'out', source }],
    },
    {
      version: '0.1.0',
      say: () => undefined,
      // Time passes for it from message to message, however long somebody looks at a stop.
      clockMs: () => aheadMs,
      wallMs: () => Date.now() + apartMs,
    },
  );
  const at = `http://${link.listens[0]?.at}/api/stations/${STATION}/count`;
  const send = async (message: object) => {
    apartMs = (await page.evaluate(() => Date.now())) - Date.now();
    const headers = { authorization: `Bearer ${SECRET}` };
    return (await fetch(at, { method: 'POST', headers, body: JSON.stringify(message) })).status;
  };
  return {
    say: (message) => {
      aheadMs += BETWEEN_MS;
      return send(message);
    },
    hush: async (ms) => {
      apartMs = (await page.evaluate(() => Date.now())) - Date.now();
      aheadMs += ms;
    },
    stop: async () => {
      await link.stop();
      await rm(folder, { recursive: true, force: true });
    },
  };
}

const counted = (page: Page, by: string) =>
  page.locator(`[data-testid=counted-by][data-by=${by}]`).waitFor({ timeout: 60_000 });

/** Begins a run of panels with codes, its slots as they are. */
async function begin({ page }: Here): Promise<void> {
  await page.getByTestId('run-start').click();
  await page.getByTestId('panels-wanted').fill('400');
  await page.locator('dialog input').nth(2).fill('PN-');
  await page.getByTestId('run-start-yes').click();
  await page.getByTestId('runbar').waitFor();
}

async function end({ page }: Here): Promise<void> {
  await page.getByTestId('run-stop').click();
  await page.getByTestId('stop-break').click();
  await page.getByTestId('run-end').click();
  await page.getByTestId('run-end-yes').click();
  await page.getByTestId('run-start').waitFor();
}

/** Waits until the run says so many panels. */
const panels = (page: Page, done: number) =>
  page.locator('[data-testid=runbar] .panels', { hasText: new RegExp(`^\\D*${done}\\D`) }).waitFor();

async function* stations(here: Here, server: PlantServer): AsyncGenerator<string> {
  const { page } = here;
  const defined = (await readLog(page, 'reelward-log')).find(({ kind }) => kind === 'line.defined');
  const device = await startDevice(server, page, String(defined?.payload['line']));
  try {
    await device.say({ boot: 'b1', total: 100, state: 1100 });
    await device.say({ boot: 'b1', total: 'many' });
    await goThere(here, '#/plant/stations');
    await page.getByTestId('not-understood').waitFor({ timeout: 60_000 });
    yield 'stations, one that is heard and did not say all of it well';
    await page.getByTestId(`count-by-${STATION}`).click();
    await page.getByTestId('notice').waitFor();
    yield 'stations, one that counts';
    await goThere(here, '#/line');
    await begin(here);
    await counted(page, 'station');
    await device.say({ boot: 'b1', total: 101, serial: 'PN-1', state: 5200 });
    await panels(page, 1);
    await page.getByTestId('told-state').waitFor({ timeout: 60_000 });
    yield 'line, counted by the machine';
    await scan(page, 'PN-7');
    await page.getByTestId('counted-beside').waitFor();
    yield 'line, a panel counted by hand beside the machine';
    await openBy(here, 'panels-scrapped');
    yield 'panels scrapped where a machine counts';
    await closeDialogs(page);
    await openBy(here, 'set-right');
    yield 'panels, the number set right';
    await page.getByTestId('right-panels').fill('3');
    await page.getByTestId('right-reason').fill('Counted on the rack');
    await page.getByTestId('right-yes').click();
    await panels(page, 3);
    await device.hush(40_000);
    await page.getByTestId('station-silent').waitFor({ timeout: 60_000 });
    await counted(page, 'silent');
    yield 'line, the machine is silent';
    await page.getByTestId('plus-one').click();
    await panels(page, 4);
    await openBy(here, 'plus-many');
    yield 'panels, many at once or set right';
    await closeDialogs(page);
    await device.say({ boot: 'b1', total: 103, serial: 'PN-3' });
    await counted(page, 'station');
    await panels(page, 5);
    await end(here);
    await device.say({ boot: 'b1', total: 900, serial: 'PN-900' });
    await goThere(here, '#/plant/stations');
    await page.getByTestId('outside').waitFor({ timeout: 60_000 });
    await page.getByTestId('counted-both').waitFor();
    yield 'stations, counted by both and outside of a run';
    await page.getByTestId('count-by-hand').click();
    await page.getByTestId('notice').waitFor();
  } finally {
    await device.stop();
  }
}

/** Machines that speak a standard, one by its supervisory channel and one by messages: what is set at each, what one tells differently. */
async function* machines(here: Here, server: PlantServer): AsyncGenerator<string> {
  const { page } = here;
  const folder = await mkdtemp(path.join(tmpdir(), 'reelward-link-'));
  clock.ms = await page.evaluate(() => Date.now());
  const machine = await startMachine();
  const log = await readLog(page, 'reelward-log');
  const slot = slotIn(log.filter(({ kind }) => kind === 'setup.taken').at(-1)?.payload);
  const placer = await startAnswering(({ MessageName, RequestID }) =>
    MessageName.endsWith('GetRequiredSetupRequest')
      ? said.requiredSetup([said.required(slot, 'R-100')], { RequestID })
      : said.loadedMaterials([said.location(slot, 'K9', 900)], { RequestID }),
  );
  const defined = log.find(({ kind }) => kind === 'line.defined');
  const facts = { line: String(defined?.payload['line']), at: 'work' as const };
  const link = await startLink(
    {
      server: server.url,
      code: await server.newCode(),
      data: folder,
      stations: [
        { ...facts, station: 'placer-1', machine: 'M1', source: { kind: 'hermes', connect: machine.at } },
        {
          ...facts,
          station: 'placer-2',
          machine: 'M2',
          source: {
            kind: 'ipc2591',
            handle: 'L1.Placer',
            listen: '127.0.0.1:0',
            ask: { connect: `amqp://${placer.at}` },
            answers: true,
          },
        },
      ],
    },
    { version: '0.1.0', say: () => undefined },
  );
  try {
    const TimeStamp = new Date(clock.ms).toISOString();
    await sendEnvelopes(link.listens[1]?.at ?? '', [
      said.heartbeat('00:01:00', { TimeStamp }),
      said.workCompleted('w1', 'Completed', { TimeStamp }),
      said.splicePoint('K1', 'K2', 10, { TimeStamp }),
      { ...said.recipeActivated('P-4711'), TimeStamp },
    ]);
    await goThere(here, '#/plant/stations');
    await page.getByTestId('machine-differs').waitFor({ timeout: 60_000 });
    await page.getByTestId('what-to-set').waitFor();
    await page.getByTestId('loads-differ').waitFor({ timeout: 60_000 });
    yield 'stations, machines that speak a standard';
    yield* askedAndAnswered(here, link.listens[1]?.at ?? '', slot);
  } finally {
    await link.stop();
    await Promise.all([machine.stop(), placer.close()]);
    await rm(folder, { recursive: true, force: true });
  }
}

/** The first slot of a setup. */
function slotIn(setup: Readonly<Record<string, unknown>> | undefined): string {
  const [first] = (setup?.['slots'] ?? []) as readonly { readonly slot: string }[];
  return first?.slot ?? 'M1-F-001';
}

/** What a lead and an engineer do with a machine's word, and what the machine hears. */
async function* askedAndAnswered(here: Here, at: string, slot: string): AsyncGenerator<string> {
  const { page } = here;
  await openBy(here, 'finding-clear');
  yield 'finding, who says that it is done';
  await confirm(page, 'E-1', '4401');
  await page.getByTestId('clear-finding-reason').waitFor();
  yield 'finding, what came of it';
  await closeDialogs(page);
  await openBy(here, 'rename-placer-2');
  yield 'station, another name';
  await closeDialogs(page);
  await page.getByTestId('answers-warning').click();
  await page.getByTestId('notice').waitFor();
  const question = {
    name: 'CFX.InformationSystem.TopicValidation.ValidateTopicRequest',
    body: {
      ValidationTopic: 'Materials',
      ValidationTopicData: { ValidationTopicData: [said.location(slot, 'K9', 10)] },
    },
    from: 'L1.Placer',
  };
  const answered = async () =>
    (await ask({ connect: `amqp://${at}`, address: 'reelward.placer-2' }, question)).ok;
  await until('an answer', answered);
  await page.getByTestId('answers-last').waitFor({ timeout: 60_000 });
  yield 'stations, a machine that was answered';
  await page.getByTestId('answers-off').click();
  await page.getByTestId('notice').waitFor();
  await goThere(here, '#/plant/sheet');
  await page.getByTestId('offers').waitFor();
  yield 'sheet, a setup that a machine asks for';
  await goThere(here, '#/line');
  await page.getByTestId('machine-believes').waitFor();
  await page.getByTestId('machine-recipe').waitFor();
  yield 'line, a machine that believes something else and runs another recipe';
}

/** The legs of a line that a machine counts. */
export function stationLegs(server: () => PlantServer): readonly Leg[] {
  return [
    { name: 'stations', stops: (here) => stations(here, server()) },
    { name: 'machines', stops: (here) => machines(here, server()) },
  ];
}
