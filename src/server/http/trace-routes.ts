// The trace's route: for any tablet of the plant, as the log itself is.

import type { FastifyInstance, FastifyRequest } from 'fastify';
import { type Traced, traceSchema } from '../../../shared/wire/messages-trace.ts';
import type { ServerContext } from '../context.ts';
import { TraceAway } from '../trace/remote.ts';
import { readAs } from './body.ts';
import { checkWire, requireTablet } from './proof.ts';
import { Refused } from './refuse.ts';

/** Adds the route. */
export function addTraceRoutes(app: FastifyInstance, context: ServerContext): void {
  app.post('/api/trace', (request) => trace(request, context));
}

async function trace(request: FastifyRequest, context: ServerContext): Promise<Traced> {
  checkWire(request);
  await requireTablet(request, context);
  const { panel, run, ...others } = readAs(traceSchema, request.body);
  const named = Object.entries(others).filter(([, value]) => value !== undefined);
  if (panel !== undefined) {
    if (named.length > 0) throw new Refused('bad-body', 'panel: goes with run only');
    const answer = await asked(context.trace.panel(panel, run));
    return { places: [], more: false, ...answer } as Traced; // read only lists are lists on the wire
  }
  if (named.length === 0 && run === undefined)
    throw new Refused('bad-body', 'expected a question, found none');
  const question = { ...Object.fromEntries(named), ...(run === undefined ? {} : { run }) };
  return { panel: null, ...(await asked(context.trace.places(question))) } as Traced;
}

async function asked<T>(answer: Promise<T>): Promise<T> {
  try {
    return await answer;
  } catch (error) {
    if (error instanceof TraceAway) throw new Refused('store-away', error.message);
    throw error;
  }
}
