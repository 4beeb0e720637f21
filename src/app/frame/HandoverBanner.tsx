// What the last shift left: a reel that was held at the handover and waits still, or a handover that nobody has taken over yet. Said above every
// screen of the line until a lead has decided, or has taken over.

import { useState } from 'preact/hooks';
import { heldSinceHandover, lastHandover } from '../../../shared/floor/held-at-handover.ts';
import type { Hold } from '../../../shared/floor/state.ts';
import type { Handed } from '../../../shared/floor/state-handover.ts';
import { useApp, useFloor } from '../app.ts';
import { address } from '../router.ts';
import { Banner } from '../ui/Banner.tsx';
import { Button } from '../ui/Button.tsx';
import { VerdictShape } from '../ui/Shape.tsx';
import { useWhenStill } from '../ui/still.ts';
import { handoverWords } from '../words/handover.ts';
import { sayReason } from '../words/verdict.ts';
import { formatDay, say } from '../words/words.ts';
import { mayTakeOver } from './may-take-over.ts';
import { ClearDialog } from './PeopleDialogs.tsx';

/** A handover that nobody took over is told so long: by then the next shift has come and gone. Made up: no source has a figure. */
const NOT_TAKEN_MS = 12 * 3_600_000;

export function HandoverBanner() {
  const app = useApp();
  const floor = useFloor();
  const line = app.line.value ?? '';
  const held = heldSinceHandover(floor, line);
  const last = lastHandover(floor, line);
  const isNew = last !== null && app.nowMs.value - last.atMs < NOT_TAKEN_MS;
  const waits = isNew && mayTakeOver(app.person.value, last) ? last : null;
  const shown = useWhenStill(held.length === 0 && waits === null ? null : { held, waits });
  return shown && <LeftOpen {...shown} />;
}

interface LeftOpenProps {
  /** Held since a handover, the oldest first. */
  readonly held: readonly Hold[];
  /** A handover that waits for the lead coming on; null where none does. */
  readonly waits: Handed | null;
}

function LeftOpen({ held, waits }: LeftOpenProps) {
  const floor = useFloor();
  const words = say(handoverWords);
  const [clearing, setClearing] = useState<string | null>(null);
  const [first] = held;
  const handedBy = waits && {
    name: floor.people.get(waits.by)?.name ?? waits.by,
    at: formatDay(waits.atMs, floor.lines.get(waits.line)?.zone ?? 'UTC'),
  };
  const short = [
    ...(first ? [words.heldShort(held.length)] : []),
    ...(handedBy ? [words.notTaken] : []),
  ].join(' · ');
  const why = first?.reasons[0] && sayReason(first.reasons[0].code)?.title;
  const show = (
    <a class="button" href={address('log', 'shift')} data-testid="handover-show">
      {words.showHandover}
    </a>
  );
  return (
    <>
      <Banner
        tone="care"
        testId="left-open"
        picture={<VerdictShape verdict="held" size={44} />}
        slot={first?.facts.slot ?? null}
        about={[...held.map(({ entry }) => entry), waits?.atMs].join(' ')}
        short={short}
        act={
          first ? (
            <Button tone="act" testId="left-open-decide" onPress={() => setClearing(first.entry)}>
              {words.decide}
            </Button>
          ) : (
            show
          )
        }
        rest={first && show}
      >
        {first && `${words.heldStill(held.length)} `}
        {why && `${why}. `}
        {handedBy && `${words.handedBy(handedBy.name, handedBy.at)}. ${words.notTaken}.`}
      </Banner>
      {clearing !== null && <ClearDialog entry={clearing} onClose={() => setClearing(null)} />}
    </>
  );
}
