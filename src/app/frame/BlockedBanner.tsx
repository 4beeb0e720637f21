// A blocked reel stands on a slot of a line of this tablet: said above every screen, on every tablet of the line, until it is off or a lead lets it run.

import { useState } from 'preact/hooks';
import { blockedOn } from '../../../shared/floor/blocked-on.ts';
import type { BlockedTape } from '../../../shared/floor/blocks.ts';
import { slotKey } from '../../../shared/floor/state.ts';
import { useApp, useFloor } from '../app.ts';
import { lineToTell, slotToTell, takeLine } from '../line-in-hand.ts';
import { linesServed } from '../lines-served.ts';
import { useRefusal } from '../may.ts';
import { blockedNeed, isHeard } from '../outlook/blocked-call.ts';
import { goTo } from '../router.ts';
import { Banner } from '../ui/Banner.tsx';
import { Button } from '../ui/Button.tsx';
import { VerdictShape } from '../ui/Shape.tsx';
import { whichPanels } from '../which-panels.ts';
import { warningWords } from '../words/warning.ts';
import { say } from '../words/words.ts';
import { LetRunDialog } from './LetRunDialog.tsx';
import { UnloadDialog } from './UnloadDialog.tsx';

/** Where the trace of what a block names is asked for. */
function traceAddress({ block, tape }: BlockedTape): string {
  const { lot } = block;
  const what = block.reel === null ? { reel: null, lot, part: tape.part } : tape;
  return whichPanels({ ...what, cause: 'blocked', of: block.block });
}

function panelsText({ run, sinceLoaded, sinceBlocked, wasThereBefore }: BlockedTape): string {
  const words = say(warningWords);
  const now = run === null ? words.blockedNone : words.blockedPanels(sinceLoaded, sinceBlocked);
  return wasThereBefore ? `${now} ${words.blockedBefore}` : now;
}

export function BlockedBanner() {
  const app = useApp();
  const floor = useFloor();
  const words = say(warningWords);
  const verify = useRefusal('verify-reel');
  const heard = useRefusal('acknowledge-warning');
  const lead = useRefusal('clear-hold');
  const [over, setOver] = useState<{ readonly over: 'off' | 'let-run'; readonly of: BlockedTape } | null>(
    null,
  );
  const [first, ...rest] = blockedOn(floor, linesServed(app));
  if (!first) return null;
  const { line, slot, block } = first;
  const loaded = over ? floor.slots.get(slotKey(over.of.line, over.of.slot)) : undefined;
  const name = lineToTell(app, line);
  const what = [block.lot, block.reel, block.part].filter((each) => each !== null).join(' · ');
  const need = blockedNeed(block);
  const short = [words.short.blocked()];
  if (rest.length > 0) short.push(words.shortMore(rest.length));
  return (
    <>
      <Banner
        tone="stop"
        testId="blocked"
        picture={<VerdictShape verdict="refused" size={44} />}
        slot={slotToTell(app, line, slot)}
        about={[first, ...rest].map((each) => `${each.tape.entry} ${each.block.block}`).join(' ')}
        short={short.join(' · ')}
        act={
          <Button
            tone="act"
            testId="blocked-off"
            disabledReason={verify}
            onPress={() => setOver({ over: 'off', of: first })}
          >
            {words.blockedOff}
          </Button>
        }
        rest={
          <>
            {line !== app.line.value && (
              <Button
                testId="blocked-show"
                onPress={() => {
                  takeLine(app, line);
                  goTo('line');
                }}
              >
                {words.showLine(name ?? line)}
              </Button>
            )}
            <a class="button" href={traceAddress(first)} data-testid="blocked-trace">
              {words.blockedTrace}
            </a>
            {!isHeard(floor, first) && (
              <Button
                testId="blocked-heard"
                disabledReason={heard}
                onPress={() => {
                  app.record([
                    { kind: 'warning.acknowledged', payload: { line, slot, need, level: 'late' } },
                  ]);
                }}
              >
                {words.acknowledge}
              </Button>
            )}
            <Button
              testId="blocked-let-run"
              disabledReason={lead}
              onPress={() => setOver({ over: 'let-run', of: first })}
            >
              {words.letRun}
            </Button>
          </>
        }
      >
        {words.blocked(what, block.reason)} <b>{words.blockedAct}</b>{' '}
        <span data-testid="blocked-panels">{panelsText(first)}</span>
        {rest.length > 0 && ` ${words.blockedMore(rest.map((each) => each.slot).join(', '))}`}
      </Banner>
      {over?.over === 'off' && loaded && <UnloadDialog loaded={loaded} onClose={() => setOver(null)} />}
      {over?.over === 'let-run' && <LetRunDialog of={over.of} onClose={() => setOver(null)} />}
    </>
  );
}
