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

/** Who asks, under a name that no other has: the tablet that is proved, else the address, as till then a tablet's name is anybody's word. */
export interface Asker {
  readonly name: string;
  readonly isProved: boolean;
}

/** Who sends a request; `found`: what the gate found, where it has not let it pass yet. */
export function askerOf(request: FastifyRequest, found = passed.get(request)): Asker {
  return found && found.bodyHash !== null
    ? { name: `tablet ${found.tablet.tablet}`, isProved: true }
    : { name: `address ${request.ip}`, isProved: false };
}
