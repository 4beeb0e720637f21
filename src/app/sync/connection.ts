// What the rest of the page may ask of the tie to the server.

import type { Result } from '../../../shared/kit/result.ts';
import type { Caller, CallFailure } from './http.ts';

/** The tablet's tie to its server. */
export interface Connection {
  /** Signed calls; null where the tablet is not enrolled or has no key. */
  readonly caller: () => Promise<Caller | null>;
  readonly enrol: (code: string, name: string) => Promise<Result<{ readonly plant: string }, CallFailure>>;
  /** Hands the server PINs that were set on this tablet and did not come to it yet. */
  readonly handPins: () => Promise<void>;
  readonly syncNow: () => void;
  /** A person took note that the server's log went back. */
  readonly tookNote: () => void;
  /** The plant that this tablet was enrolled at; null where it was not. */
  readonly plant: () => Promise<string | null>;
}
