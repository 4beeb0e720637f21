// What a station link is told: its server, its folder, its stations and how each is heard. Unknown keys are refused by name, so that a
// misspelt one is not silently ignored.

import * as z from 'zod';
import { stationPlaces } from '../../shared/floor/vocabulary.ts';

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
// Read, so that the refusal of them says what it is about and not that a key is wrong.
const cfx = z.strictObject({
  kind: z.literal('cfx'),
  listen: place.optional(),
  broker: z.string().optional(),
  address: z.string().optional(),
});

const station = z.strictObject({
  station: name,
  line: name,
  machine: name.nullable(),
  at: z.enum(stationPlaces),
  source: z.discriminatedUnion('kind', [counter, hermes, cfx]),
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

/** A station that a device counts for. */
export interface CounterStation {
  readonly station: string;
  readonly line: string;
  readonly machine: string | null;
  readonly at: (typeof stationPlaces)[number];
  readonly source: CounterSource;
}

/** A station that a machine's supervisory channel counts for. */
export interface HermesStation extends Omit<CounterStation, 'source'> {
  readonly source: HermesSource;
}

/** A station that this version can hear. */
export type HeardStation = CounterStation | HermesStation;

/** A configuration that cannot be followed: one line that says where and what to do. */
export class LinkRefused extends Error {}

/** The stations that this version can hear. Throws `LinkRefused` where one is heard by another standard. */
export function heardStations(config: LinkConfig): readonly HeardStation[] {
  return config.stations.map(({ source, ...rest }, at) => {
    if (source.kind === 'counter') return { ...rest, source };
    if (source.kind === 'hermes') return { ...rest, source };
    throw new LinkRefused(
      `stations[${at}].source.kind: "${source.kind}" is not there yet; this version hears devices that count ("counter") and machines by IPC-HERMES-9852 ("hermes")`,
    );
  });
}

/** Those that a device counts for. */
export function isCounterStation(station: HeardStation): station is CounterStation {
  return station.source.kind === 'counter';
}

/** Those that a machine's supervisory channel counts for. */
export function isHermesStation(station: HeardStation): station is HermesStation {
  return station.source.kind === 'hermes';
}

/** Where `HOST:PORT` is. */
export function placeOf(text: string): { readonly host: string; readonly port: number } {
  const cut = text.lastIndexOf(':');
  return { host: text.slice(0, cut).replace(/^\[|\]$/g, ''), port: Number(text.slice(cut + 1)) };
}
