// What a station link is told: its server, its folder, its stations and how each is heard. Unknown keys are refused by name, so that a
// misspelt one is not silently ignored.

import * as z from 'zod';
import { stationPlaces } from '../../shared/floor/vocabulary.ts';
import { type Ipc2591Source, ipc2591Source } from './ipc2591/config.ts';

const name = z
  .string()
  .min(1)
  .max(64)
  .regex(/^[\x21-\x7e]+$/, 'expected visible letters, digits and signs without blanks');
const place = z
  .string()
  .regex(/^(\[[0-9a-f:]+\]|[A-Za-z0-9.-]+):\d{1,5}$/i, 'expected HOST:PORT, e.g. 127.0.0.1:8090')
  .refine((text) => Number(text.split(':').at(-1)) <= 65_535, 'expected a port from 0 to 65535');

const counter = z.strictObject({
  kind: z.literal('counter'),
  listen: place,
  /** Shared with the device: its bearer token, or the key of its messages' proof. */
  secret: z.string().min(8, 'expected at least 8 characters').max(200),
});
/** Ports of the channel between neighbours: 50100 and the number of the lane. It takes one client, which is the neighbour. */
const NEIGHBOURS = { first: 50_101, last: 50_116 } as const;

const hermes = z.strictObject({
  kind: z.literal('hermes'),
  /** Where the machine listens for supervisory systems: its SupervisorySystemPort. */
  connect: place.superRefine((text, context) => {
    const { port } = placeOf(text);
    const refuse = (message: string) => context.addIssue({ code: 'custom', message });
    if (port === 0) refuse('expected a port from 1 to 65535');
    if (port >= NEIGHBOURS.first && port <= NEIGHBOURS.last)
      refuse(
        `expected the machine’s SupervisorySystemPort; ${port} is for its neighbour in the line, and a listener there would stop the line`,
      );
  }),
  /** Only boards of this machine and of this lane; absent: of the first machine heard there, and of any lane. */
  machineId: z.string().min(1).max(80).optional(),
  lane: z.int().min(1).max(99).optional(),
  /** What counts: a board that left the machine (usual), or that came to it. */
  counts: z.enum(['departed', 'arrived']).optional(),
});

const station = z.strictObject({
  station: name,
  line: name,
  machine: name.nullable(),
  at: z.enum(stationPlaces),
  source: z.discriminatedUnion('kind', [counter, hermes, ipc2591Source]),
});

/** The configuration of a link. */
export const linkConfigSchema = z.strictObject({
  server: z.url({ protocol: /^https?$/, error: 'expected http://… or https://…' }),
  /** One-time code for the first start; what stands here later is not looked at. */
  code: z.string().min(1).max(40).optional(),
  data: z.string().min(1),
  stations: z
    .array(station)
    .min(1)
    .superRefine((stations, context) => {
      stations.forEach((each, at) => {
        if (stations.findIndex((other) => other.station === each.station) < at)
          context.addIssue({
            code: 'custom',
            path: [at, 'station'],
            message: `expected another name: ${each.station} is named above`,
          });
      });
    }),
});

export type LinkConfig = z.infer<typeof linkConfigSchema>;
export type CounterSource = z.infer<typeof counter>;
export type HermesSource = z.infer<typeof hermes>;

/** A station, and by what it is heard. */
interface StationOf<S> {
  readonly station: string;
  readonly line: string;
  readonly machine: string | null;
  readonly at: (typeof stationPlaces)[number];
  readonly source: S;
}

/** A station that a device counts for. */
export type CounterStation = StationOf<CounterSource>;
/** A station that a machine's supervisory channel counts for. */
export type HermesStation = StationOf<HermesSource>;
/** A station that a machine of IPC-2591 counts for. */
export type Ipc2591Station = StationOf<Ipc2591Source>;

/** A configuration that cannot be followed: one line that says where and what to do. */
export class LinkRefused extends Error {}

/** The stations that a device counts for. */
export function counterStations(config: LinkConfig): readonly CounterStation[] {
  return config.stations.flatMap(({ source, ...rest }) =>
    source.kind === 'counter' ? [{ ...rest, source }] : [],
  );
}

/** The stations that a machine's supervisory channel counts for. */
export function hermesStations(config: LinkConfig): readonly HermesStation[] {
  return config.stations.flatMap(({ source, ...rest }) =>
    source.kind === 'hermes' ? [{ ...rest, source }] : [],
  );
}

/** The stations that a machine of IPC-2591 counts for. */
export function ipc2591Stations(config: LinkConfig): readonly Ipc2591Station[] {
  return config.stations.flatMap(({ source, ...rest }) =>
    source.kind === 'cfx' || source.kind === 'ipc2591' ? [{ ...rest, source }] : [],
  );
}

/** Where `HOST:PORT` is. */
export function placeOf(text: string): { readonly host: string; readonly port: number } {
  const cut = text.lastIndexOf(':');
  return { host: text.slice(0, cut).replace(/^\[|\]$/g, ''), port: Number(text.slice(cut + 1)) };
}
