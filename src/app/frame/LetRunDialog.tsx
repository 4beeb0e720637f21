// A lead lets one blocked reel run on where it stands.

import type { BlockedTape } from '../../../shared/floor/blocks.ts';
import { useApp } from '../app.ts';
import { warningWords } from '../words/warning.ts';
import { say } from '../words/words.ts';
import type { Sure } from './confirmed.ts';
import { LeadDecides } from './LeadDecides.tsx';

export function LetRunDialog({ of, onClose }: { readonly of: BlockedTape; readonly onClose: () => void }) {
  const app = useApp();
  const words = say(warningWords);
  const { line, slot, block, tape } = of;

  function letRun({ person, checked }: Sure, reason: string): void {
    const facts = { block: block.block, line, slot, of: tape.entry, reason };
    app.record([{ kind: 'blocked.let-run', payload: { ...facts, by: person.person, checked } }], {
      notice: { tone: 'care', text: words.letRunDone(slot) },
    });
    onClose();
  }

  return (
    <LeadDecides
      title={words.letRunTitle(slot)}
      tone="stop"
      why={words.letRunWhy}
      act={words.letRun}
      testId="let-run"
      onDecide={letRun}
      onClose={onClose}
    >
      <p>
        {words.blockedTape(block.reason)}. {words.letRunHelp}
      </p>
    </LeadDecides>
  );
}
