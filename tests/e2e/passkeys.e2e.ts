// Passkeys in a real browser, with its own authenticator: registered under Plant, a hold cleared with one and no PIN, seen in the log, and
// checked offline in an export. Where the browser has none to offer the screen says so, and the PIN decides as ever.

import { spawn } from 'node:child_process';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { passkeyUse } from '../../shared/floor/passkey-sign.ts';
import { type Entry, entryId } from '../../shared/log/entry.ts';
import { dist, outside } from './support/demo.ts';
import {
  expectWhole,
  goTo,
  openTablet,
  ownEntries,
  pad,
  readLog,
  reelLabel,
  scan,
  scanAll,
  signIn,
  type Tablet,
} from './support/floor.ts';
import { confirm } from './support/tour/here.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();

/** An authenticator in the tablet. */
interface Authenticator {
  /** Puts it in, with what it was given before: each scan ends a session of the browser's debugging, and that takes it out. */
  readonly putIn: (isUserVerified?: boolean) => Promise<void>;
  /** Remembers what it holds. */
  readonly remember: () => Promise<void>;
}

async function giveAuthenticator(page: Page): Promise<Authenticator> {
  type Session = Awaited<ReturnType<ReturnType<Page['context']>['newCDPSession']>>;
  const holding = async (session: Session, authenticatorId: string) =>
    (await session.send('WebAuthn.getCredentials', { authenticatorId })).credentials;
  let held: Awaited<ReturnType<typeof holding>> = [];
  let now: { readonly session: Session; readonly authenticatorId: string } | null = null;
  return {
    putIn: async (isUserVerified = true) => {
      const session = await page.context().newCDPSession(page);
      await session.send('WebAuthn.enable');
      const { authenticatorId } = await session.send('WebAuthn.addVirtualAuthenticator', {
        options: {
          protocol: 'ctap2',
          transport: 'internal',
          hasUserVerification: true,
          isUserVerified,
          automaticPresenceSimulation: true,
        },
      });
      for (const credential of held)
        await session.send('WebAuthn.addCredential', { authenticatorId, credential });
      now = { session, authenticatorId };
    },
    remember: async () => {
      if (now) held = await holding(now.session, now.authenticatorId);
    },
  };
}

/** A tablet that came to the same server by its name. */
async function onNamed(work: (tablet: Tablet) => Promise<void>): Promise<void> {
  const url = demo.url.replace('127.0.0.1', 'localhost');
  const tablet = await openTablet(demo.browser, url, { badge: 'BADGE-4401' });
  await work(tablet);
  expectWhole(await readLog(tablet.page));
  await tablet.putAway();
}

async function openPasskeys(page: Page, badge: string): Promise<void> {
  await goTo(page, 'plant');
  await page.getByTestId('tile-people').click();
  await page.getByTestId(`person-passkeys-${badge}`).click();
  await page.getByTestId('passkeys').waitFor();
}

/** The lead registers a passkey of her own. */
async function register(page: Page, name: string): Promise<Authenticator> {
  const authenticator = await giveAuthenticator(page);
  await openPasskeys(page, 'BADGE-3301');
  await page.getByTestId('passkey-add').click();
  await confirm(page, 'BADGE-3301', '3301');
  await authenticator.putIn();
  await page.getByTestId('passkey-name').fill(name);
  await page.getByTestId('passkey-make').click();
  await page.getByTestId('passkeys').waitFor({ state: 'detached' });
  await page.getByTestId('person-passkeys-BADGE-3301').getByText('1 passkey').waitFor();
  await authenticator.remember();
  return authenticator;
}

/** An alternate of another product, which a lead must decide on. */
async function hold(page: Page, reel: string): Promise<void> {
  await goTo(page, 'load');
  const label = reelLabel({ P: '12-0603-105H', Q: '4000', '1T': 'LT-9600', '3S': reel });
  expect((await scanAll(page, 'M2-R-010', label)).verdict).toBe('held');
  await page.getByTestId('verdict-clear').click();
  await page.getByTestId('badge').waitFor();
  await scan(page, 'BADGE-3301');
  await page.locator('.pinpad').waitFor();
}

async function clearByPasskey(page: Page): Promise<void> {
  await page.getByTestId('use-passkey').click();
  await page.getByText('The passkey is asked for next.').waitFor();
  await page.getByRole('button', { name: 'Checked and measured by hand' }).click();
  await page.getByTestId('clear-accept').click();
}

async function verify(entries: readonly Entry[]) {
  const child = spawn(process.execPath, [path.join(dist, 'cli/reelward.js'), 'log', 'verify', '-'], {
    env: outside(),
  });
  let out = '';
  child.stdout.on('data', (chunk) => (out += String(chunk)));
  child.stdin.end(entries.map((entry) => `${JSON.stringify(entry)}\n`).join(''));
  await new Promise((resolve) => child.on('close', resolve));
  return JSON.parse(out);
}

