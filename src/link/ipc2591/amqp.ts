// The AMQP 1.0 library, as this room uses it: how a message's bytes are found, and what keeps a peer's fault from ending the process.

import type { Container, EventContext, Message } from 'rhea';
import * as library from 'rhea';

// The package is one object, whose makers lie on its prototype: only its default export has them.
const rhea = (library as unknown as { readonly default: typeof library }).default;

/** Largest frame that is taken, bytes. */
export const FRAME_MOST = 262_144;
/** A broker that says nothing for twice so long is gone, ms. */
export const IDLE_MS = 30_000;
/** A machine likewise, ms: it beats at least every five minutes, and some say nothing between. */
export const MACHINE_IDLE_MS = 180_000;
/** Messages that may be on their way at one time. */
export const CREDIT = 100;

/** A container of its own. `onTrouble`: told of what a peer did wrong; without ears for these the library throws. */
export function newContainer(onTrouble: (what: string, context: EventContext | null) => void): Container {
  const container = rhea.create_container();
  for (const event of [
    'error',
    'protocol_error',
    'connection_error',
    'session_error',
    'receiver_error',
    'sender_error',
  ]) {
    container.on(event, (told: unknown) => {
      const context = told as Partial<EventContext> | null; // an error, or a context with one
      const error = context?.error ?? context?.receiver?.error ?? context?.session?.error ?? told;
      onTrouble(textOf(error), context?.connection ? (context as EventContext) : null);
    });
  }
  // Told by whoever cares; without an ear the library writes it to the console.
  container.on('disconnected', () => undefined);
  return container;
}

function textOf(error: unknown): string {
  const { condition, description, message } = (error ?? {}) as Record<string, unknown>; // whatever a peer sent
  const text = [condition, description ?? message].filter((each) => typeof each === 'string' && each !== '');
  return text.length > 0 ? text.join(': ').slice(0, 180) : 'unknown error';
}

/** The bytes of a message's body, and whether it says that they are packed; null where it has none. */
export function bytesOf(message: Message): { readonly bytes: Buffer; readonly isGzip: boolean } | null {
  const isGzip = message.content_encoding === 'gzip';
  const body: unknown = message.body;
  if (typeof body === 'string') return { bytes: Buffer.from(body, 'utf8'), isGzip };
  if (Buffer.isBuffer(body)) return { bytes: body, isGzip };
  const content = (body as { readonly content?: unknown } | null | undefined)?.content;
  if (Buffer.isBuffer(content)) return { bytes: content, isGzip };
  if (Array.isArray(content) && content.every((each) => Buffer.isBuffer(each)))
    return { bytes: Buffer.concat(content), isGzip };
  return null;
}

/** A message's body, as the standard has it: one data section of UTF-8 JSON. */
export function dataOf(value: object): unknown {
  return rhea.message.data_section(Buffer.from(JSON.stringify(value)));
}
