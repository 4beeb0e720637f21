// Messages cut out of a stream that the network has cut and joined as it liked, and out of everything else that can come on a port.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { MESSAGE_MOST, openFramer } from '../../../../src/link/hermes/framing.ts';
import { departed, guid, hermes } from './machine.ts';

const texts = (frames: ReturnType<ReturnType<typeof openFramer>['push']>) =>
  frames.flatMap((frame) => (frame.is === 'message' ? [frame.bytes.toString('utf8')] : []));
const whys = (frames: ReturnType<ReturnType<typeof openFramer>['push']>) =>
  frames.flatMap((frame) => (frame.is === 'message' ? [] : [[frame.why, frame.bytes] as const]));

function read(...chunks: (string | Uint8Array)[]) {
  const framer = openFramer();
  const frames = chunks.flatMap((chunk) => [...framer.push(Buffer.from(chunk as string))]);
  return [...frames, ...framer.end()];
}

const three = [1, 2, 3].map((at) => hermes(departed({ BoardId: guid(at), TopBarcode: `ß < & " ${at}` })));

describe('messages in a stream', () => {
  test('are the same, however the stream is split: at every byte, byte by byte, or not at all', () => {
    const stream = Buffer.from(three.join('\r\n'));
    for (let at = 0; at <= stream.length; at += 1) {
      const frames = read(stream.subarray(0, at), stream.subarray(at));
      expect(texts(frames)).toEqual(three);
      expect(whys(frames)).toEqual([]);
    }
    expect(texts(read(...[...stream].map((byte) => Uint8Array.of(byte))))).toEqual(three);
  });

  test('are found again behind whatever stood between them, which is told', () => {
    const bytes = fc
      .uint8Array({ maxLength: 40 })
      .map((noise) => Buffer.from(noise).filter((byte) => byte !== 60));
    fc.assert(
      fc.property(fc.array(bytes, { minLength: 4, maxLength: 4 }), fc.nat(500), (noise, cut) => {
        const parts = noise.flatMap((each, at) => [Buffer.from(each), Buffer.from(three[at] ?? '')]);
        const stream = Buffer.concat(parts);
        const frames = read(stream.subarray(0, cut), stream.subarray(cut));
        expect(texts(frames)).toEqual(three);
        const told = whys(frames).reduce((sum, [, count]) => sum + count, 0);
        const plain = noise.filter((each) => Buffer.from(each).toString('utf8').trim() === '');
        const quiet = plain.reduce((sum, each) => sum + each.length, 0);
        const all = noise.reduce((sum, each) => sum + each.length, 0);
        expect(told).toBeLessThanOrEqual(all);
        expect(told).toBeGreaterThanOrEqual(all - quiet - 40);
      }),
    );
  });

  test('may stand behind an XML declaration, a byte order mark and blanks', () => {
    const frames = read(`\uFEFF<?xml version="1.0" encoding="UTF-8"?>\n${three[0]}\n  ${three[1]} `);
    expect(texts(frames)).toEqual(three.slice(0, 2));
    expect(whys(frames)).toEqual([]);
  });

  test('a half message ends where another begins, and at the end of the connection', () => {
    const half = (three[0] ?? '').slice(0, 60);
    expect(read(half, three[1] ?? '')).toMatchObject([
      { is: 'passed-over', why: 'half a message, and then another', bytes: 60 },
      { is: 'message' },
    ]);
    expect(whys(read(half))).toEqual([['a message was cut off by the end of the connection', 60]]);
  });

  test('one that is too long costs itself alone, and memory stays bounded', () => {
    const long = hermes(departed({ TopBarcode: 'x'.repeat(MESSAGE_MOST) }));
    const frames = read(long, three[0] ?? '');
    expect(texts(frames)).toEqual([three[0]]);
    expect(whys(frames)[0]).toEqual([`a message of more than ${MESSAGE_MOST} bytes`, MESSAGE_MOST]);
    const just = hermes(element64());
    expect(just.length).toBe(MESSAGE_MOST);
    expect(texts(read(just))).toEqual([just]);
  });

  test('other encodings and names that only begin alike are no messages', () => {
    expect(texts(read(Buffer.from(three[0] ?? '', 'utf16le')))).toEqual([]);
    expect(whys(read(Buffer.from(three[0] ?? '', 'utf16le')))).toHaveLength(1);
    expect(texts(read('<HermesX></HermesX>', three[0] ?? ''))).toEqual([three[0]]);
    expect(texts(read('<Hermes></HermesX></Hermes >'))).toEqual(['<Hermes></HermesX></Hermes >']);
  });

  test('noise without end is told now and then, and a message behind it is found', () => {
    const frames = read(Buffer.alloc(3 * MESSAGE_MOST, 'z'), three[0] ?? '');
    expect(texts(frames)).toEqual([three[0]]);
    expect(whys(frames).reduce((sum, [, count]) => sum + count, 0)).toBe(3 * MESSAGE_MOST);
  });
});

/** Exactly as long as a message may be. */
function element64(): string {
  const rest = MESSAGE_MOST - hermes('<A B="" />').length;
  return `<A B="${'x'.repeat(rest)}" />`;
}
