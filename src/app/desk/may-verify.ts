// May whoever is signed in have a reel judged? Asked by every desk each time, as a tablet that lies idle signs out.

import { mayDo } from '../../../shared/floor/may.ts';
import type { App } from '../app.ts';

/** True where the person signed in may; where the plant has no people yet, anybody may. */
export function mayVerify(app: Pick<App, 'store' | 'person'>): boolean {
  return mayDo('verify-reel', app.person.peek(), app.store.floor().people.size > 0).may;
}
