// Messages while the app is closed: an engineer asks for them on This tablet, the server's first one arrives encrypted at a push service of
// the test's own, the service worker shows one in the page's sentences, and a tap opens the line. The browser's own service is out of reach
// here: what it would hand out at a subscription is put in its place, and what it would deliver is delivered by the browser's own tools.

import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Browser, CDPSession, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { newReceiver } from '../src/server/push/receiver.ts';
import { startBrowser } from './support/browser.ts';
import { goTo } from './support/floor.ts';
import { addPerson, enterPin, joinPlant } from './support/joined.ts';
import { look } from './support/look.ts';
import { type PlantServer, startServe } from './support/serve.ts';
import { confirm } from './support/tour/here.ts';

const receiver = newReceiver();
const arrived: Buffer[] = [];
let service: Server;
let server: PlantServer;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  service = createServer(async (request, response) => {
    const parts: Buffer[] = [];
    for await (const part of request) parts.push(part as Buffer);
    arrived.push(Buffer.concat(parts));
    response.writeHead(201).end();
  });
  await new Promise<void>((resolve) => service.listen(0, '127.0.0.1', resolve));
  const options = ['--push-contact', 'mailto:it@plant.example', '--push-service', origin()];
  [server, browser] = await Promise.all([startServe(options), startBrowser()]);
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
  await new Promise<void>((resolve) => void service?.close(() => resolve()));
});

const origin = () => `http://127.0.0.1:${(service.address() as AddressInfo).port}`;

/** What the browser's own service would answer. */
async function standIn(on: Page): Promise<void> {
  await on.context().grantPermissions(['notifications']);
  const { publicKey, auth } = receiver.keys;
  await on.addInitScript(
    (told) => {
      const bytes = (text: string) => Uint8Array.from(atob(text), (char) => char.charCodeAt(0)).buffer;
      const subscription = {
        endpoint: told.endpoint,
        getKey: (name: string) => bytes(name === 'auth' ? told.auth : told.publicKey),
        unsubscribe: async () => true,
      };
      let now: typeof subscription | null = null;
      // Without a screen this browser lets no page show anything.
      Object.defineProperty(Notification, 'permission', { get: () => 'granted' });
      Notification.requestPermission = async () => 'granted';
      PushManager.prototype.subscribe = async () => {
        now = subscription;
        return now as unknown as PushSubscription; // what the page reads of one
      };
      PushManager.prototype.getSubscription = async () => now as unknown as PushSubscription | null;
    },
    {
      endpoint: `${origin()}/to/engineer`,
      publicKey: publicKey.toString('base64'),
      auth: auth.toString('base64'),
    },
  );
}

/** Delivers a message to the page's service worker. */
async function deliver(message: object): Promise<void> {
  const session: CDPSession = await page.context().newCDPSession(page);
  const found = new Promise<string>((resolve) => {
    session.on('ServiceWorker.workerRegistrationUpdated', ({ registrations }) => {
      const [registration] = registrations;
      if (registration) resolve(registration.registrationId);
    });
  });
  await session.send('ServiceWorker.enable');
  await session.send('ServiceWorker.deliverPushMessage', {
    origin: new URL(server.url).origin,
    registrationId: await found,
    data: JSON.stringify(message),
  });
  await session.detach();
}

/** Has the service worker keep what it would show, since without a screen nothing is. */
async function keepShown(): Promise<void> {
  const [worker] = page.context().serviceWorkers();
  await worker?.evaluate(`(() => {
    self.shown = [];
    registration.showNotification = async (title, { body, data }) => void self.shown.push({ body, data });
  })()`);
}

async function shown(): Promise<readonly string[]> {
  const [worker] = page.context().serviceWorkers();
  return (await worker?.evaluate(`self.shown.map(({ body }) => body)`)) as readonly string[]; // kept above
}

describe('messages while the app is closed', () => {
  it('are asked for by an engineer with a PIN, and the first one arrives', async () => {
    page = await joinPlant(browser, server.url, { code: server.firstCode, name: 'Phone', before: standIn });
    await addPerson(page, 'Elif', { badge: 'E-1', role: 'Engineer', pin: '4401' });
    await enterPin(page, 'Elif', '4401');
    await page.goto(`${server.url}#/plant/tablet`);
    await expect.poll(() => page.getByTestId('push-standing').getAttribute('data-on')).toBe('false');
    expect(arrived).toEqual([]);
    await page.getByTestId('push-on').click();
    await confirm(page, 'E-1', '4401');
    await expect.poll(() => page.getByTestId('push-standing').getAttribute('data-on')).toBe('true');
    await expect
      .poll(() => arrived.map((body) => JSON.parse(receiver.read(body))))
      .toEqual([{ kind: 'first' }]);
    await look(page, { where: 'this tablet, messages on' });
  });

  it('are shown by the service worker in the language in use, and a tap opens the line', async () => {
    await page.evaluate(async () => void (await navigator.serviceWorker.ready));
    await keepShown();
    await deliver({ kind: 'warning', line: 'L2', lineName: 'Line 2', slot: 'M1-F-022' });
    await expect.poll(shown).toEqual(['Line 2: nobody answers the warning for M1-F-022.']);
    await deliver({ kind: 'stood', line: 'L2', lineName: 'Line 2', slot: null });
    await expect
      .poll(async () => [...(await shown())].sort())
      .toEqual(['Line 2 stands still.', 'Line 2: nobody answers the warning for M1-F-022.']);
    await deliver({ kind: 'of a newer server', lineName: 'Line 3' });
    await expect.poll(shown).toContain('Line 3');
    const [worker] = page.context().serviceWorkers();
    // As text: what runs there has other types than the page and the test.
    await worker?.evaluate(`(() => {
      const [{ data }] = self.shown;
      const waitUntil = () => {};
      const notification = { data, close: () => {} };
      dispatchEvent(Object.assign(new Event('notificationclick'), { waitUntil, notification }));
    })()`);
    await page.getByTestId('screen-line').waitFor();
  });

  it('end where they are turned off', async () => {
    await goTo(page, 'plant');
    await page.goto(`${server.url}#/plant/tablet`);
    await page.getByTestId('push-off').click();
    await expect.poll(() => page.getByTestId('push-standing').getAttribute('data-on')).toBe('false');
    expect(arrived).toHaveLength(1);
  });
});
