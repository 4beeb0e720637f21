// A lead lets one blocked reel run on where it stands.

import type { BlockedTape } from '../../../shared/floor/blocks.ts';
import { useApp } from '../app.ts';
import { warningWords } from '../words/warning.ts';
import { say } from '../words/words.ts';
import type { Sure } from './confirmed.ts';
import { LeadDecides } from './LeadDecides.tsx';
import { recordSigned } from './signed.ts';

export function LetRunDialog({ of, onClose }: { readonly of: BlockedTape; readonly onClose: () => void }) {
  const app = useApp();
  const words = say(warningWords);
  const { line, slot, block, tape } = of;

  function letRun(lead: Sure, reason: string): void {
    const facts = { block: block.block, line, slot, of: tape.entry, reason };
    const payload = { ...facts, by: lead.person.person, checked: lead.checked };
    recordSigned(app, lead, [{ kind: 'blocked.let-run', payload }], {
      notice: { tone: 'care', text: words.letRunDone(slot) },
      next: onClose,
    });
  }

  return (
    <LeadDecides
      title={words.letRunTitle(slot)}
      tone="stop"
      why={words.letRunWhy}
      act={words.letRun}
      testId="let-run"
      mayPasskey
      onDecide={letRun}
      onClose={onClose}
    >
      <p>
        {words.blockedTape(block.reason)}. {words.letRunHelp}
      </p>
    </LeadDecides>
  );
}
