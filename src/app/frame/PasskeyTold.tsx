import { peopleWords } from '../words/people.ts';
import { say } from '../words/words.ts';
import type { Sure } from './confirmed.ts';
import { notSigned } from './signed.ts';

/** Where a passkey stands for the PIN: that it is asked for next, or that it did not sign. */
export function PasskeyTold({ sure }: { readonly sure: Sure | null }) {
  const words = say(peopleWords);
  if (!sure?.byPasskey) return null;
  if (notSigned.value !== sure) return <p class="soft">{words.passkeyAsks}</p>;
  return (
    <p class="chip stop" role="alert">
      ✕ {words.passkeyFailed}
    </p>
  );
}
