// Which slots have a row on the line screen, in which order.

import { dueSlots, type Outlook, type SlotOutlook } from '../../../../shared/outlook/line.ts';

/**
 * Every slot where `all` are asked for; else blocked reels, which must come off at once, and then at most `most` of what is due.
 * `blocked`: slots with a blocked reel.
 */
export function rowsShown(
  outlook: Outlook,
  asked: { readonly all: boolean; readonly blocked: ReadonlySet<string>; readonly most: number },
): readonly SlotOutlook[] {
  const isBlocked = ({ slot }: SlotOutlook) => asked.blocked.has(slot);
  const rest = asked.all ? outlook.slots : dueSlots(outlook).slice(0, asked.most);
  return [...outlook.slots.filter(isBlocked), ...rest.filter((slot) => !isBlocked(slot))];
}
