// Which step does the next scan answer? The one that a person chose, by going into its field; else the first that is still open, where it
// asks for a scan. Refused: the first open scan step wherever it stands, since the paste's code would then answer for a stencil that
// nobody has come to yet.

import type { ChecklistStep } from '../floor/checklist.ts';
import type { ChecklistView, StepView } from './answers.ts';

/** The scan step that the next scan answers; null where none does. `chosen`: the step that a person chose, null where nobody did. */
export function currentScanStep({ steps }: ChecklistView, chosen: string | null): ChecklistStep | null {
  const isOpen = ({ state }: StepView) => state === 'open' || state === 'short';
  const own = steps.find(({ step }) => step.step === chosen);
  if (own && isOpen(own) && own.step.kind === 'scan') return own.step;
  // What is known by itself is nothing that a person comes to, and what is optional may stay open for good.
  const first = steps.find(
    (view) =>
      isOpen(view) && view.step.kind !== 'known' && (view.step.mandatory || view.step.kind === 'scan'),
  );
  return first?.step.kind === 'scan' ? first.step : null;
}
