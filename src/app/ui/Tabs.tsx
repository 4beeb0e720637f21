// Pages under one head, one at a time. Tab comes to the name of the one that is shown, arrows lead from one to the next, as readers of the screen
// say of such a list (WAI-ARIA Authoring Practices, tabs).

import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';

/** Where a key leads in a list of names that stand beside each other; null for other keys. */
function movedBy(key: string, at: number, count: number, isRightToLeft: boolean): number | null {
  const on = isRightToLeft ? 'ArrowLeft' : 'ArrowRight';
  const back = isRightToLeft ? 'ArrowRight' : 'ArrowLeft';
  if (key === on) return (at + 1) % count;
  if (key === back) return (at + count - 1) % count;
  if (key === 'Home') return 0;
  return key === 'End' ? count - 1 : null;
}

export function Tabs<T extends string>(props: {
  readonly pages: readonly T[];
  readonly shown: T;
  readonly nameOf: (page: T) => string;
  readonly onShow: (page: T) => void;
  /** The page that is shown. */
  readonly children: ComponentChildren;
}) {
  const { pages, shown, nameOf, onShow, children } = props;
  const id = useId();
  return (
    <>
      <div
        class="choice"
        role="tablist"
        onKeyDown={(event) => {
          const { key, currentTarget } = event;
          const isRightToLeft = getComputedStyle(currentTarget).direction === 'rtl';
          const moved = movedBy(key, pages.indexOf(shown), pages.length, isRightToLeft);
          const page = moved === null ? undefined : pages[moved];
          if (moved === null || page === undefined) return;
          event.preventDefault();
          currentTarget.querySelectorAll<HTMLElement>('[role=tab]')[moved]?.focus();
          onShow(page);
        }}
      >
        {pages.map((page) => (
          <button
            type="button"
            role="tab"
            key={page}
            id={`${id}-${page}`}
            aria-selected={page === shown}
            tabIndex={page === shown ? 0 : -1}
            {...(page === shown ? { 'aria-controls': `${id}-page` } : {})}
            data-testid={`tab-${page}`}
            onClick={() => onShow(page)}
          >
            {nameOf(page)}
          </button>
        ))}
      </div>
      <div class="stack" role="tabpanel" id={`${id}-page`} aria-labelledby={`${id}-${shown}`}>
        {children}
      </div>
    </>
  );
}
