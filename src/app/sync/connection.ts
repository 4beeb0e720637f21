// What the rest of the page may ask of the tie to the server.

import type { Result } from '../../../shared/kit/result.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import type { JoinedPlant } from './enrol.ts';
import type { Caller, CallFailure } from './http.ts';
import type { KeptRecord } from './ports.ts';
import type { BroughtHead } from './witness.ts';

/** The tablet's tie to its server. */
export interface Connection {
  /** Signed calls; null where the tablet is not enrolled or has no key. */
  readonly caller: () => Promise<Caller | null>;
  readonly enrol: (code: string, name: string) => Promise<Result<JoinedPlant, CallFailure>>;
  /** Hands the server PINs that were set on this tablet and did not come to it yet. */
  readonly handPins: () => Promise<void>;
  readonly syncNow: () => void;
  /** A person took note that the server's log went back. */
  readonly tookNote: () => void;
  /**
   * Where an entry lies in the server's log, with its proof, checked; `not-there` where the server does not hold it yet, null where there is
   * no answer, or none that proves it.
   */
  readonly recordOf: (entry: Entry) => Promise<KeptRecord | 'not-there' | null>;
  /** Checks a head of the server's log that somebody else was shown, a signed note. */
  readonly bring: (note: string) => Promise<BroughtHead>;
  /** The plant that this tablet was enrolled at; null where it was not. */
  readonly plant: () => Promise<string | null>;
}
