// A mandatory step is skipped only by a lead: badge, PIN and a reason.

import type { Checklist } from '../../../../shared/floor/state.ts';
import { useApp } from '../../app.ts';
import type { Sure } from '../../frame/confirmed.ts';
import { LeadDecides } from '../../frame/LeadDecides.tsx';
import { recordSigned } from '../../frame/signed.ts';
import { checklistWords } from '../../words/checklist.ts';
import { say } from '../../words/words.ts';

interface SkipDialogProps {
  readonly list: Checklist;
  readonly step: string;
  readonly onClose: () => void;
}

export function SkipDialog({ list, step, onClose }: SkipDialogProps) {
  const app = useApp();
  const words = say(checklistWords);
  function skip(lead: Sure, reason: string): void {
    const { checklist, line } = list;
    const payload = { checklist, line, step, by: lead.person.person, reason, checked: lead.checked };
    recordSigned(app, lead, [{ kind: 'step.skipped', payload }], { next: onClose });
  }
  return (
    <LeadDecides
      title={words.skipTitle}
      tone="care"
      why={words.skipReason}
      act={words.skip}
      testId="skip"
      mayPasskey
      onDecide={skip}
      onClose={onClose}
    />
  );
}
