// What the headers of a request proved, kept beside it until its body is here.

import type { FastifyRequest } from 'fastify';
import type { Tablet } from '../stores/store.ts';

export interface Passed {
  readonly tablet: Tablet;
  /** The body's hash that the signature covers; null where it can only be checked afterwards. */
  readonly bodyHash: string | null;
}

/** Set by the gate alone. */
export const passed = new WeakMap<FastifyRequest, Passed>();
