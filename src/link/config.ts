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
// Read, so that the refusal of them says what it is about and not that a key is wrong.
const hermes = z.strictObject({ kind: z.literal('hermes'), connect: place });
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

/** A station that a device counts for. */
export interface CounterStation {
  readonly station: string;
  readonly line: string;
  readonly machine: string | null;
  readonly at: (typeof stationPlaces)[number];
  readonly source: CounterSource;
}

/** A configuration that cannot be followed: one line that says where and what to do. */
export class LinkRefused extends Error {}

/** The stations that this version can hear. Throws `LinkRefused` where one is heard by another standard. */
export function counterStations(config: LinkConfig): readonly CounterStation[] {
  return config.stations.map(({ source, ...rest }, at) => {
    if (source.kind === 'counter') return { ...rest, source };
    throw new LinkRefused(
      `stations[${at}].source.kind: "${source.kind}" is not there yet; this version hears devices that count ("counter") only`,
    );
  });
}

/** Where `HOST:PORT` is. */
export function placeOf(text: string): { readonly host: string; readonly port: number } {
  const cut = text.lastIndexOf(':');
  return { host: text.slice(0, cut).replace(/^\[|\]$/g, ''), port: Number(text.slice(cut + 1)) };
}
