// From a scanner's first keys on, what nobody waits for holds still; a scan that nobody answers, or that stops half-way, holds nothing up.

import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { somebodyWaits, unlessAwaited } from '../../../../src/app/device/awaited.ts';
import { createScanStream } from '../../../../src/app/scan/scan.ts';
import { attachWedge } from '../../../../src/app/scan/wedge-dom.ts';

/** As much of a page as listening for keys asks. */
function page() {
  const window = Object.assign(new EventTarget(), {
    document: { activeElement: null },
    navigator: { userAgent: '' },
    performance,
    setTimeout,
    clearTimeout,
  }) as unknown as Window;
  const stream = createScanStream();
  const stop = attachWedge(window, stream, { nowMs: () => 0, onKeys: somebodyWaits });
  const press = (...keys: readonly string[]) => {
    for (const key of keys) {
      const down = new Event('keydown', { cancelable: true });
      window.dispatchEvent(
        Object.assign(down, { key, code: key, repeat: false, getModifierState: () => false }),
      );
    }
  };
  return { stream, press, stop };
}

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal('requestAnimationFrame', (work: () => void) => void setTimeout(work, 16));
  class Nothing {}
  for (const name of ['Element', 'HTMLElement', 'HTMLInputElement', 'HTMLTextAreaElement'])
    vi.stubGlobal(name, Nothing);
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

test('holds still until what was scanned has been taken and drawn', () => {
  const { stream, press, stop } = page();
  const [taken, other] = [vi.fn(), vi.fn()];
  stream.take(taken);
  press('R', 'E', 'E', 'L');
  unlessAwaited(other);
  press('1', 'Enter');
  expect(taken.mock.calls[0]?.[0]).toMatchObject({ codes: [{ text: 'REEL1' }] });
  expect(other).not.toHaveBeenCalled();
  vi.advanceTimersByTime(100);
  expect(other).toHaveBeenCalledTimes(1);
  stop();
});

test('a key that a person presses holds nothing', () => {
  const { press, stop } = page();
  const other = vi.fn();
  press('R');
  unlessAwaited(other);
  expect(other).toHaveBeenCalledTimes(1);
  stop();
});

test('a scan that stops half-way, and a page that no longer listens, hold nothing up', () => {
  const { press, stop } = page();
  const [first, second] = [vi.fn(), vi.fn()];
  press('R', 'E', 'E', 'L');
  unlessAwaited(first);
  vi.advanceTimersByTime(1000);
  expect(first).toHaveBeenCalledTimes(1);
  press('R', 'E', 'E', 'L');
  unlessAwaited(second);
  stop();
  vi.advanceTimersByTime(100);
  expect(second).toHaveBeenCalledTimes(1);
});
