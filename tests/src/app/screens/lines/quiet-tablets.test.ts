// Which tablets are told as not heard of: those in use, and never the server, which writes beside them.

import { expect, it } from 'vitest';
import { serverChain } from '../../../../../shared/log/server-chain.ts';
import { quietTablets } from '../../../../../src/app/screens/lines/quiet-tablets.ts';

it('tells tablets that fell silent, and neither this one, nor one put away, nor the server', () => {
  const names = ['here', 'silent', 'busy', 'away', 'never', serverChain];
  const tablets = new Map(
    names.map((tablet) => [tablet, { tablet, name: `Name of ${tablet}`, app: '1', epochs: [] }]),
  );
  const nowMs = 100 * 3_600_000;
  const hourAgo = nowMs - 3_600_000;
  const heard = new Map([
    ['here', hourAgo],
    ['silent', hourAgo],
    ['busy', nowMs - 60_000],
    ['away', nowMs - 13 * 3_600_000],
    [serverChain, hourAgo],
  ]);
  expect(quietTablets({ tablets }, heard, { nowMs, own: 'here' })).toEqual([
    { tablet: 'silent', name: 'Name of silent', agoMs: 3_600_000 },
  ]);
});
