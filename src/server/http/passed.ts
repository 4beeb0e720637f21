// What the headers of a request proved, kept beside it until its body is here.

import type { FastifyRequest } from 'fastify';
import type { Tablet } from '../stores/store.ts';

export interface Passed {
  readonly tablet: Tablet;
  /** The body's hash that the signature covers; null while it is not checked, as an older tablet's only can be with its body. */
  readonly bodyHash: string | null;
}

/** Set by the gate, and for an older tablet once more when its body was here. */
export const passed = new WeakMap<FastifyRequest, Passed>();
