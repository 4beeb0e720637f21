// Tablets and people: enrolment by one-time code, who stands there, codes and revocation by a lead, export tickets.

import type { FastifyInstance, FastifyRequest } from 'fastify';
import { serverChain } from '../../../shared/log/server-chain.ts';
import {
  type CodeMade,
  checkSchema,
  codeRequestSchema,
  type Enrolled,
  type ExportMade,
  enrolSchema,
  exportSchema,
  type PersonCheck,
  type PersonChecked,
  type PinsKept,
  pinsHandedSchema,
  revokeSchema,
  type Tablets,
} from '../../../shared/wire/messages.ts';
import { ticketsSince, wireHeader } from '../../../shared/wire/version.ts';
import { type CodeDetail, makeCode, makeTicket, readCode } from '../codes.ts';
import type { ServerContext } from '../context.ts';
import { hashOf, randomToken } from '../keys.ts';
import type { KnownPerson } from '../people/known.ts';
import { checkPerson, takePins } from '../people/pin.ts';
import type { Tablet } from '../stores/store.ts';
import { readAs } from './body.ts';
import { checkProof, checkWire, requireRole, requireTablet } from './proof.ts';
import { perMinute, perTablet } from './rates.ts';
import { Refused } from './refuse.ts';

/** How long a checked person may act on a tablet without being checked again. Common practice: a quarter of an hour. */
const SESSION_MS = 15 * 60_000;

/** Tries by one address in a minute, as nobody is known yet. */
const ENROL_TRIES = 30;
/** Anybody may send this one. */
const ENROL_BYTES = 4 * 1024;
/** Tries by one tablet in a minute where guessing would pay. PINs have their own lock, by person. */
const BADGE_TRIES = 120;
/** Each PIN in one takes the server's memory for a while. */
const PIN_PAGES = 30;

/** Adds the routes. Who lets a tablet in, shuts one out or takes the log away is told at the level that a server logs by itself. */
export function addPeopleRoutes(app: FastifyInstance, context: ServerContext): void {
  app.post('/api/enrol', { ...perMinute(ENROL_TRIES), bodyLimit: ENROL_BYTES }, (request) =>
    enrol(request, context),
  );
  app.post('/api/people/check', perTablet(BADGE_TRIES), (request) => check(request, context));
  app.post('/api/people/pins', perTablet(PIN_PAGES), (request) => handPins(request, context));
  app.post('/api/codes', (request) => newCode(request, context));
  app.get('/api/tablets', (request) => listTablets(request, context));
  app.post('/api/tablets/revoke', (request) => revoke(request, context));
  app.post('/api/export', (request) => makeExport(request, context));
}

async function enrol(request: FastifyRequest, context: ServerContext): Promise<Enrolled> {
  checkWire(request);
  const { code, tablet, publicKey, name, fresh = false } = readAs(enrolSchema, request.body);
  // Signed by the key that it brings: nobody can enrol a key that is not theirs, nor copy the request.
  const proof = await checkProof(request, publicKey, context);
  if (proof.tablet !== tablet) throw new Refused('signature-wrong', 'the proof names another tablet');
  if (tablet === serverChain)
    throw new Refused('tablet-active', 'this name is the server’s own: join under another', { name: tablet });
  const { store, serverEpoch } = context;
  const hash = hashOf(readCode(code));
  const screen = await store.holdsOneTime(hash, 'enrol-screen', context.nowMs());
  // What it wrote would never come in, and what came in could not be checked any more; an older app does not say, and would go on writing.
  if (screen && !(fresh && (await mayBeScreen(tablet, store))))
    throw new Refused('code-wrong', 'a wall screen must have written nothing yet', { screen: true });
  const taken = await store.takeOneTime(hash, screen ? 'enrol-screen' : 'enrol', context.nowMs());
  if (!taken)
    throw new Refused('code-wrong', 'the code is unknown, used or over ten minutes old: ask for a new one');
  const { replaces, by } = JSON.parse(taken.detail) as CodeDetail; // written by makeCode
  const known = await store.findTablet(tablet);
  if (known?.revokedMs === null && known.publicKey !== publicKey && replaces !== tablet) {
    throw new Refused(
      'tablet-active',
      'a tablet of this name is active: a lead names it when making the code',
      {
        name: known.name,
      },
    );
  }
  const asked = by ?? { person: null, account: null };
  // Before the door is opened: nobody is let in without a trace.
  await context.own.tell({ kind: 'tablet.let-in', payload: { tablet, name, ...asked } });
  await store.enrolTablet({ tablet, publicKey, name, screen }, context.nowMs());
  request.log.warn({ act: 'enrolled', tablet, name, screen, ip: request.ip }, 'tablet enrolled');
  return {
    tablet,
    plant: context.plant,
    serverEpoch,
    serverMs: context.nowMs(),
    serverKey: context.key.publicKey,
    screen,
  };
}

