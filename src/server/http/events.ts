// What whoever looks after the server wants to see at once: refused proofs, wrong PINs and codes, tries of tablets that were shut
// out. One line each under a code of its own, so many a minute at most: whoever fills the log with them hides the rest.

import type { FastifyRequest } from 'fastify';
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
const MINUTE_MS = 60_000;

export interface SecurityEvents {
  readonly refused: (request: FastifyRequest, code: WireCode) => void;
}

/** Counts its lines by the server's clock. */
export function createSecurityEvents(nowMs: () => number): SecurityEvents {
  let beginMs = Number.NEGATIVE_INFINITY;
  let lines = 0;
  return {
    refused: (request, code) => {
      if (!codes.has(code)) return;
      if (Math.abs(nowMs() - beginMs) >= MINUTE_MS) {
        if (lines > LINES_A_MINUTE)
          request.log.warn(
            { security: 'more', count: lines - LINES_A_MINUTE },
            'more refusals in that minute',
          );
        beginMs = nowMs();
        lines = 0;
      }
      lines += 1;
      if (lines > LINES_A_MINUTE) return;
      // Who it says it is: nothing is proved where the proof was refused.
      const claims = parseProof(request.headers.authorization ?? '')?.tablet ?? null;
      const { method, ip } = request;
      request.log.warn(
        { security: code, claims, ip, method, route: request.routeOptions.url ?? null },
        'refused',
      );
    },
  };
}
