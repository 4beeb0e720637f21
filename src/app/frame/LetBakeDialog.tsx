// A lead lets one bake count that was shorter than the table asks for.

import type { OpenBake } from '../../../shared/moisture/reel-life.ts';
import { useApp } from '../app.ts';
import { moistureWords } from '../words/moisture.ts';
import { formatNumber, say } from '../words/words.ts';
import type { Sure } from './confirmed.ts';
import { LeadDecides } from './LeadDecides.tsx';
import { bakeApproval, type ReelBake } from './let-bake.ts';
import { recordSigned } from './signed.ts';

interface LetBakeProps extends ReelBake {
  readonly onClose: () => void;
}

export function LetBakeDialog({ reel, line, bake, onClose }: LetBakeProps) {
  const app = useApp();
  const words = say(moistureWords);
  function letCount(lead: Sure, reason: string): void {
    const payload = bakeApproval({ reel, line, bake }, lead, reason);
    recordSigned(app, lead, [{ kind: 'bake.approved', payload }], {
      notice: { tone: 'care', text: words.letBakeDone(reel) },
      next: onClose,
    });
  }
  return (
    <LeadDecides
      title={words.letBakeTitle(reel)}
      tone="care"
      why={words.letBakeWhy}
      act={words.letBake}
      testId="let-bake"
      mayPasskey
      onDecide={letCount}
      onClose={onClose}
    >
      <p>{words.letBakeWhat(bakeFacts(bake))}</p>
      <p class="soft">{words.letBakeHelp}</p>
    </LeadDecides>
  );
}

/** Figures of a bake as people write them. */
function bakeFacts({ hours, celsius, wanted }: OpenBake) {
  const figure = (value: number) => formatNumber(Math.round(value * 10) / 10);
  return {
    hours: figure(hours),
    celsius: celsius === null ? null : figure(celsius),
    wanted: wanted === null ? null : figure(wanted),
  };
}
