// The tablet and its server in one chip: a word, a shape and a colour. A tap leads to the page that says more.

import type { ReadonlySignal } from '@preact/signals';
import { useApp } from '../app.ts';
import { sayShare, useBehind } from '../behind.ts';
import { deviceClock } from '../device/clock.ts';
import type { OfflineState } from '../device/offline.ts';
import { address } from '../router.ts';
import type { Behind } from '../store/store.ts';
import type { SyncStatus } from '../sync/ports.ts';
import { shellWords } from '../words/shell.ts';
import { syncWords } from '../words/sync.ts';
import { formatCount, formatSpan, say } from '../words/words.ts';

/** What the chip says: `wide` chips give way where the screen is narrow, to `brief` where there is one. */
interface ChipText {
  readonly tone: '' | 'go' | 'care' | 'stop';
  readonly text: string;
  readonly wide: boolean;
  readonly brief?: string;
}

export function SyncChip({ offline }: { readonly offline: ReadonlySignal<OfflineState> }) {
  const app = useApp();
  app.nowMs.value; // the span since the last answer grows
  const status = app.sync.value;
  const behind = useBehind();
  const role = app.person.value?.role;
  const isLead = role === 'lead' || role === 'engineer';
  const { tone, text, wide, brief } =
    sayWatch(status, isLead) ??
    sayStatus(status, behind) ??
    sayHistory(behind, status?.backlog ?? 0) ??
    sayOffline(offline.value);
  return (
    <a
      class={`chip ${tone} ${wide && brief === undefined ? 'wide' : ''}`}
      href={address('plant', 'server')}
      data-testid="offline"
      data-state={offline.value}
      data-sync={status?.phase ?? 'alone'}
      data-backlog={status?.backlog ?? 0}
      data-behind={behind ? behind.missing : 'no'}
    >
      {brief === undefined ? (
        text
      ) : (
        <>
          <span class="wide">{text}</span>
          {/* A mark and a number alone say little to those who hear the screen. */}
          <span class="narrow" role="img" aria-label={text}>
            {brief}
          </span>
        </>
      )}
    </a>
  );
}

function sayOffline(state: OfflineState): ChipText {
  const words = say(shellWords);
  const text = state === 'ready' ? `● ${words.offlineReady}` : `○ ${words.gettingReady}`;
  return { tone: '', text, wide: true };
}

/** What somebody has to look at, whatever sync is doing; null where there is nothing. Clocks are a lead's business. */
function sayWatch(status: SyncStatus | null, isLead: boolean): ChipText | null {
  if (!status || status.phase === 'refused') return null;
  const words = say(syncWords);
  if (status.headFault !== null) return { tone: 'care', text: `! ${words.headFault}`, wide: false };
  if (status.rolledBackMs !== null) return { tone: 'care', text: `! ${words.rolledBack}`, wide: false };
  const off = status.clocksOff.length;
  if (off === 0 || !isLead || status.phase !== 'live' || status.backlog > 0) return null;
  return { tone: 'care', text: `! ${words.clocksOff(off)}`, wide: true };
}

/** Null where the log is whole. */
function sayHistory(behind: Behind | null, backlog: number): ChipText | null {
  if (!behind) return null;
  const words = say(syncWords);
  if (behind.missing === 0) return { tone: '', text: `◌ ${words.historyChecked}`, wide: true };
  const share = sayShare(behind);
  const toSend = backlog > 0 ? ` · ${words.toSend(formatCount(backlog))}` : '';
  return { tone: 'care', text: `◌ ${words.history(share)}${toSend}`, wide: true, brief: `◌ ↓ ${share}` };
}

/** Null where this tablet has no server of its own to speak of, or another window speaks with it. */
function sayStatus(status: SyncStatus | null, behind: Behind | null): ChipText | null {
  if (!status || status.phase === 'alone' || status.phase === 'follower') return null;
  const words = say(syncWords);
  if (status.phase === 'refused') return { tone: 'stop', text: `✕ ${words.refused}`, wide: false };
  if (status.quarantined.length > 0)
    return { tone: 'care', text: `! ${words.quarantined(status.quarantined.length)}`, wide: false };
  const isAway = status.reason === 'unreachable' || status.reason === 'unreadable';
  if (status.phase === 'waiting' && isAway) {
    const { lastAnswerMs } = status;
    const span = lastAnswerMs === null ? null : (deviceClock.nowMs() - lastAnswerMs) / 1000;
    const away = `◌ ${words.unreached(span === null ? null : formatSpan(Math.max(0, span)))}`;
    if (status.backlog === 0) return { tone: 'care', text: away, wide: true };
    const count = formatCount(status.backlog);
    return { tone: 'care', text: `${away} · ${words.toSend(count)}`, wide: true, brief: `◌ ↑ ${count}` };
  }
  if (behind) return null;
  if (status.backlog > 0) {
    const count = formatCount(status.backlog);
    return { tone: 'care', text: `↑ ${words.toSend(count)}`, wide: true, brief: `↑ ${count}` };
  }
  if (status.phase === 'live') return { tone: 'go', text: `● ${words.live}`, wide: true };
  // A wait without a reason is the moment between two streams.
  const waits = status.phase === 'waiting' && status.reason !== null;
  return { tone: '', text: `◌ ${waits ? words.waits : words.syncing}`, wide: true };
}
