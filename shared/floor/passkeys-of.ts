// Which passkeys are a person's? Apart from what proves by them, which every start reads.

import type { HeldPasskey } from './passkey.ts';

/** The passkeys that a person can sign with on a page of this host. */
export function passkeysOf(
  passkeys: ReadonlyMap<string, HeldPasskey>,
  person: string,
  host: string | null = null,
): readonly HeldPasskey[] {
  return [...passkeys.values()].filter(
    (each) => each.person === person && each.removed === null && (host === null || each.host === host),
  );
}
