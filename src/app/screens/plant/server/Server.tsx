// This tablet and its plant's server: how sync stands, joining by a one-time code, and what a lead does with other tablets.

import { useEffect, useState } from 'preact/hooks';
import { roomWord } from '../../../../../shared/wire/state-room.ts';
import { useApp } from '../../../app.ts';
import { sayShare, useBehind } from '../../../behind.ts';
import { deviceClock } from '../../../device/clock.ts';
import { place } from '../../../router.ts';
import type { SyncStatus } from '../../../sync/ports.ts';
import { Button } from '../../../ui/Button.tsx';
import { Icon } from '../../../ui/Icon.tsx';
import { sayCause, serverWords } from '../../../words/server.ts';
import { syncWords } from '../../../words/sync.ts';
import { formatCount, formatShare, formatSpan, say } from '../../../words/words.ts';
import { Join } from './Join.tsx';
import { Lead } from './Lead.tsx';
import './server.css';

/** A new code is what helps against these. */
const joinHelps = ['tablet-unknown', 'tablet-revoked', 'signature-wrong', 'signature-missing'];

export function Server() {
  const app = useApp();
  const words = say(serverWords);
  const [plant, setPlant] = useState<string | null>(null);
  const connection = app.connection.value;
  const status = app.sync.value;
  const phase = status?.phase ?? null;
  useEffect(() => {
    connection?.plant().then(setPlant, () => setPlant(null)); // then shown as not joined
  }, [connection, phase]);
  if (app.store.identity.keys === null) {
    return (
      <div class="caution" data-testid="no-key">
        <Icon name="warn" />
        <div>
          <b>{words.noKey}</b>
          <p>{words.noKeyHelp}</p>
        </div>
      </div>
    );
  }
  const code = place.value.rest[1] ?? '';
  const isShut = phase === 'refused' && joinHelps.includes(status?.reason ?? '');
  return (
    <div class="stack">
      {status && phase !== 'alone' && <Standing status={status} plant={plant} />}
      {connection && (plant === null || isShut || code !== '') && (
        <Join key={code} connection={connection} code={code} again={plant !== null} />
      )}
      {connection && plant !== null && !isShut && <Lead connection={connection} />}
    </div>
  );
}

function Standing({ status, plant }: { readonly status: SyncStatus; readonly plant: string | null }) {
  const app = useApp();
  const words = say(serverWords);
  const history = say(syncWords);
  const behind = useBehind();
  app.nowMs.value; // the span since the last answer grows
  const { lastAnswerMs, backlog, clockOffMs, reason, quarantined, phase } = status;
  const ago = lastAnswerMs === null ? null : Math.max(0, (deviceClock.nowMs() - lastAnswerMs) / 1000);
  const isOff = Math.abs(clockOffMs) >= 30_000;
  const off = formatSpan(Math.abs(clockOffMs) / 1000);
  return (
    <section class="card stack" data-testid="standing" data-phase={phase}>
      <h2>{words.standing}</h2>
      <p>
        <b>{words.phases[phase]}</b>
      </p>
      <dl class="standing">
        {plant !== null && (
          <>
            <dt>{words.plant}</dt>
            <dd>{plant}</dd>
          </>
        )}
        <dt>{words.lastAnswer}</dt>
        <dd>{ago === null ? words.never : words.ago(formatSpan(ago))}</dd>
        <dt>{words.backlog}</dt>
        <dd data-testid="backlog">{backlog === 0 ? words.nothing : words.entries(backlog)}</dd>
        {behind && (
          <>
            <dt>{history.historyTitle}</dt>
            <dd data-testid="behind">
              {behind.missing > 0
                ? `${history.history(sayShare(behind))}. ${history.stillMissing(formatCount(behind.missing), formatCount(behind.of))} ${history.historyHelp}`
                : history.checkedHelp}
            </dd>
          </>
        )}
        <dt>{words.clock}</dt>
        <dd>{!isOff ? words.clockRight : clockOffMs > 0 ? words.clockBehind(off) : words.clockAhead(off)}</dd>
        {reason !== null && (
          <>
            <dt>{words.why}</dt>
            <dd data-testid="reason">{sayCause(words, reason)}</dd>
          </>
        )}
      </dl>
      {quarantined.length > 0 && (
        <div class="caution" data-testid="aside">
          <Icon name="warn" />
          <div>
            <b>{words.quarantined}</b>
            <p>{words.quarantinedHelp}</p>
            <p class="code">{quarantined.join(', ')}</p>
          </div>
        </div>
      )}
      <Watched status={status} />
      <NewTablets share={status.stateShare} />
      <div>
        <Button testId="sync-now" onPress={() => app.connection.value?.syncNow()}>
          {words.now}
        </Button>
      </div>
    </section>
  );
}

