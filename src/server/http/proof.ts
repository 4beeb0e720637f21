// Who sent this request? Checked before any route runs: the proof in the header, the tablet it names, its key, the time,
// and that this very proof was not used before.

import type { FastifyRequest } from 'fastify';
import type { Role } from '../../../shared/kit/roles.ts';
import { signatureWindowMs } from '../../../shared/wire/limits.ts';
import { personHeader } from '../../../shared/wire/messages.ts';
import { parseProof, type RequestProof, requestText } from '../../../shared/wire/signing.ts';
import { judgeWire, wireFloor, wireHeader, wireVersion } from '../../../shared/wire/version.ts';
import { hashOf, signatureHolds } from '../keys.ts';
import type { PeopleBook } from '../people/book.ts';
import type { Session, Store, Tablet } from '../stores/store.ts';
import { bodyHash } from './body.ts';
import { passed } from './passed.ts';
import { Refused } from './refuse.ts';

export interface ProofContext {
  readonly store: Store;
  /** What the plant is called. */
  readonly plant: string;
  readonly nowMs: () => number;
  /** Proofs of before are refused: the memory of used ones begins here. */
  readonly proofsFromMs: () => number;
}

/** What asking for a person needs besides. */
export interface RoleContext extends ProofContext {
  readonly people: PeopleBook;
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

/**
 * Checks a request's proof against a key: signature first, so that only the key's holder can use a nonce up. `bodyHash`: told
 * before the body came; else that of the body that is here.
 */
export async function checkProof(
  request: FastifyRequest,
  publicKey: string,
  context: ProofContext & { readonly bodyHash?: string },
): Promise<RequestProof> {
  const proof = readProof(request);
  const text = requestText({
    method: request.method,
    path: request.raw.url ?? '',
    bodyHash: context.bodyHash ?? bodyHash(request),
    timeMs: proof.timeMs,
    nonce: proof.nonce,
  });
  if (!signatureHolds(publicKey, text, proof.sig)) {
    throw new Refused('signature-wrong', 'the signature does not fit this request and this tablet');
  }
  checkTime(request, context);
  const nowMs = context.nowMs();
  const untilMs = proof.timeMs + 2 * signatureWindowMs;
  if (!(await context.store.claimNonce(`${proof.tablet} ${proof.nonce}`, nowMs, untilMs))) {
    throw new Refused('signature-replayed', 'this request was sent before: sign a new one');
  }
  return proof;
}

/** Refuses a proof that was not made just now. */
export function checkTime(request: FastifyRequest, context: Omit<ProofContext, 'store' | 'plant'>): void {
  const { timeMs } = readProof(request);
  const nowMs = context.nowMs();
  if (Math.abs(timeMs - nowMs) <= signatureWindowMs && timeMs >= context.proofsFromMs()) return;
  throw new Refused('time-off', "sign again with the server's time", { offMs: timeMs - nowMs });
}

/** The enrolled tablet that the proof names; nothing is proved yet. */
export async function tabletOf(request: FastifyRequest, context: ProofContext): Promise<Tablet> {
  const tablet = await context.store.findTablet(readProof(request).tablet);
  if (!tablet)
    throw new Refused(
      'tablet-unknown',
      `“${context.plant}” does not know this tablet: enrol it here first, or bring it to the server of its own plant`,
      { plant: context.plant },
    );
  return tablet;
}

/** Refuses a tablet that was shut out. */
export function refuseRevoked(tablet: Tablet): void {
  if (tablet.revokedMs !== null)
    throw new Refused('tablet-revoked', 'this tablet was shut out: a lead can enrol it again');
}

/** The enrolled tablet that sent the request, now that its body is here. */
export async function requireTablet(request: FastifyRequest, context: ProofContext): Promise<Tablet> {
  const found = passed.get(request);
  if (!found) throw new Error(`Cannot answer ${request.url} as the gate must have let it pass: it did not`);
  if (found.bodyHash === null) {
    await checkProof(request, found.tablet.publicKey, context);
    passed.set(request, { ...found, bodyHash: bodyHash(request) });
  } else if (found.bodyHash !== bodyHash(request))
    throw new Refused('signature-wrong', 'the body is another than the one that was signed');
  return found.tablet;
}

/** The person who was checked on this tablet, with PIN, in one of these roles. */
export async function requireRole(
  request: FastifyRequest,
  tablet: Tablet,
  options: { readonly roles: readonly Role[]; readonly context: RoleContext },
): Promise<Session> {
  const header = request.headers[personHeader];
  if (typeof header !== 'string' || header === '')
    throw new Refused('person-unproven', 'badge and PIN are wanted first');
  const { store, nowMs } = options.context;
  const session = await store.findSession(hashOf(header), nowMs());
  if (!session || session.tablet !== tablet.tablet)
    throw new Refused('person-unproven', 'badge and PIN are wanted again');
  // As the log says now: who was removed since, or has another role, is that at once.
  const person = (await options.context.people.people()).get(session.person);
  if (!person) throw new Refused('person-unproven', 'this person is not among the people any more');
  if (!session.pinChecked || !options.roles.some((role) => role === person.role)) {
    throw new Refused('role-lacking', `wanted: ${options.roles.join(' or ')}, with PIN`, {
      role: person.role,
    });
  }
  return session;
}
