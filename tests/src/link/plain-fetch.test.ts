// Asking the server over Node's own HTTP: packed and plain answers, sent on, cut off, aborted, and a kept connection that is gone.

import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { gunzipSync, gzipSync } from 'node:zlib';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type Asked, plainFetch, plainGzip } from '../../../src/link/plain-fetch.ts';

let server: Server;
let origin = '';
let answer: (request: IncomingMessage, response: ServerResponse, body: string) => void;
let heard: { readonly method: string; readonly url: string; readonly body: string; readonly port: number }[] =
  [];

beforeEach(async () => {
  heard = [];
  server = createServer((request, response) => {
    const chunks: Buffer[] = [];
    request.on('data', (chunk: Buffer) => chunks.push(chunk));
    request.on('end', () => {
      const body = Buffer.concat(chunks).toString();
      const { method = '', url = '' } = request;
      heard.push({ method, url, body, port: request.socket.remotePort ?? 0 });
      answer(request, response, body);
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
});
afterEach(() => {
  server.closeAllConnections();
  server.close();
});

const ask = (path: string, change: Partial<Asked> = {}) =>
  plainFetch(origin + path, {
    method: 'POST',
    headers: { 'x-own': 'here' },
    body: Buffer.from('{"a":1}'),
    signal: new AbortController().signal,
    ...change,
  });

describe('an answer', () => {
  test('is read with its status and headers, plain or packed', async () => {
    answer = (request, response) => {
      expect([request.headers['x-own'], request.headers['accept-encoding']]).toEqual(['here', 'gzip']);
      const bytes = Buffer.from('{"held":"ä"}');
      if (request.url === '/packed')
        response.writeHead(200, { 'content-encoding': 'gzip' }).end(gzipSync(bytes));
      else response.writeHead(429, { 'Retry-After': '7' }).end(bytes);
    };
    const packed = await ask('/packed');
    expect([packed.ok, packed.status, await packed.json()]).toEqual([true, 200, { held: 'ä' }]);
    const plain = await ask('/plain');
    expect([plain.ok, plain.status, await plain.json()]).toEqual([false, 429, { held: 'ä' }]);
    expect([plain.headers.get('retry-after'), plain.headers.get('nowhere')]).toEqual(['7', null]);
    expect(heard.map(({ body }) => body)).toEqual(['{"a":1}', '{"a":1}']);
  });

  test('that sends on is followed with the same question, and not for ever', async () => {
    answer = (request, response) => {
      const rounds = Number(new URL(request.url ?? '', origin).searchParams.get('left'));
      if (rounds > 0) response.writeHead(308, { location: `/x?left=${rounds - 1}` }).end();
      else response.end('{}');
    };
    expect((await ask('/x?left=2')).status).toBe(200);
    expect(heard.map(({ method, body }) => [method, body])).toEqual(Array(3).fill(['POST', '{"a":1}']));
    expect((await ask('/x?left=9')).status).toBe(308);
  });

  test('that is cut off, no JSON or aborted is none', async () => {
    answer = (request, response) => {
      if (request.url === '/cut') {
        response.writeHead(200, { 'content-length': '100' });
        response.write('{"a":');
        response.destroy();
      } else if (request.url === '/text') response.end('<html>');
      // Anything else is never answered.
    };
    await expect(ask('/cut')).rejects.toThrow();
    const text = await ask('/text');
    await expect(text.json()).rejects.toThrow(SyntaxError);
    const ending = new AbortController();
    const waiting = ask('/never', { signal: ending.signal });
    ending.abort();
    await expect(waiting).rejects.toThrow(/abort/i);
  });

  test('comes over a new connection where the server had let go of the kept one', async () => {
    answer = (_, response) => {
      response.end('{}');
    };
    await ask('/first');
    // The second request finds the connection and loses it before an answer.
    const [first] = heard;
    answer = (request, response) => {
      if (request.socket.remotePort === first?.port) request.socket.resetAndDestroy();
      else response.end('{"again":true}');
    };
    expect(await (await ask('/second')).json()).toEqual({ again: true });
    expect(heard.map(({ url }) => url)).toEqual(['/first', '/second', '/second']);
  });
});

test('`plainGzip()` packs what gunzip reads', async () => {
  const bytes = Buffer.from('a count '.repeat(500));
  const packed = await plainGzip(bytes);
  expect(packed.length).toBeLessThan(bytes.length / 10);
  expect(gunzipSync(packed).equals(bytes)).toBe(true);
});