/** That new tablets will not start from another's state for much longer, or do not any more. */
function NewTablets({ share }: { readonly share: number | null }) {
  const words = say(serverWords);
  const word = roomWord(share ?? 0);
  if (word === 'fits') return null;
  const isOver = word === 'over';
  return (
    <div class="caution" data-testid={`new-tablets-${word}`}>
      <Icon name="warn" />
      <div>
        <b>{isOver ? words.stateOver : words.stateNears(formatShare(share ?? 0))}</b>
        <p>{isOver ? words.stateOverHelp : words.stateNearsHelp}</p>
      </div>
    </div>
  );
}

/** What somebody has to look at: a server that went back, entries kept out, clocks that are off. */
function Watched({ status }: { readonly status: SyncStatus }) {
  const app = useApp();
  const words = say(serverWords);
  const { rolledBackMs, headFault, quarantinedHere, clocksOff, clockOffMs } = status;
  const nowMs = deviceClock.nowMs() + clockOffMs;
  return (
    <>
      {headFault !== null && (
        <div class="caution" role="alert" data-testid="head-fault">
          <Icon name="warn" />
          <div class="stack">
            <b>{words.headFaults[headFault.code]}</b>
            <p>
              {words.headFaultHelp[headFault.code](formatSpan(Math.max(0, (nowMs - headFault.atMs) / 1000)))}
            </p>
            <div>
              <Button testId="head-fault-seen" onPress={() => app.connection.value?.tookNote()}>
                {words.rolledBackSeen}
              </Button>
            </div>
          </div>
        </div>
      )}
      {rolledBackMs !== null && (
        <div class="caution" role="alert" data-testid="rolled-back">
          <Icon name="warn" />
          <div class="stack">
            <b>{words.rolledBack}</b>
            <p>{words.rolledBackHelp(formatSpan(Math.max(0, (nowMs - rolledBackMs) / 1000)))}</p>
            <div>
              <Button testId="rolled-back-seen" onPress={() => app.connection.value?.tookNote()}>
                {words.rolledBackSeen}
              </Button>
            </div>
          </div>
        </div>
      )}
      {quarantinedHere > 0 && (
        <div class="caution" data-testid="kept-out">
          <Icon name="warn" />
          <div>
            <b>{words.quarantinedHere(quarantinedHere)}</b>
            <p>{words.quarantinedHereHelp}</p>
          </div>
        </div>
      )}
      {clocksOff.length > 0 && (
        <div class="caution" data-testid="clocks-off">
          <Icon name="warn" />
          <div>
            <b>{words.clocksOff}</b>
            {clocksOff.map(({ tablet, name, offMs }) => {
              const span = formatSpan(Math.abs(offMs) / 1000);
              return (
                <p key={tablet}>
                  {offMs > 0 ? words.clockOfAhead(name, span) : words.clockOfBehind(name, span)}
                </p>
              );
            })}
            <p>{words.clocksOffHelp}</p>
          </div>
        </div>
      )}
    </>
  );
}