describe('a passkey', () => {
  it('clears a hold without a PIN, is told in the log, and is proven offline', async () => {
    await onNamed(async ({ page }) => {
      const authenticator = await register(page, 'blue key');
      const [added] = await ownEntries(page, 'passkey.added');
      expect(added?.payload).toMatchObject({
        person: 'p-3301',
        by: 'p-3301',
        role: 'lead',
        host: 'localhost',
      });
      await signIn(page, 'BADGE-2201');
      await hold(page, 'R-980101');
      await authenticator.putIn();
      await clearByPasskey(page);
      await expect.poll(() => page.getByTestId('notice').textContent()).toContain('Cleared for M2-R-010');
      const [cleared] = await ownEntries(page, 'hold.cleared');
      expect(cleared && passkeyUse(cleared)?.acts).toHaveLength(1);
      await goTo(page, 'log');
      const row = page.locator('[data-testid=entry][data-kind="hold.cleared"]').first();
      await row.locator('[data-fact=passkey]').getByText('blue key').waitFor();
      await row.click();
      await page.getByTestId('entry-signed').getByText('proven by passkey of Morag').waitFor();
      await page.keyboard.press('Escape');
      // The end of the chain is signed within a second.
      await expect.poll(async () => (await verify(await readLog(page))).ok).toBe(true);
      const { passkeys } = await verify(await readLog(page));
      expect(passkeys.proven).toMatchObject([
        { entry: cleared && entryId(cleared), says: 'proven by passkey of Morag', passkey: 'blue key' },
      ]);
      expect(passkeys.refused).toEqual([]);
    });
  });

  it('is asked for by whoever has one where people are written; without it that is offered, and shows', async () => {
    await onNamed(async ({ page }) => {
      const authenticator = await register(page, 'blue key');
      await signIn(page, 'BADGE-3301');
      const add = async (name: string) => {
        await page.getByTestId('person-add').click();
        await page.getByTestId('person-name').fill(name);
        await page.getByTestId('person-badge').fill(`B-${name}`);
        await page.getByTestId('person-save').click();
      };
      await goTo(page, 'plant');
      await page.getByTestId('tile-people').click();
      await authenticator.putIn();
      await add('Ines');
      await page.getByText('Ines saved.').waitFor();
      const added = async () => (await ownEntries(page, 'person.added')).at(-1);
      const first = await added();
      expect(first && passkeyUse(first)?.acts).toHaveLength(1);
      const { passkeys } = await verify(await readLog(page));
      expect(passkeys.proven).toMatchObject([{ kind: 'person.added', says: 'proven by passkey of Morag' }]);
      // A scan takes the authenticator out.
      await scan(page, 'BADGE-3301');
      await authenticator.putIn(false);
      await add('Juna');
      await page.getByTestId('notice').getByText('The passkey did not sign').waitFor();
      expect((await added())?.payload['name']).toBe('Ines');
      await page.getByRole('button', { name: 'Save without it' }).click();
      await page.getByText('Juna saved.').waitFor();
      const second = await added();
      expect(second?.payload['name']).toBe('Juna');
      expect(second && passkeyUse(second)).toBeNull();
    });
  });

  it('that does not make sure of its user writes nothing; the PIN decides then, and the log says so', async () => {
    await onNamed(async ({ page }) => {
      const authenticator = await register(page, 'blue key');
      await signIn(page, 'BADGE-2201');
      await hold(page, 'R-980102');
      await authenticator.putIn(false);
      await clearByPasskey(page);
      await page.getByText('The passkey did not sign').waitFor();
      expect(await ownEntries(page, 'hold.cleared')).toEqual([]);
      await page.keyboard.press('Escape');
      await page.getByTestId('verdict-clear').click();
      await page.getByTestId('badge').waitFor();
      await scan(page, 'BADGE-3301');
      await page.locator('.pinpad').waitFor();
      await pad(page, '3301');
      await page.getByRole('button', { name: 'Checked and measured by hand' }).click();
      await page.getByTestId('clear-accept').click();
      await expect.poll(() => page.getByTestId('notice').textContent()).toContain('Cleared for M2-R-010');
      await goTo(page, 'log');
      await page.locator('[data-testid=entry][data-kind="hold.cleared"]').first().click();
      await page.getByTestId('entry-signed').getByText('PIN only, told by the tablet').waitFor();
      await page.keyboard.press('Escape');
    });
  });

  it('is removed by an engineer, and no other lead; it is offered no more', async () => {
    await onNamed(async ({ page }) => {
      await register(page, 'blue key');
      await openPasskeys(page, 'BADGE-3301');
      await page.getByTestId('passkey-remove').click();
      await confirm(page, 'BADGE-4401', '4401');
      await page.getByTestId('person-passkeys-BADGE-3301').getByText('0 passkeys').waitFor();
      await hold(page, 'R-980103');
      expect(await page.getByTestId('use-passkey').count()).toBe(0);
    });
  });
});

describe('where there are none', () => {
  it('the screen says why, and what decides', async () => {
    await demo.onTablet(
      async ({ page }) => {
        await openPasskeys(page, 'BADGE-3301');
        await page.getByText('by name, not by number').waitFor();
        expect(await page.getByTestId('passkey-add').count()).toBe(0);
      },
      { badge: 'BADGE-4401' },
    );
  });
});
