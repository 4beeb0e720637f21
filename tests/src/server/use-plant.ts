// A server for each test of a file, and the tablets that join it; after the test the tablets stop, then the server.

import { afterEach, beforeEach } from 'vitest';
import type { ServerSettings } from '../../../src/server/settings.ts';
import { enrolAt, newTablet, startTestServer, type TestServer, type TestTablet } from './tablets.ts';

/** The plant of the test that runs. */
export interface Plant {
  readonly server: TestServer;
  /** Those that joined, in order; one that a test makes itself is put in too, so that it stops. */
  readonly tablets: TestTablet[];
  /** A new tablet, enrolled; it does not sync until it is started. */
  readonly join: (name: string) => Promise<TestTablet>;
}

/** Starts a server before each test; `settings`: what is otherwise than a test server's. */
export function usePlant(settings: Partial<ServerSettings> = {}): Plant {
  let server: TestServer;
  let tablets: TestTablet[] = [];
  beforeEach(async () => {
    tablets = [];
    server = await startTestServer(settings);
  });
  afterEach(async () => {
    await Promise.all(tablets.map((tablet) => tablet.stop()));
    await server.stop();
  });
  return {
    get server() {
      return server;
    },
    get tablets() {
      return tablets;
    },
    join: async (name) => {
      const tablet = await newTablet(name, server.running.url);
      tablets.push(tablet);
      await enrolAt(server.running, tablet);
      return tablet;
    },
  };
}
