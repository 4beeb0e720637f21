// Brings the link's log to the server by the wire that tablets speak: enrols once, offers, pushes, waits where it fails, for weeks if need be.

import { isAskedLater, waitAfter } from '../app/sync/backoff.ts';
import { offerHeads, openSyncContext } from '../app/sync/context.ts';
import { enrolTablet } from '../app/sync/enrol.ts';
import { type CallFailure, createCaller } from '../app/sync/http.ts';
import { sayOtherPlant } from '../app/sync/other-plant.ts';
import { noStatus, type SyncWorld } from '../app/sync/ports.ts';
import { pushAll } from '../app/sync/steps-push.ts';
import { LinkRefused } from './config.ts';
import type { LinkIdentity } from './identity.ts';
import type { Spool } from './spool.ts';

/** What pushing needs. */
export interface PushParts {
  readonly spool: Spool;
  readonly identity: LinkIdentity;
  readonly world: SyncWorld;
  readonly code: string | undefined;
  readonly name: string;
  /** A line for people. */
  readonly say: (line: string) => void;
  readonly signal: AbortSignal;
}

/** What only a person can change is asked about again, for a lead may let the link in once more. */
const ASK_AGAIN_MS = 45_000;
/** With nothing to push, the server is asked so often how far it holds the log, ms: it may have lost some. */
const OFFER_AGAIN_MS = 300_000;

const reasons: Readonly<Record<string, string>> = {
  'tablet-revoked':
    'this link was shut out: nothing more goes to the server. What is counted is kept in its folder. Enrol a new link with an empty folder',
  'tablet-unknown':
    'the server does not know this link: it may be another server, or its store was put back. Enrol a new link with an empty folder',
  'other-plant':
    'the server is that of another plant: nothing goes there. Look at the address; a link of that plant begins with an empty folder',
  unreachable: 'the server does not answer; counts are kept and go there when it is back',
};

/** Pushes until the signal is raised. Throws `LinkRefused` where the first start cannot be. */
export async function pushForGood(parts: PushParts): Promise<void> {
  const { spool, identity, world, signal, say } = parts;
  await enrolFirst(parts);
  const memory = await spool.log.readMemory();
  const caller = createCaller(world, identity.key, { clockOffMs: memory.clockOffMs, signal });
  const context = openSyncContext({
    log: spool.log,
    key: identity.key,
    world,
    caller,
    memory,
    status: ({ quarantined }) => {
      if (quarantined !== undefined && quarantined !== noStatus.quarantined)
        say(`the server kept entries aside, see "reelward serve aside": ${quarantined.join(', ')}`);
    },
  });
  let told: string | null = null;
  let hasOffered = false;
  for (let failures = 0; !signal.aborted; ) {
    const waited = spool.backlog();
    const heldBefore = spool.length() - waited;
    const met: CallFailure | null =
      (hasOffered ? null : await offerHeads(context)) ?? (await pushAll(context));
    const readOwn = async () => context.memory.enrolled;
    const failure: CallFailure | null = met && (await sayOtherPlant(met, readOwn, caller));
    if (signal.aborted) return;
    hasOffered = failure === null;
    if (failure === null) {
      if (told !== null) say('the server answers again');
      told = null;
      failures = 0;
      const isStuck = waited > 0 && spool.length() - spool.backlog() === heldBefore;
      const woken = isStuck ? await waitStuck(parts) : await nextWork(parts, OFFER_AGAIN_MS);
      if (!woken) hasOffered = false;
      continue;
    }
    if (told !== failure.code) say(reasons[failure.code] ?? `the server said ${failure.code}`);
    told = failure.code;
    await world.sleep(waitFor(failure, failures, world.chance()), signal);
    failures += 1;
  }
}

function waitFor(failure: CallFailure, failures: number, chance: number): number {
  if (isAskedLater(failure.code)) return ASK_AGAIN_MS;
  return Math.max(failure.retryAfterMs ?? 0, waitAfter(failures, chance));
}

/** The server did not take what waits: asked about again later, as of anew. */
async function waitStuck({ world, signal }: PushParts): Promise<boolean> {
  await world.sleep(ASK_AGAIN_MS, signal);
  return false;
}

/** Waits until something is to be pushed; false where only the time went by. */
async function nextWork({ spool, world, signal }: PushParts, ms: number): Promise<boolean> {
  if (spool.backlog() > 0) return true;
  const woken = new AbortController();
  const wake = () => woken.abort();
  const forget = spool.log.onAppend(wake);
  signal.addEventListener('abort', wake);
  await world.sleep(ms, woken.signal);
  forget();
  signal.removeEventListener('abort', wake);
  return woken.signal.aborted;
}

/** Enrols at the first start; waits for a server that does not answer. */
async function enrolFirst(parts: PushParts): Promise<void> {
  const { spool, identity, world, code, name, say, signal } = parts;
  let told = false;
  for (let failures = 0; !signal.aborted; failures += 1) {
    if ((await spool.log.readMemory()).enrolled) return;
    if (code === undefined)
      throw new LinkRefused(
        'code: expected a one-time code at the first start; "reelward serve enrol" or a lead’s tablet makes one',
      );
    const enrolled = await enrolTablet({ log: spool.log, key: identity.key, world }, { code, name });
    if (enrolled.ok) return;
    if (enrolled.error.code === 'code-wrong')
      throw new LinkRefused(
        'code: refused by the server; it is wrong, was used, or is older than ten minutes. Make a new one',
      );
    if (!told) say(`cannot enrol yet: ${reasons[enrolled.error.code] ?? enrolled.error.code}`);
    told = true;
    await world.sleep(waitAfter(failures, world.chance()), signal);
  }
}
