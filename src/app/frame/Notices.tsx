// The passing message between the screen and the dock: in a row of its own, so that it covers nothing. It goes with its moment: on the
// next scan, verdict, entry of this tablet or change of screen, so that what it offers to take back is always what was done last.

import { effect } from '@preact/signals';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { type Notice, useApp } from '../app.ts';
import { place } from '../router.ts';
import { whenHeard } from '../ui/heard.ts';

/** A notice goes by itself after this long, unless it offers an act. */
const SHOWN_MS = 6000;
const SHOWN_WITH_ACT_MS = 12_000;

export function Notices() {
  const app = useApp();
  const notice = app.notice.value;
  useEffect(() => {
    const gone = () => {
      app.notice.value = null;
    };
    const unwatch = app.scans.subscribe(gone);
    // What a person does next is another moment; what the tablet writes by itself, such as a warning, is not.
    const unlisten = app.store.onChange((entries) => {
      if (entries.some(({ tablet, who }) => tablet === app.store.identity.tablet && who !== null)) gone();
    });
    let shown: { notice: Notice | null; address: string } = { notice: null, address: location.hash };
    const unfollow = effect(() => {
      place.value;
      const now = app.notice.value;
      if (now !== null && now === shown.notice && location.hash !== shown.address) gone();
      else if (now !== shown.notice) {
        const told = { notice: now, address: location.hash };
        shown = told;
        // A notice that is told as its act leads to another screen belongs to that one.
        queueMicrotask(() => {
          told.address = location.hash;
        });
      }
    });
    return () => {
      unwatch();
      unlisten();
      unfollow();
    };
  }, []);
  useEffect(() => {
    if (!notice) return;
    const timer = setTimeout(
      () => {
        if (app.notice.value === notice) app.notice.value = null;
      },
      notice.act ? SHOWN_WITH_ACT_MS : SHOWN_MS,
    );
    return () => clearTimeout(timer);
  }, [notice]);
  // Told as a question closes, it is put in anew once the question is gone: under it nothing is heard.
  const row = useRef<HTMLDivElement>(null);
  const [times, setTimes] = useState(0);
  useLayoutEffect(() => {
    if (!notice || !row.current) return undefined;
    let isLater = false;
    const giveUp = whenHeard(row.current, () => {
      if (isLater) setTimes((before) => before + 1);
    });
    isLater = true;
    return giveUp;
  }, [notice]);
  // Its row stands before the message comes: one that comes with its text is not read by all readers of the screen.
  return (
    <div ref={row} class="notices" role="status">
      {notice && (
        <div key={times} class={`notice ${notice.tone}`} data-testid="notice">
          <span>{notice.text}</span>
          {notice.act && (
            <button
              type="button"
              onClick={() => {
                app.notice.value = null;
                notice.act?.run();
              }}
            >
              {notice.act.label}
            </button>
          )}
        </div>
      )}
    </div>
  );
}
