// What the server counts about itself, as Prometheus text. Names are ours; units are in the names.

import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client';

const SECONDS = [0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5];

export interface Metrics {
  readonly registry: Registry;
  /** What names tablets: for whoever sits at this computer, and not on the server's own port. */
  readonly tablets: Registry;
  readonly requests: Histogram<'route' | 'status'>;
  readonly appendSeconds: Histogram;
  readonly entries: Counter;
  readonly quarantined: Counter<'fault'>;
  readonly refusals: Counter<'code'>;
}

/** A registry of its own, so that two servers in one process do not share counts. */
export function createMetrics(read: {
  /** The label that tells several plants apart. */
  readonly plant: string;
  readonly listeners: () => number;
  readonly certificateEndsMs: () => number | null;
}): Metrics {
  const [registry, tablets] = [new Registry(), new Registry()];
  for (const each of [registry, tablets]) each.setDefaultLabels({ plant: read.plant });
  const registers = [registry];
  collectDefaultMetrics({ register: registry });
  new Gauge({
    name: 'reelward_live_listeners',
    help: 'Tablets listening for live entries',
    registers,
    collect() {
      this.set(read.listeners());
    },
  });
  new Gauge({
    name: 'reelward_certificate_end_seconds',
    help: 'When the HTTPS certificate ends, seconds since 1970; 0 without one',
    registers,
    collect() {
      this.set((read.certificateEndsMs() ?? 0) / 1000);
    },
  });
  return {
    registry,
    tablets,
    requests: new Histogram({
      name: 'reelward_request_seconds',
      help: 'Time to answer a request',
      labelNames: ['route', 'status'],
      buckets: SECONDS,
      registers,
    }),
    appendSeconds: new Histogram({
      name: 'reelward_append_seconds',
      help: 'Time from a page being checked to its entries being durable',
      buckets: SECONDS,
      registers,
    }),
    entries: new Counter({ name: 'reelward_entries_total', help: 'Entries taken into the log', registers }),
    quarantined: new Counter({
      name: 'reelward_entries_aside_total',
      help: 'Entries kept aside',
      labelNames: ['fault'],
      registers,
    }),
    refusals: new Counter({
      name: 'reelward_refusals_total',
      help: 'Requests refused',
      labelNames: ['code'],
      registers,
    }),
  };
}
