// Server-sent events, however the network cuts them. Source of the format: WHATWG HTML, "Server-sent events".

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readEvents } from '../../../../src/app/sync/events.ts';

/** The events of a text that arrives in pieces of these lengths. */
async function read(text: string, lengths: readonly number[]): Promise<string[]> {
  const bytes = new TextEncoder().encode(text);
  const body = new ReadableStream<Uint8Array>({
    start: (controller) => {
      let at = 0;
      for (let piece = 0; at < bytes.length; piece += 1) {
        const length = Math.max(1, lengths[piece % Math.max(1, lengths.length)] ?? bytes.length);
        controller.enqueue(bytes.slice(at, at + length));
        at += length;
      }
      controller.close();
    },
  });
  const events: string[] = [];
  for await (const event of readEvents(body)) if (event !== '') events.push(event);
  return events;
}

describe('`readEvents()`', () => {
  it.each([
    ['one event', 'data: a\n\n', ['a']],
    ['data without a blank', 'data:a\n\n', ['a']],
    ['two lines of data', 'data: a\ndata: b\n\n', ['a\nb']],
    ['comments and other fields', ': beat\n\nretry: 10\nevent: x\nid: 1\ndata: a\n\n', ['a']],
    ['line ends of every kind', 'data: a\r\n\r\ndata: b\r\rdata: c\n\n', ['a', 'b', 'c']],
    ['an event that is not finished', 'data: a\n\ndata: b\n', ['a']],
  ])('reads %s', async (_, text, events) => {
    expect(await read(text, [])).toEqual(events);
  });

  it('reads the same whatever the pieces, also cut within a character', async () => {
    const texts = fc.array(
      fc.string({ unit: 'grapheme' }).map((text) => text.replace(/[\r\n]/g, '')),
      { maxLength: 6 },
    );
    await fc.assert(
      fc.asyncProperty(texts, fc.array(fc.integer({ min: 1, max: 9 })), async (events, lengths) => {
        const kept = events.filter((event) => event !== '');
        const text = kept.map((event) => `data: ${event}\n\n`).join('');
        expect(await read(text, lengths)).toEqual(kept);
      }),
    );
  });
});
