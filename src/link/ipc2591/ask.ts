// Asks a machine something, as IPC-2591 has it over AMQP 1.0: a connection for one question, a link for the answer, a link for the question.
// Method: only what the link's file says is called, and only questions are sent; one answer within the standard's half minute, or a reason.
// Refused: addresses that a machine tells of itself, since whoever reaches the listener could then have this computer call anywhere.

import { randomUUID } from 'node:crypto';
import type { EventContext } from 'rhea';
import { bytesOf, dataOf, FRAME_MOST, newContainer } from './amqp.ts';
import { asRecord, asText, type Envelope, MESSAGE_MOST, readEnvelopes } from './envelope.ts';

/** An answer must be there after so long, ms (the standard's own figure). */
const ANSWER_WITHIN_MS = 30_000;
/** Bytes that an answer may come in. */
const BYTES_MOST = 2 * MESSAGE_MOST;
/** The version of the standard whose messages are asked with. */
const VERSION = '1.7';

/** A machine that can be asked. */
export interface AskDoor {
  /** `amqp://HOST:PORT` or with `USER:PASSWORD@`, as the machine's settings say. */
  readonly connect: string;
  /** Its address there. */
  readonly address: string;
}

/** A question: the message's name, its body, and whose answer it is asked for. */
export interface Question {
  readonly name: string;
  readonly body: object;
  /** This side's own handle. */
  readonly from: string;
}

/** The answer, or why there is none. */
export type Answered =
  | { readonly ok: true; readonly envelope: Envelope }
  | { readonly ok: false; readonly why: string };

/** The envelope of a question (CFX/CFXEnvelope.cs of the published library's fields). */
function envelopeOf(door: AskDoor, { name, body, from }: Question, request: string): object {
  return {
    MessageName: name,
    Version: VERSION,
    TimeStamp: new Date().toISOString(),
    UniqueID: randomUUID(),
    Source: from,
    Target: door.address,
    RequestID: request,
    MessageBody: body,
  };
}

/** Asks once; never rejects. `withinMs`: for an answer. */
export function ask(door: AskDoor, question: Question, withinMs = ANSWER_WITHIN_MS): Promise<Answered> {
  const request = `REQUEST-${randomUUID()}`;
  const replyTo = `${question.from}-${randomUUID()}`;
  const url = new URL(door.connect);
  return new Promise((resolve) => {
    let finish: (answer: Answered) => void = () => undefined;
    const container = newContainer((what) => finish({ ok: false, why: what }));
    const connection = container.connect(connectionOf(url));
    const socketOf = () =>
      (connection as unknown as { socket?: NodeJS.Socket & { destroy: () => void } }).socket; // not in the typings
    const late = setTimeout(() => finish({ ok: false, why: 'no answer within half a minute' }), withinMs);
    finish = (answer) => {
      finish = () => undefined;
      clearTimeout(late);
      connection.set_reconnect(false);
      connection.close();
      setTimeout(() => socketOf()?.destroy(), 100).unref();
      resolve(answer);
    };
    let bytes = 0;
    socketOf()?.on('data', (chunk: Buffer) => {
      bytes += chunk.length;
      if (bytes > BYTES_MOST) finish({ ok: false, why: `more than ${BYTES_MOST} bytes for an answer` });
    });
    container.on('disconnected', ({ error }: EventContext) => {
      const { code = '', message = '' } = (error ?? {}) as {
        readonly code?: string;
        readonly message?: string;
      };
      finish({ ok: false, why: `${code} ${message}`.trim() || 'hung up' });
    });
    container.on('connection_close', () => finish({ ok: false, why: 'hung up' }));
    container.on('message', ({ message }: EventContext) => {
      const body = message && bytesOf(message);
      if (!body) return finish({ ok: false, why: 'an answer without a body' });
      finish(answerIn(readEnvelopes(body.bytes, body.isGzip), question, request));
    });
    connection.open_receiver({
      name: 'request-receiver',
      source: { address: door.address },
      target: { address: replyTo },
      credit_window: 1,
      max_message_size: MESSAGE_MOST,
    });
    const sender = connection.open_sender({
      name: replyTo,
      source: { address: replyTo },
      target: { address: door.address },
    });
    sender.once('sendable', () => {
      sender.send({
        body: dataOf(envelopeOf(door, question, request)),
        content_type: 'application/json; charset="utf-8"',
        message_id: 'command-request',
        correlation_id: request,
        reply_to: replyTo,
        to: door.address,
      });
    });
  });
}

/** The answer among what came: that to this question. */
function answerIn(
  { envelopes, unread }: ReturnType<typeof readEnvelopes>,
  { name }: Question,
  request: string,
): Answered {
  const wanted = name.replace(/Request$/, 'Response');
  const own = envelopes.find((each) => each.request === null || each.request === request);
  if (own?.name === wanted) return { ok: true, envelope: own };
  if (own) {
    const said = asText(asRecord(own.body['RequestResult'])?.['Message'], 100);
    return { ok: false, why: [own.name, said].filter((text) => text !== null).join(': ') };
  }
  return { ok: false, why: unread[0] ?? 'an answer to another question' };
}

function connectionOf(url: URL): Parameters<ReturnType<typeof newContainer>['connect']>[0] {
  const isTls = url.protocol === 'amqps:';
  const options: Record<string, unknown> = {
    host: url.hostname.replace(/^\[|\]$/g, ''),
    port: url.port === '' ? (isTls ? 5671 : 5672) : Number(url.port),
    transport: isTls ? 'tls' : 'tcp',
    max_frame_size: FRAME_MOST,
    reconnect: false,
  };
  if (url.username !== '') {
    options['username'] = decodeURIComponent(url.username);
    options['password'] = decodeURIComponent(url.password);
  }
  return options as never; // as rhea reads them
}
