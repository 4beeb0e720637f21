// When the server was heard last, kept over a restart: a screen that starts without a network has to say how old what it shows is.

import { useEffect, useState } from 'preact/hooks';
import { useApp } from '../../app.ts';
import { keep, readKept } from '../../store/preferences.ts';

/** Kept under this name among the small things of this tablet. */
const NAME = 'server-heard';
/** Written down this often while it is heard, ms: a restart is at most so much too early. */
const KEEP_MS = 10_000;
/** Nothing is said of the server before it was silent for so long, at a start as between two streams, ms. */
const GRACE_MS = 15_000;

/** When the server was heard last, ms since 1970; `not-read`: nobody can say yet. */
export type LastHeard = number | 'now' | 'never' | 'not-read';

/** Follows it. */
export function useHeard(nowMs: number): LastHeard {
  const app = useApp();
  const [before, setBefore] = useState<number | null | 'not-read'>('not-read');
  const [startMs] = useState(() => app.clock.nowMs());
  useEffect(() => void readKept<number>(app.store.cache, NAME).then(setBefore), [app]);
  const phase = app.sync.value?.phase ?? null;
  const isHeard = phase === 'live';
  const mark = isHeard ? Math.floor(nowMs / KEEP_MS) : null;
  useEffect(() => {
    if (mark === null) return;
    setBefore(app.clock.nowMs());
    void keep(app.store.cache, NAME, app.clock.nowMs());
  }, [mark]);
  if (isHeard) return 'now';
  const isYoung = nowMs - startMs < GRACE_MS && phase !== 'waiting';
  if (before === 'not-read' || isYoung || nowMs - (before ?? 0) < GRACE_MS) return 'not-read';
  return before ?? 'never';
}
