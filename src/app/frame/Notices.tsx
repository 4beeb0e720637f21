import { useEffect } from 'preact/hooks';
import { useApp } from '../app.ts';

/** A notice goes by itself after this long, unless it offers an act. */
const SHOWN_MS = 6000;
const SHOWN_WITH_ACT_MS = 12_000;

/** The passing message at the foot of the screen. */
export function Notices() {
  const app = useApp();
  const notice = app.notice.value;
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
  if (!notice) return null;
  return (
    <div class={`notice ${notice.tone}`} role="status" data-testid="notice">
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
  );
}