/** True for a name that no tablet had: of one that wrote, every key stays in the plant's list. */
async function mayBeScreen(tablet: string, store: ServerContext['store']): Promise<boolean> {
  const known = await store.findTablet(tablet);
  if (known?.screen === false) return false;
  return !(await store.heads()).some((head) => head.tablet === tablet);
}

async function check(request: FastifyRequest, context: ServerContext): Promise<PersonChecked> {
  checkWire(request);
  const tablet = await requireTablet(request, context);
  const asked = readAs(checkSchema, request.body);
  const { store } = context;
  const nowMs = context.nowMs();
  const at = { store, nowMs, tablet: tablet.tablet, pinSeal: context.pinSeal };
  const { person, pinChecked } = await checkPerson(asked, await context.people.people(), at);
  const token = randomToken();
  const untilMs = nowMs + SESSION_MS;
  await store.addSession({
    hash: hashOf(token),
    tablet: tablet.tablet,
    person: person.person,
    role: person.role,
    pinChecked,
    untilMs,
  });
  const ticket =
    pinChecked && speaksTickets(request) ? await giveTicket(person, tablet, asked, context) : null;
  const checked = { person: person.person, name: person.name, role: person.role, pinChecked, token, untilMs };
  return ticket === null ? checked : { ...checked, ticket };
}

async function handPins(request: FastifyRequest, context: ServerContext): Promise<PinsKept> {
  checkWire(request);
  const { tablet } = await requireTablet(request, context);
  const { pins } = readAs(pinsHandedSchema, request.body);
  return { serverEpoch: context.serverEpoch, kept: [...(await takePins(pins, tablet, context))] };
}

/** An older app would not write a ticket down, and the plant's first one would be given for nothing. */
function speaksTickets(request: FastifyRequest): boolean {
  return Number(request.headers[wireHeader]) >= ticketsSince;
}

function giveTicket(
  person: KnownPerson,
  { tablet, publicKey }: Tablet,
  { stays = false }: PersonCheck,
  context: ServerContext,
): Promise<string | null> {
  return context.tickets.give(person, { tablet, publicKey }, { nowMs: context.nowMs(), stays });
}

async function newCode(request: FastifyRequest, context: ServerContext): Promise<CodeMade> {
  checkWire(request);
  const tablet = await requireTablet(request, context);
  const session = await requireRole(request, tablet, { roles: ['lead', 'engineer'], context });
  const use = readAs(codeRequestSchema, request.body ?? {});
  request.log.warn(
    { act: 'code', tablet: tablet.tablet, person: session.person, ...use },
    'enrolment code made',
  );
  return makeCode(context.store, context.nowMs(), use, { person: session.person, account: null });
}

async function listTablets(request: FastifyRequest, context: ServerContext): Promise<Tablets> {
  checkWire(request);
  const tablet = await requireTablet(request, context);
  await requireRole(request, tablet, { roles: ['lead', 'engineer'], context });
  await context.seen.write();
  const tablets = await context.store.listTablets();
  return { tablets: tablets.map(({ publicKey: _, ...shown }) => shown) };
}

async function revoke(
  request: FastifyRequest,
  context: ServerContext,
): Promise<{ readonly revoked: boolean }> {
  checkWire(request);
  const tablet = await requireTablet(request, context);
  const session = await requireRole(request, tablet, { roles: ['lead', 'engineer'], context });
  const asked = readAs(revokeSchema, request.body);
  const by = { person: session.person, account: null };
  const known = await context.store.findTablet(asked.tablet);
  // First, as what fails here is asked for again: shut out already, it would be told nowhere.
  if (known?.revokedMs === null)
    await context.own.tell({ kind: 'tablet.shut-out', payload: { tablet: asked.tablet, ...by } });
  const revoked = await context.store.revokeTablet(asked.tablet, context.nowMs());
  await context.store.tell({ kind: 'revoked', tablet: asked.tablet });
  request.log.warn({ act: 'revoked', tablet: asked.tablet, person: session.person }, 'tablet revoked');
  return { revoked };
}

async function makeExport(request: FastifyRequest, context: ServerContext): Promise<ExportMade> {
  checkWire(request);
  const tablet = await requireTablet(request, context);
  const session = await requireRole(request, tablet, { roles: ['lead', 'engineer'], context });
  const asked = readAs(exportSchema, request.body);
  request.log.warn(
    { act: 'export', tablet: tablet.tablet, person: session.person, ...asked },
    'export asked for',
  );
  const { format, ...filter } = asked;
  // Before the link is given: nobody takes the log away without a trace.
  await context.own.tell({
    kind: 'log.fetched',
    payload: { format, filter: JSON.stringify(filter), tablet: tablet.tablet, person: session.person },
  });
  return makeTicket(context.store, asked, context.nowMs());
}
