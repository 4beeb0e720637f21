// The version speaks for the messages: whoever changes a message meets this test.

import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import type { Json } from '../../../shared/log/entry.ts';
import { canonicalText, hashText } from '../../../shared/log/seal.ts';
import { wireMessages } from '../../../shared/wire/messages.ts';
import { judgeWire, wireFloor, wireHistory, wireVersion } from '../../../shared/wire/version.ts';

/** Hash of all messages' JSON schemas, by version. A change that readers must know of needs a new version and a line here. */
const hashes: Readonly<Record<number, string>> = {
  1: 'c38b17668f7c0de51328dc585f0c66dc4b46e93bf5a61af85c7d8d03c3b89d60',
  2: 'bef1f71874fb36c836f94e0217510927e09bb4403be4b3213883d48a2171d330',
  3: '243ed66fd7856a78e9516bcdff36f044472eb8fbd7217c3786394f8bf00765d2',
  4: 'b27e6dfdffbce4dcd6e646cdedda3ba53e1506746b13b930d2c5c91b8e447058',
  5: 'a12f2907b850f12f2e2e80305d6c65c4f7eb933296559bfb5a7c40cee51fed74',
  6: 'da4e8c6c94a4ca463478efa50bbb68735fa63127ec053d6d1c234d2386f41c02',
  7: 'b98d1044a54ce7ac0c0b08d63013089797ba17599d6ff6fa4ecdc3f5f413b0f1',
  8: 'e621e51fa65bdc277bc9f38d7601ad5e3eee870e17275b88dda4ab26aab27b25',
  9: 'ddef6e0d7abc005444a0ab8d0e8b55f01cf35ce28fb97debd6d9c110260ea7cf',
  10: '9fc06968d0d4b1cd6d77dc11c8650cf1d6aa4b3d2d606201cca3f3e4564a65dc',
};

function messagesHash(): string {
  const schemas = Object.fromEntries(
    Object.entries(wireMessages).map(([name, schema]) => [
      name,
      z.toJSONSchema(schema, { unrepresentable: 'any' }),
    ]),
  );
  return hashText(canonicalText(JSON.parse(JSON.stringify(schemas)) as Json));
}

describe('the version of the wire', () => {
  it('is bumped when a message changes', () => {
    expect(messagesHash(), 'a message has changed: add a version to the history, then its hash here').toBe(
      hashes[wireVersion],
    );
  });

  it('has a history without a gap, up to today', () => {
    expect(wireHistory.map((step) => step.version)).toEqual(
      Array.from({ length: wireVersion }, (_, at) => at + 1),
    );
    for (const step of wireHistory) expect(step.change.length).toBeGreaterThan(10);
    expect(wireFloor).toBeGreaterThanOrEqual(1);
    expect(wireFloor).toBeLessThanOrEqual(wireVersion);
  });

  it.each([
    [String(wireVersion), 'spoken'],
    [String(wireVersion + 1), 'too-new'],
    ['999999', 'too-new'],
    ['0', 'unreadable'],
    ['01', 'unreadable'],
    ['1.0', 'unreadable'],
    ['-1', 'unreadable'],
    ['', 'unreadable'],
    [undefined, 'unreadable'],
    ['1 or 1=1', 'unreadable'],
  ])('`judgeWire(%j)` is %s', (text, verdict) => {
    expect(judgeWire(text)).toBe(verdict);
  });
});
