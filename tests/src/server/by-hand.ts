// Requests signed by hand, for whoever sends them otherwise than the app does.

import { formatProof, requestText } from '../../../shared/wire/signing.ts';
import { newNonce } from '../../../src/app/sync/key.ts';
import { hashOf } from '../../../src/server/keys.ts';
import type { TestTablet } from './tablets.ts';

/** The headers that a tablet signs a request with. `told`: the body's hash as it is told, null where it is not; `body`: empty where none is given. */
export async function signByHand(
  tablet: TestTablet,
  request: {
    readonly path: string;
    readonly method: string;
    readonly told?: string | null;
    readonly body?: Uint8Array;
    readonly wire?: string;
  },
): Promise<Record<string, string>> {
  const { path, method, body = new Uint8Array(), wire = '3' } = request;
  const hash = hashOf(body);
  const { told = hash } = request;
  const [timeMs, nonce] = [Date.now(), newNonce()];
  const sig = await tablet.key.sign(requestText({ method, path, bodyHash: told ?? hash, timeMs, nonce }));
  const authorization = formatProof({ tablet: tablet.name, timeMs, nonce, sig });
  return { 'reelward-wire': wire, authorization, ...(told === null ? {} : { 'reelward-body': told }) };
}
