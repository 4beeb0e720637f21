// A machine that can be asked, by AMQP 1.0 as the published library has it: a link for answers, a link for questions, the answer with the
// question's RequestID (CFX/Transport/AmqpCFXEndpoint.cs:1120-1190).

import type { AddressInfo } from 'node:net';
import type { EventContext, Sender } from 'rhea';
import * as library from 'rhea';

const rhea = (library as unknown as { readonly default: typeof library }).default;

/** A question as it came. */
export interface Asked {
  readonly MessageName: string;
  readonly RequestID: string;
  readonly Source: string;
  readonly Target: string;
  readonly MessageBody: Readonly<Record<string, unknown>>;
}

/** A machine that listens for questions. */
export interface AnsweringMachine {
  /** `HOST:PORT`. */
  readonly at: string;
  readonly asked: readonly Asked[];
  readonly close: () => Promise<void>;
}

/** Starts one. `answer`: the envelopes that it says to a question, or bytes; null: it says nothing. */
export async function startAnswering(
  answer: (asked: Asked) => object | Buffer | null,
): Promise<AnsweringMachine> {
  const container = rhea.create_container();
  const asked: Asked[] = [];
  const answering = new Map<string, Sender>();
  for (const event of ['error', 'disconnected', 'connection_error', 'protocol_error'])
    container.on(event, () => undefined);
  container.on('sender_open', ({ sender }: EventContext) => {
    const { address } = (sender as unknown as { target: { address: string } }).target; // not in the typings
    if (sender) {
      sender.set_source({ address: sender.source?.address ?? '' });
      answering.set(address, sender);
    }
  });
  container.on('message', ({ message }: EventContext) => {
    const bytes = (message as unknown as { body: { content: Buffer } }).body.content;
    const question = JSON.parse(bytes.toString('utf8')) as Asked;
    asked.push(question);
    const said = answer(question);
    if (said === null) return;
    const body = Buffer.isBuffer(said) ? said : Buffer.from(JSON.stringify(said));
    answering.get(String(message?.reply_to))?.send({ body: rhea.message.data_section(body) });
  });
  const server = container.listen({ host: '127.0.0.1', port: 0 });
  await new Promise<void>((resolve) => server.once('listening', () => resolve()));
  const sockets = new Set<{ destroy: () => void }>();
  server.on('connection', (socket) => sockets.add(socket));
  return {
    at: `127.0.0.1:${(server.address() as AddressInfo).port}`,
    asked,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        for (const socket of sockets) socket.destroy();
      }),
  };
}
