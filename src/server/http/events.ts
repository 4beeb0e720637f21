// What whoever looks after the server wants to see at once: refused proofs, wrong PINs and codes, tries of tablets that were shut
// out, connections closed as they came. One line each under a code of its own, so many a minute at most: whoever fills the log with them hides the rest.

import type { FastifyBaseLogger, FastifyRequest } from 'fastify';
import type { WireCode } from '../../../shared/wire/codes.ts';
import { parseProof } from '../../../shared/wire/signing.ts';

/** Refusals that are about who asks. What is about how it is asked is counted only. */
const codes: ReadonlySet<WireCode> = new Set<WireCode>([
  'signature-missing',
  'signature-wrong',
  'signature-replayed',
  'tablet-unknown',
  'tablet-revoked',
  'tablet-active',
  'person-unproven',
  'person-locked',
  'pin-wrong',
  'role-lacking',
  'code-wrong',
  'too-often',
]);

const LINES_A_MINUTE = 60;
/** Of connections, in lines of their own: there are thousands at once, and the first says it. */
const DROPS_A_MINUTE = 6;
const MINUTE_MS = 60_000;

/** Why a connection was closed as it came: all are taken, or all that one address may have. */
export type DropCode = 'connections-full' | 'connections-of-address';

export interface SecurityEvents {
  readonly refused: (request: FastifyRequest, code: WireCode) => void;
  readonly dropped: (log: FastifyBaseLogger, code: DropCode, ip: string | undefined) => void;
}

/** Counts its lines by the server's clock. */
export function createSecurityEvents(nowMs: () => number): SecurityEvents {
  const refusals = createLines(nowMs, LINES_A_MINUTE, 'more refusals in that minute');
  const drops = createLines(nowMs, DROPS_A_MINUTE, 'more connections closed in that minute');
  return {
    refused: (request, code) => {
      if (!codes.has(code) || !refusals(request.log)) return;
      // Who it says it is: nothing is proved where the proof was refused.
      const claims = parseProof(request.headers.authorization ?? '')?.tablet ?? null;
      const { method, ip } = request;
      request.log.warn(
        { security: code, claims, ip, method, route: request.routeOptions.url ?? null },
        'refused',
      );
    },
    dropped: (log, code, ip) => {
      if (drops(log)) log.warn({ security: code, ip: ip ?? null }, 'connection closed as it came');
    },
  };
}

/** Counts lines by the minute: true where one more may be written. How many were not is told with the first line of a later minute, in these words. */
function createLines(nowMs: () => number, most: number, words: string): (log: FastifyBaseLogger) => boolean {
  let beginMs = Number.NEGATIVE_INFINITY;
  let lines = 0;
  return (log) => {
    if (Math.abs(nowMs() - beginMs) >= MINUTE_MS) {
      if (lines > most) log.warn({ security: 'more', count: lines - most }, words);
      beginMs = nowMs();
      lines = 0;
    }
    lines += 1;
    return lines <= most;
  };
}
