// A store that could not be started holds nothing open.

import './browser.ts';

import Dexie from 'dexie';
import { afterEach, expect, test, vi } from 'vitest';
import { startMs } from '../../../shared/floor/story.ts';

const startFile = '../../../../src/app/store/start-store.ts';
const loadFile = '../../../../src/app/store/load.ts';
const open = async (name: string) => {
  const { openStore } = await import('../../../../src/app/store/store.ts');
  return openStore({ clock: { nowMs: () => startMs }, appVersion: '0.1.0', tabletName: 'front', name });
};
const closed = () => {
  const databases = vi.spyOn(Dexie.prototype, 'close');
  const channels = vi.spyOn(BroadcastChannel.prototype, 'close');
  return () => ({
    databases: databases.mock.contexts.map((one) => (one as Dexie).name).sort(),
    channels: channels.mock.contexts.map((one) => (one as BroadcastChannel).name),
  });
};

afterEach(() => {
  vi.doUnmock(startFile);
  vi.doUnmock(loadFile);
  vi.resetModules();
  vi.restoreAllMocks();
});

test('databases and channel are closed where what starts on them cannot be fetched', async () => {
  vi.resetModules();
  vi.doMock(startFile, () => ({
    get startStore() {
      throw new TypeError('Failed to fetch dynamically imported module');
    },
  }));
  const what = closed();
  await expect(open('unfetched')).rejects.toThrow('Failed to fetch');
  expect(what()).toEqual({ databases: ['unfetched', 'unfetched-cache'], channels: ['unfetched-entries'] });
});

test('and where the log cannot be read', async () => {
  vi.resetModules();
  vi.doMock(loadFile, async (original) => ({
    ...(await original<object>()),
    loadReplica: () => Promise.reject(new Dexie.UnknownError('the disk does not answer')),
  }));
  const what = closed();
  await expect(open('unread')).rejects.toMatchObject({ fault: 'lost' });
  expect(what()).toEqual({ databases: ['unread', 'unread-cache'], channels: ['unread-entries'] });
});
