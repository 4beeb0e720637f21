// A badge alone is enough to sign in, and no proof of who holds it: a lead hears then that a PIN is wanted too.

import { hasPin } from '../../../shared/floor/people.ts';
import { ticketIn } from '../../../shared/floor/rights.ts';
import type { Person } from '../../../shared/floor/state.ts';
import { isAtLeast } from '../../../shared/floor/vocabulary.ts';
import type { App } from '../app.ts';
import { unprovenWords } from '../words/unproven.ts';
import { say } from '../words/words.ts';

/** Tells a lead or an engineer whose ticket this tablet does not hold. */
export function tellBadgeAlone(app: App, holder: Person): void {
  const { person, role, name } = holder;
  if (!isAtLeast(role, 'lead') || !hasPin(holder)) return;
  const ticket = ticketIn(app.store.floor(), app.store.identity, person);
  if (ticket && ticket.untilMs > app.clock.nowMs()) return;
  app.notice.value = { tone: 'care', text: say(unprovenWords).badgeAlone(name) };
}
