// Draws what changed before the caller goes on: paper shows the page as it stands once the browser was told to print.

import { options } from 'preact';

/** Does something, and draws what it changed and what waited to be drawn before it answers. Not from within a drawing. */
export function drawNow(change: () => void): void {
  const { debounceRendering: before } = options;
  options.debounceRendering = (draw) => draw();
  try {
    change();
  } finally {
    if (before) options.debounceRendering = before;
    else delete options.debounceRendering;
  }
}
