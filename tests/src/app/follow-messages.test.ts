// A message's address takes its line in hand once: not again by a reload, nor on the way back from a screen beside the navigation.

import { signal } from '@preact/signals';
import { beforeEach, expect, it, vi } from 'vitest';
import type { App } from '../../../src/app/app.ts';
import type { Preferences } from '../../../src/app/store/preferences.ts';

const bar = { hash: '' };
let changed: () => void = () => undefined;
let fromWorker: (event: { readonly data: unknown }) => void = () => undefined;
beforeEach(() => {
  bar.hash = '';
  vi.stubGlobal('location', bar);
  vi.stubGlobal('history', {
    state: null,
    replaceState: (_state: unknown, _title: string, address: string) => {
      bar.hash = address;
    },
  });
  vi.stubGlobal('addEventListener', (kind: string, listener: () => void) => {
    if (kind === 'hashchange') changed = listener;
  });
  vi.stubGlobal('navigator', {
    serviceWorker: {
      addEventListener: (_kind: string, listener: typeof fromWorker) => {
        fromWorker = listener;
      },
    },
  });
});

/** A page that is opened at an address, with L1 in hand. */
async function open(hash: string, line = 'L1') {
  vi.resetModules();
  bar.hash = hash;
  const { fetchEveryArea } = await import('../../../src/app/words/fetch.ts');
  await fetchEveryArea('en');
  const router = await import('../../../src/app/router.ts');
  const { followMessages } = await import('../../../src/app/follow-messages.ts');
  const preferences = signal({ line } as Preferences); // no other is read
  const notice: App['notice'] = signal(null);
  const lines = new Map(['L1', 'L2'].map((each) => [each, { line: each, name: `Line ${each}` }]));
  const app = {
    preferences,
    notice,
    line: { peek: () => preferences.peek().line },
    store: { floor: () => ({ lines }) },
  } as unknown as App; // what is followed here
  router.followAddress();
  followMessages(app);
  /** The browser tells of a change of its address later; here it is told at once. */
  const go = (...to: Parameters<typeof router.goTo>) => {
    router.goTo(...to);
    changed();
  };
  return { ...router, go, preferences, notice };
}

it('is told, and leaves an address that names no line', async () => {
  const { place, preferences, notice } = await open('#/line/L2');
  expect(preferences.value.line).toBe('L2');
  expect(notice.value?.text).toContain('Line L2');
  expect([bar.hash, place.value]).toEqual(['#/line', { screen: 'line', rest: [] }]);
});

it('does not come back by a reload after another line was taken', async () => {
  const { preferences } = await open('#/line/L2');
  preferences.value = { ...preferences.value, line: 'L1' };
  const again = await open(bar.hash, 'L1');
  expect([again.preferences.value.line, again.notice.value]).toEqual(['L1', null]);
});

it('does not come back by Search and Close', async () => {
  const { go, goBack, place, preferences } = await open('#/line/L2');
  preferences.value = { ...preferences.value, line: 'L1' };
  go('search');
  goBack();
  changed();
  expect([place.value, preferences.value.line]).toEqual([{ screen: 'line', rest: [] }, 'L1']);
});

it('takes it by word of the service worker, and passes over a line that the plant does not know', async () => {
  const { preferences } = await open('#/stock');
  fromWorker({ data: { type: 'open-line', line: 'L9' } });
  expect(preferences.value.line).toBe('L1');
  fromWorker({ data: { type: 'open-line', line: 'L2' } });
  expect([preferences.value.line, bar.hash]).toEqual(['L2', '#/line']);
});
