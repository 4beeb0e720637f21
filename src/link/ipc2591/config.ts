// What a station that is heard by IPC-2591 is told: where machines send to, or which broker has what they say, and whose messages are its own.

import * as z from 'zod';
import { countedBys } from './messages.ts';

const text = (most: number) => z.string().min(1).max(most);

/** The source of such a station. Keys are the configuration's. */
export const ipc2591Source = z
  .strictObject({
    /** The standard by the name that machines' settings use, or by its number. */
    kind: z.enum(['cfx', 'ipc2591']),
    /** Where machines send to, without a broker: `HOST:PORT`. */
    listen: z
      .string()
      .regex(/^(\[[0-9a-f:]+\]|[A-Za-z0-9.-]+):\d{1,5}$/i, 'expected HOST:PORT, e.g. 192.168.7.20:5672')
      .refine((place) => Number(place.split(':').at(-1)) <= 65_535, 'expected a port from 0 to 65535')
      .optional(),
    /** What machines prove themselves with at `listen`; absent: anybody may send. */
    user: text(100).optional(),
    password: z.string().min(8, 'expected at least 8 characters').max(200).optional(),
    /** Files of a certificate and its key, PEM; absent: no TLS. */
    tls: z.strictObject({ cert: text(1000), key: text(1000) }).optional(),
    broker: z
      .url({ protocol: /^amqps?$/, error: 'expected amqp://HOST:PORT or amqps://HOST:PORT' })
      .optional(),
    /** What holds the messages at the broker: a durable queue. */
    address: text(200).optional(),
    /** File of the authority of the broker's certificate, PEM; absent: the system's. */
    ca: text(1000).optional(),
    /** The machine's handle, as its messages' `Source`; absent: the first machine that is heard there. */
    handle: text(200).optional(),
    /** Which message is one panel; absent: as the station stands. */
    counts: z.enum(countedBys).optional(),
    lane: z.int().min(0).max(1000).optional(),
    /** Where the machine may be asked what it has loaded, and its address there; absent: it is never asked anything. */
    ask: z
      .strictObject({
        connect: z.url({ protocol: /^amqps?$/, error: 'expected amqp://HOST:PORT or amqps://HOST:PORT' }),
        address: text(200).optional(),
      })
      .optional(),
    /** The link may answer the machine when it asks about materials, once an engineer turns that on at a tablet. */
    answers: z.literal(true).optional(),
    /** The machine's names of places -> the line's slots; absent: they are the same. */
    slots: z.record(text(64), text(64)).optional(),
  })
  .superRefine((source, context) => {
    const say = (path: string, message: string) =>
      context.addIssue({ code: 'custom', path: [path], message });
    if ((source.listen === undefined) === (source.broker === undefined))
      say('listen', 'expected either "listen" or "broker"');
    if (source.broker !== undefined && source.address === undefined)
      say('address', 'expected the address of a queue at the broker');
    if ((source.user === undefined) !== (source.password === undefined))
      say('password', 'expected "user" and "password" together');
    if (source.answers === true && source.listen === undefined)
      say('answers', 'expected "listen": a machine is answered on its own connection only');
    if (source.ask !== undefined && source.ask.address === undefined && source.handle === undefined)
      say('ask', 'expected the machine’s address there, or its "handle"');
    if (source.broker !== undefined && (source.user !== undefined || source.tls !== undefined))
      say('broker', 'expected name and password in the broker’s address; "tls" is for "listen"');
  });

/** What such a station is told. */
export type Ipc2591Source = z.infer<typeof ipc2591Source>;
