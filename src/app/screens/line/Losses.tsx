// What feeders throw away, as finished reels have shown: a rising one is said at once, the rest waits in a fold.

import { useState } from 'preact/hooks';
import { UNLIKELY_LOSS } from '../../../../shared/floor/remaining.ts';
import {
  type FeederLoss,
  knownLosses,
  pickFaults,
  risingFeeders,
  type ToldFaults,
  unlikelyLosses,
} from '../../../../shared/outlook/losses.ts';
import { useFloor } from '../../app.ts';
import { Button } from '../../ui/Button.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { countWords } from '../../words/count.ts';
import { formatCount, formatDay, formatShare, say } from '../../words/words.ts';

/** Feeders listed; the worst come first. */
const SHOWN = 12;

/** What a machine said of picking, in words. */
function sayFaults({ times, sinceMs }: ToldFaults, zone: string): string {
  return say(countWords).pickFaults(formatCount(times), formatDay(sinceMs, zone));
}

function risingText(loss: FeederLoss): string {
  const words = say(countWords);
  const share = formatShare(loss.recentMean ?? loss.mean);
  return loss.others === null
    ? words.risingAlone(loss.feeder, share)
    : words.rising(loss.feeder, share, formatShare(loss.others));
}

/** Feeders whose loss rises, as warnings. */
export function RisingLosses({ line }: { readonly line: string }) {
  const floor = useFloor();
  const words = say(countWords);
  const rising = risingFeeders(knownLosses(floor, line));
  if (rising.length === 0) return null;
  const faults = pickFaults(floor, line);
  const zone = floor.lines.get(line)?.zone ?? 'UTC';
  return (
    <div class="rising" role="status" data-testid="rising-losses">
      {rising.map((loss) => (
        <p key={loss.feeder}>
          <Icon name="warn" />
          <span>
            <b>{risingText(loss)}</b> <span class="code whole">{loss.slot}</span>
            <br />
            {faults
              .filter(({ feeder }) => feeder === loss.feeder)
              .map((told) => (
                <span key={told.slot}>{sayFaults(told, zone)} </span>
              ))}
            <span class="soft">{words.risingAct}</span>
          </span>
        </p>
      ))}
    </div>
  );
}

/** Reels that showed more than any feeder loses: what they showed is said, and not learnt. */
function UnlikelyLosses({ line, zone }: { readonly line: string; readonly zone: string }) {
  const words = say(countWords);
  const unlikely = unlikelyLosses(useFloor(), line);
  if (unlikely.length === 0) return null;
  return (
    <div data-testid="loss-aside">
      <p class="chip care">? {words.leftOut(formatCount(unlikely.length), formatShare(UNLIKELY_LOSS))}</p>
      <ul class="evidence">
        {unlikely.slice(0, 20).map(({ from, share }) => (
          <li key={from.chain}>
            {formatDay(from.atMs, zone)} · <span class="code whole">{from.slot}</span> ·{' '}
            {words.evidenceLine(
              `${formatCount(from.startParts)} ± ${formatCount(from.startSd)}`,
              `${formatCount(from.endParts)} ± ${formatCount(from.endSd)}`,
              formatCount(from.placements),
            )}{' '}
            ({words.told[from.told]}) · {formatShare(share)}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** All learnt losses, with what they rest on. */
export function Losses({ line }: { readonly line: string }) {
  const floor = useFloor();
  const words = say(countWords);
  const [unfolded, setUnfolded] = useState(false);
  const [open, setOpen] = useState<string | null>(null);
  const zone = floor.lines.get(line)?.zone ?? 'UTC';
  const losses = knownLosses(floor, line);
  const faults = unfolded ? pickFaults(floor, line) : [];
  const others = faults.filter(({ feeder }) => !losses.some((loss) => loss.feeder === feeder));
  return (
    <details
      class="card losses"
      data-testid="losses"
      onToggle={(event) => setUnfolded(event.currentTarget.open)}
    >
      <summary>
        {words.lossTitle} <span class="soft">({formatCount(losses.length)})</span>
      </summary>
      {losses.length === 0 && <p class="soft">{words.lossNone}</p>}
      {(unfolded ? losses.slice(0, SHOWN) : []).map((loss) => (
        <div class="listed" key={loss.feeder} data-testid={`loss-${loss.feeder}`}>
          <b class="code">{loss.feeder}</b>
          <span class="code soft">{loss.slot}</span>
          <span class={loss.rising ? 'chip care' : ''}>
            {words.lossRow(formatShare(loss.mean), formatShare(loss.low), formatShare(loss.high))}
          </span>
          <span class="soft grow">
            {words.lossEvidence(
              formatCount(loss.reels),
              `${formatCount(loss.lost)}${loss.lostSd >= 1 ? ` ± ${formatCount(loss.lostSd)}` : ''}`,
              formatCount(loss.picks),
            )}
          </span>
          {faults
            .filter(({ feeder }) => feeder === loss.feeder)
            .map((told) => (
              <span class="chip plain" key={told.slot}>
                {sayFaults(told, zone)}
              </span>
            ))}
          {loss.skipsUnknown > 0 && (
            <span class="chip care" data-testid={`loss-skips-${loss.feeder}`}>
              ? {words.skipsUnknown(loss.skipsUnknown)}
            </span>
          )}
          <Button
            tone="quiet"
            onPress={() => setOpen(open === loss.feeder ? null : loss.feeder)}
            testId={`evidence-${loss.feeder}`}
          >
            {open === loss.feeder ? words.hideEvidence : words.showEvidence}
          </Button>
          {open === loss.feeder && (
            <ul class="evidence">
              {loss.evidence.slice(0, 20).map(({ from, lost, picks }) => (
                <li key={from.chain}>
                  {formatDay(from.atMs, zone)} · <span class="code">{from.part}</span> ·{' '}
                  {words.evidenceLine(
                    `${formatCount(from.startParts)} ± ${formatCount(from.startSd)}`,
                    `${formatCount(from.endParts)} ± ${formatCount(from.endSd)}`,
                    formatCount(from.placements),
                  )}{' '}
                  ({words.told[from.told]}) · {formatShare(lost / picks)}
                  {from.skipsUnknown ? ` · ${words.skipsUnknownReel}` : ''}
                </li>
              ))}
            </ul>
          )}
        </div>
      ))}
      {others.length > 0 && (
        <div class="faults">
          <p class="soft">{words.pickFaultsTitle}</p>
          {others.slice(0, SHOWN).map((told) => (
            <p class="row" key={told.slot}>
              {told.feeder !== null && <b class="code">{told.feeder}</b>}
              <span class="code soft">{told.slot}</span> {sayFaults(told, zone)}
            </p>
          ))}
        </div>
      )}
      {unfolded && <UnlikelyLosses line={line} zone={zone} />}
    </details>
  );
}
