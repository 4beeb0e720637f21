// How a body is read: the bytes as they travelled are hashed (the signature covers them), then unpacked within a bound,
// then parsed. The framework's own JSON parser was passed over since it forgets the bytes.

import { isUtf8 } from 'node:buffer';
import { Readable } from 'node:stream';
import { promisify } from 'node:util';
import { createGunzip, gunzip } from 'node:zlib';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import type * as z from 'zod/mini';
import { unpackedBytes } from '../../../shared/wire/limits.ts';
import { hashOf } from '../keys.ts';
import { Refused } from './refuse.ts';

const unpack = promisify(gunzip);

/** Entries as JSON pack to about a fifth: no more than so many times the packed size is set aside for a page. */
const UNPACKS_TO = 8;
const CHUNK_AT_LEAST = 16 * 1024;

/** What is kept of a body besides its value. */
const bodySizes = new WeakMap<FastifyRequest, number>();
const bodyHashes = new WeakMap<FastifyRequest, string>();

/** SHA-256 of no bytes. */
export const emptyHash = hashOf('');

/** SHA-256 of the body's bytes as they travelled. */
export function bodyHash(request: FastifyRequest): string {
  return bodyHashes.get(request) ?? emptyHash;
}

/** Bytes of the body once unpacked. */
export function bodySize(request: FastifyRequest): number {
  return bodySizes.get(request) ?? 0;
}

/** Makes the server take JSON (plain or gzip), and raw bytes for snapshots. */
export function addBodyParsers(app: FastifyInstance): void {
  app.removeAllContentTypeParsers();
  app.addContentTypeParser(
    'application/json',
    { parseAs: 'buffer' },
    async (request: FastifyRequest, raw: Buffer) => {
      bodyHashes.set(request, hashOf(raw));
      const bytes = await unpackBody(raw, request.headers['content-encoding']);
      bodySizes.set(request, bytes.length);
      if (isUtf8(bytes)) return parseJsonBytes(bytes);
      throw notJson();
    },
  );
  app.addContentTypeParser(
    'application/octet-stream',
    { parseAs: 'buffer' },
    async (request: FastifyRequest, raw: Buffer) => {
      bodyHashes.set(request, hashOf(raw));
      return raw;
    },
  );
}

async function unpackBody(raw: Buffer, encoding: string | undefined): Promise<Buffer> {
  if (encoding === undefined || encoding === 'identity') {
    if (raw.length > unpackedBytes)
      throw new Refused('body-too-large', `the body is over ${unpackedBytes} bytes`);
    return raw;
  }
  if (encoding !== 'gzip') throw new Refused('media-type', 'a body is plain or gzip');
  try {
    return await unpack(raw, { chunkSize: chunkSizeOf(raw), maxOutputLength: unpackedBytes });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ERR_BUFFER_TOO_LARGE') {
      throw new Refused('body-too-large', `the body unpacks to over ${unpackedBytes} bytes`);
    }
    throw new Refused('bad-body', 'the body is not gzip, though it says so');
  }
}

/** Refuses bytes that are no gzip, or that unpack to more than `most`; returns to how many they do. Nothing of what is unpacked is kept. */
export async function checkUnpacks(packed: Uint8Array, most: number): Promise<number> {
  let size = 0;
  const stream = Readable.from([packed]).pipe(createGunzip());
  try {
    for await (const chunk of stream) {
      size += (chunk as Buffer).length;
      if (size > most) break;
    }
  } catch {
    throw new Refused('bad-body', 'expected gzip');
  }
  if (size > most) throw new Refused('body-too-large', `the body unpacks to over ${most} bytes`);
  return size;
}

/**
 * In pieces of the default size a page would cross to the thread pool and back a score of times; a larger buffer than wanted
 * has the engine look for garbage sooner. The last four bytes tell the size (RFC 1952); they are believed within bounds only.
 */
function chunkSizeOf(raw: Buffer): number {
  const told = raw.length >= 4 ? raw.readUInt32LE(raw.length - 4) + 1 : 0; // one more: a full buffer asks for another
  const most = Math.min(unpackedBytes, UNPACKS_TO * raw.length);
  return Math.max(CHUNK_AT_LEAST, Math.min(told, most));
}

/** The value of JSON in UTF-8. */
function parseJsonBytes(bytes: Buffer): unknown {
  try {
    return JSON.parse(bytes.toString('utf8'));
  } catch {
    throw notJson();
  }
}

function notJson(): Refused {
  return new Refused('bad-body', 'the body is not JSON in UTF-8');
}

/** Checks a body or query against its schema, or refuses naming the first path. */
export function readAs<S extends z.ZodMiniType>(
  schema: S,
  value: unknown,
  code: 'bad-body' | 'bad-query' = 'bad-body',
): z.output<S> {
  let checked: ReturnType<S['safeParse']>;
  try {
    checked = schema.safeParse(value) as ReturnType<S['safeParse']>; // zod types the generic call more loosely
  } catch (error) {
    // Nesting deeper than the stack: nothing that a tablet writes.
    if (error instanceof RangeError) throw new Refused(code, 'nested too deep');
    throw error;
  }
  if (checked.success) return checked.data as z.output<S>;
  const issue = checked.error.issues[0];
  const path = issue ? issue.path.map(String).join('.') : '';
  throw new Refused(code, `${path === '' ? '(document)' : path}: ${issue?.message ?? 'not as expected'}`, {
    path,
  });
}
