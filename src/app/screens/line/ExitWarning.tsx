// What warns, where panels leave the line: the chip of every other screen, and beside it the answer, so that nobody leaves the exit to say that
// they go. The answer is to the one that the chip names; the next one comes in its place.

import { loudestOpen, type OpenWarning } from '../../../../shared/outlook/loudest-open.ts';
import { useApp } from '../../app.ts';
import { WarningChip } from '../../frame/WarningChip.tsx';
import { slotToTell } from '../../line-in-hand.ts';
import { useRefusal } from '../../may.ts';
import type { Watch } from '../../outlook/watch.ts';
import { Button } from '../../ui/Button.tsx';
import { warningWords } from '../../words/warning.ts';
import { say } from '../../words/words.ts';

export function ExitWarning(props: {
  readonly open: readonly OpenWarning[];
  readonly acknowledge: Watch['acknowledge'];
  /** Leaves the exit for the line. */
  readonly onLeave: () => void;
}) {
  const { open, acknowledge, onLeave } = props;
  const app = useApp();
  const words = say(warningWords);
  const refusal = useRefusal('acknowledge-warning');
  const loudest = loudestOpen(open);
  if (!loudest) return null;
  return (
    <div class="warning-here">
      <WarningChip open={open} onLeave={onLeave} />
      <Button
        tone="act"
        testId="exit-go"
        label={`${words.acknowledge}: ${slotToTell(app, loudest.outlook.line, loudest.slot.slot)}`}
        disabledReason={refusal}
        onPress={() => void acknowledge([loudest]).catch(() => undefined)}
      >
        {words.acknowledge}
      </Button>
    </div>
  );
}
