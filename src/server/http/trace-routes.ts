// The trace's route: for any tablet of the plant, as the log itself is.

import type { FastifyInstance, FastifyRequest } from 'fastify';
import { type Traced, traceSchema } from '../../../shared/wire/messages.ts';
import type { ServerContext } from '../context.ts';
import { answerPanel, answerPlaces } from '../trace/answer.ts';
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
  const parts = { store: context.store, keeper: context.trace };
  const named = Object.entries(others).filter(([, value]) => value !== undefined);
  if (panel !== undefined) {
    if (named.length > 0) throw new Refused('bad-body', 'panel: goes with run only');
    const answer = await answerPanel(parts, panel, run);
    return { places: [], more: false, ...answer } as Traced; // read only lists are lists on the wire
  }
  if (named.length === 0 && run === undefined)
    throw new Refused('bad-body', 'expected a question, found none');
  const question = { ...Object.fromEntries(named), ...(run === undefined ? {} : { run }) };
  return { panel: null, ...(await answerPlaces(parts, question)) } as Traced;
}
