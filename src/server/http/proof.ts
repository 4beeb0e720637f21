// Who sent this request? Checked before any route runs: the proof in the header, the tablet it names, its key, the time,
// and that this very proof was not used before.

import type { FastifyRequest } from 'fastify';
import { signatureWindowMs } from '../../../shared/wire/limits.ts';
import { personHeader, type Role } from '../../../shared/wire/messages.ts';
import { parseProof, type RequestProof, requestText } from '../../../shared/wire/signing.ts';
import { judgeWire, wireFloor, wireHeader, wireVersion } from '../../../shared/wire/version.ts';
import { hashOf, signatureHolds } from '../keys.ts';
import type { Session, Store, Tablet } from '../stores/store.ts';
import { bodyHash } from './body.ts';
import { Refused } from './refuse.ts';

export interface ProofContext {
  readonly store: Store;
  readonly nowMs: () => number;
  /** Proofs older than the process are refused: its memory of used ones begins here. */
  readonly startedMs: number;
}

/** Refuses a request in words that this server does not speak. */
export function checkWire(request: FastifyRequest): void {
  const header = request.headers[wireHeader];
  const verdict = judgeWire(typeof header === 'string' ? header : undefined);
  if (verdict === 'spoken') return;
  throw new Refused(
    `wire-${verdict}`,
    `this server speaks ${wireFloor} to ${wireVersion} (header ${wireHeader})`,
    {
      floor: wireFloor,
      version: wireVersion,
    },
  );
}

function readProof(request: FastifyRequest): RequestProof {
  const header = request.headers.authorization;
  if (header === undefined) throw new Refused('signature-missing', 'sign the request');
  const proof = parseProof(header);
  if (!proof) throw new Refused('signature-wrong', 'the authorization header is not as expected');
  return proof;
}

/** Checks a request's proof against a key: signature first, so that only the key's holder can use a nonce up. */
export async function checkProof(
  request: FastifyRequest,
  publicKey: string,
  context: ProofContext,
): Promise<RequestProof> {
  const proof = readProof(request);
  const text = requestText({
    method: request.method,
    path: request.raw.url ?? '',
    bodyHash: bodyHash(request),
    timeMs: proof.timeMs,
    nonce: proof.nonce,
  });
  if (!signatureHolds(publicKey, text, proof.sig)) {
    throw new Refused('signature-wrong', 'the signature does not fit this request and this tablet');
  }
  const nowMs = context.nowMs();
  if (Math.abs(proof.timeMs - nowMs) > signatureWindowMs || proof.timeMs < context.startedMs) {
    throw new Refused('time-off', "sign again with the server's time", { offMs: proof.timeMs - nowMs });
  }
  const untilMs = proof.timeMs + 2 * signatureWindowMs;
  if (!(await context.store.claimNonce(`${proof.tablet} ${proof.nonce}`, nowMs, untilMs))) {
    throw new Refused('signature-replayed', 'this request was sent before: sign a new one');
  }
  return proof;
}

/** The enrolled tablet that sent the request. */
export async function requireTablet(request: FastifyRequest, context: ProofContext): Promise<Tablet> {
  const proof = readProof(request);
  const tablet = await context.store.findTablet(proof.tablet);
  if (!tablet) throw new Refused('tablet-unknown', 'enrol this tablet first');
  await checkProof(request, tablet.publicKey, context);
  if (tablet.revokedMs !== null)
    throw new Refused('tablet-revoked', 'this tablet was shut out: a lead can enrol it again');
  return tablet;
}

/** The person who was checked on this tablet, with PIN, in one of these roles. */
export async function requireRole(
  request: FastifyRequest,
  tablet: Tablet,
  options: { readonly roles: readonly Role[]; readonly context: ProofContext },
): Promise<Session> {
  const header = request.headers[personHeader];
  if (typeof header !== 'string' || header === '')
    throw new Refused('person-unproven', 'badge and PIN are wanted first');
  const { store, nowMs } = options.context;
  const session = await store.findSession(hashOf(header), nowMs());
  if (!session || session.tablet !== tablet.tablet)
    throw new Refused('person-unproven', 'badge and PIN are wanted again');
  if (!session.pinChecked || !options.roles.some((role) => role === session.role)) {
    throw new Refused('role-lacking', `wanted: ${options.roles.join(' or ')}, with PIN`, {
      role: session.role,
    });
  }
  return session;
}
