// Who signed an entry, as far as anything proves it: a passkey of that person, checked here, or a PIN of which the tablet alone tells.

import { useEffect, useState } from 'preact/hooks';
import { registeredPasskey, type SignedBy } from '../../../../shared/floor/passkey.ts';
import { actorOf } from '../../../../shared/floor/rights.ts';
import { passkeyKinds, signedInKinds } from '../../../../shared/floor/signed-kinds.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import type { Entry } from '../../../../shared/log/entry.ts';
import { passkeysWords } from '../../words/passkeys.ts';
import { say } from '../../words/words.ts';
import { personName } from './names.ts';

interface SignedRowProps {
  readonly entry: Entry;
  readonly floor: FloorState;
}

export function SignedRow({ entry, floor }: SignedRowProps) {
  const words = say(passkeysWords);
  const [signed, setSigned] = useState<SignedBy | null | 'asked'>('asked');
  const use = 'passkey' in entry.payload;
  useEffect(() => {
    if (!use) return;
    let isHere = true;
    import('../../store/passkeys.ts')
      .then(({ signedBy }) => signedBy(entry))
      .then(
        (found) => isHere && setSigned(found),
        () => undefined, // out of reach: it says that it checks still
      );
    return () => {
      isHere = false;
    };
  }, [entry.hash]);
  const by = actorOf(entry);
  if (by === null || !(passkeyKinds as readonly string[]).includes(entry.kind)) return null;
  const asksNoPin =
    entry.payload['how'] === 'badge' || (signedInKinds as readonly string[]).includes(entry.kind);
  if (!use && asksNoPin) return null;
  const told = !use
    ? words.pinOnly
    : signed === 'asked'
      ? words.checking
      : registeredPasskey(floor.passkeys, entry, { person: by, signed })
        ? `✓ ${words.byPasskey(personName(floor, by))}`
        : `✕ ${words.refused}`;
  return (
    <tr data-testid="entry-signed">
      <th>{words.signed}</th>
      <td class="wrap">{told}</td>
    </tr>
  );
}
