// What does one AMQP message of IPC-2591 carry? Bytes, plain or gzip, in; envelopes out, each alone or in an array of them.
// Method: only what is used is read, each field checked by itself, since versions 1.2 to 2.1 stand side by side and add fields.
// Refused: a schema of whole messages, which the next version's fields would break.

import { createHash } from 'node:crypto';
import { gunzipSync } from 'node:zlib';
import { wellFormed } from '../../../shared/log/seal.ts';

/** Most bytes of a message, packed or not. */
export const MESSAGE_MOST = 1_048_576;
/** Most envelopes of one message. */
const ENVELOPES_MOST = 1_000;
/** The newest major version whose messages are read. */
const MAJOR_MOST = 2;

/** One envelope, checked. */
export interface Envelope {
  /** As the standard names it. */
  readonly name: string;
  /** Names the message: what comes a second time under it is dropped. */
  readonly key: string;
  /** When it happened by the machine's clock, ms since 1970; null where that is not said with its zone. */
  readonly atMs: number | null;
  /** The handle of the machine. */
  readonly source: string;
  /** Which question it answers; null where it answers none. */
  readonly request: string | null;
  readonly body: Readonly<Record<string, unknown>>;
}

/** What a message's bytes hold: envelopes, and why others could not be read. */
export interface Read {
  readonly envelopes: readonly Envelope[];
  readonly unread: readonly string[];
}

const nothing = (why: string): Read => ({ envelopes: [], unread: [why] });

/** Reads a message's bytes; never throws. `isGzip`: it says so of itself; bytes that begin like gzip are unpacked as well. */
export function readEnvelopes(bytes: Buffer, isGzip: boolean): Read {
  let plain = bytes;
  if (isGzip || (bytes[0] === 0x1f && bytes[1] === 0x8b)) {
    try {
      plain = gunzipSync(bytes, { maxOutputLength: MESSAGE_MOST });
    } catch (error) {
      const isBomb = (error as NodeJS.ErrnoException).code === 'ERR_BUFFER_TOO_LARGE';
      return nothing(isBomb ? 'gzip: unpacks to more than 1 MB' : 'gzip: cannot be unpacked');
    }
  }
  if (plain.length > MESSAGE_MOST) return nothing('more than 1 MB');
  let value: unknown;
  try {
    value = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(plain));
  } catch (error) {
    return nothing(error instanceof SyntaxError ? 'not JSON' : 'not UTF-8');
  }
  const list = Array.isArray(value) ? (value as unknown[]) : [value];
  if (list.length > ENVELOPES_MOST)
    return nothing(`an array of ${list.length} envelopes, at most 1000 are read`);
  const envelopes: Envelope[] = [];
  const unread: string[] = [];
  for (const each of list) {
    const read = readEnvelope(each);
    if (typeof read === 'string') unread.push(read);
    else envelopes.push(read);
  }
  return { envelopes, unread };
}

/** One envelope, or why it is none. */
function readEnvelope(value: unknown): Envelope | string {
  const envelope = asRecord(value);
  if (!envelope) return 'no envelope';
  const name = asText(envelope['MessageName'], 200);
  if (name === null) return 'an envelope without MessageName';
  const version = asText(envelope['Version'], 20);
  if (version !== null && !(Number.parseInt(version, 10) <= MAJOR_MOST)) return `${name}: version ${version}`;
  const source = asText(envelope['Source'], 200);
  if (source === null) return `${name}: no Source`;
  const body = asRecord(envelope['MessageBody']);
  if (!body) return `${name}: no MessageBody`;
  const stamp = asText(envelope['TimeStamp'], 60);
  const request = asText(envelope['RequestID'], 200);
  return { name, key: keyOf(envelope, stamp), atMs: momentOf(stamp), source, request, body };
}

const NO_GUID = /^[0-]*$/;

/**
 * What is the same message? That with the same UniqueID, name and time: a machine that gives all its messages one id then still counts, and a
 * message sent again never differs in these. Without an id the whole envelope takes its place.
 */
function keyOf(envelope: Readonly<Record<string, unknown>>, stamp: string | null): string {
  const id = asText(envelope['UniqueID'], 200);
  const named = id !== null && !NO_GUID.test(id);
  const text = named ? JSON.stringify([id, envelope['MessageName'], stamp]) : JSON.stringify(envelope);
  return createHash('sha256').update(text).digest('base64url').slice(0, 16);
}

/** A moment with up to nine digits of a second; null without a zone, or where there is no such date. */
function momentOf(stamp: string | null): number | null {
  const parts = /^(\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d)(\.\d{1,9})?(Z|[+-]\d\d:\d\d)$/.exec(stamp ?? '');
  if (!parts) return null;
  const [, second = '', fraction = '', zone = ''] = parts;
  const ms = Date.parse(`${second}${fraction.slice(0, 4)}${zone}`);
  return Number.isNaN(ms) ? null : ms;
}

/** A record of fields; null for anything else. */
export function asRecord(value: unknown): Readonly<Record<string, unknown>> | null {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
    ? (value as Readonly<Record<string, unknown>>) // fields are checked one by one
    : null;
}

/** A list; empty for anything else. */
export function asList(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? (value as unknown[]) : [];
}

/** A text without blanks around it, of at least one and at most so many characters, none of them a control character; null else. */
export function asText(value: unknown, most: number): string | null {
  if (typeof value !== 'string') return null;
  const text = wellFormed(value.trim());
  return text === '' || text.length > most || /[\u0000-\u001f\u007f]/.test(text) ? null : text;
}

/** A number between bounds; null else. */
export function asNumber(value: unknown, least: number, most: number): number | null {
  return typeof value === 'number' && value >= least && value <= most ? value : null;
}
