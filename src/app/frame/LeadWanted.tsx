import type { Reason } from '../../../shared/verdict/reasons.ts';
import { dockWords } from '../words/dock.ts';
import { verdictWords } from '../words/verdict.ts';
import { say } from '../words/words.ts';

/** Why a lead must decide on the reel in hand, while other things are still wanted. */
export function LeadWanted({ reason }: { readonly reason: Reason }) {
  return (
    <>
      ? {say(verdictWords).reasons[reason.code].title}. {say(dockWords).leadWanted}
    </>
  );
}
