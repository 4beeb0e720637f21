// From a scanner's first keys on, what nobody waits for holds still; a scan that nobody answers, or that stops half-way, holds nothing up.

import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { somebodyWaits, unlessAwaited } from '../../../../src/app/device/awaited.ts';
import { createScanStream } from '../../../../src/app/scan/scan.ts';
import { DEFAULT_WEDGE_SETTINGS } from '../../../../src/app/scan/wedge.ts';
import { attachWedge, type WedgeOptions } from '../../../../src/app/scan/wedge-dom.ts';

/** As much of a page as listening for keys asks. Keys are stamped with the time on its clock, or as told. */
function page(more: Partial<WedgeOptions> = {}) {
  const window = Object.assign(new EventTarget(), {
    document: { activeElement: null },
    navigator: { userAgent: '' },
    performance,
    setTimeout,
    clearTimeout,
  }) as unknown as Window;
  const stream = createScanStream();
  const stop = attachWedge(window, stream, { nowMs: () => 0, onKeys: somebodyWaits, ...more });
  const press = (...keys: readonly string[]) => pressAt(performance.now(), ...keys);
  const pressAt = (timeStamp: number, ...keys: readonly string[]) => {
    for (const key of keys) {
      const down = new Event('keydown', { cancelable: true });
      Object.defineProperty(down, 'timeStamp', { value: timeStamp });
      window.dispatchEvent(
        Object.assign(down, { key, code: key, repeat: false, getModifierState: () => false }),
      );
    }
  };
  return { stream, press, pressAt, stop };
}

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal('requestAnimationFrame', (work: () => void) => void setTimeout(work, 16));
  class Nothing {}
  for (const name of ['Element', 'HTMLElement', 'HTMLInputElement', 'HTMLTextAreaElement'])
    vi.stubGlobal(name, Nothing);
});
afterEach(() => {
  vi.restoreAllMocks();
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

test('a scan whose end breaks holds nothing up', () => {
  const { stream, press, stop } = page();
  stream.take(() => {
    throw new Error('full');
  });
  press('R', 'E', 'E', 'L');
  expect(() => vi.advanceTimersByTime(5000)).toThrow('full');
  const other = vi.fn();
  unlessAwaited(other);
  vi.advanceTimersByTime(100);
  expect(other).toHaveBeenCalledTimes(1);
  stop();
});

test('a page that is held up twice waits each time for the keys behind its timer', () => {
  let lateMs = 0;
  vi.spyOn(performance, 'now').mockImplementation(() => Date.now() + lateMs);
  const startMs = Date.now();
  const onCut = vi.fn();
  const settings = { ...DEFAULT_WEDGE_SETTINGS, gapMs: 800, ending: 'terminator' } as const;
  const { stream, pressAt, stop } = page({ onCut, settings: () => settings });
  const taken = vi.fn();
  stream.take(taken);
  pressAt(startMs, 'R', 'E', 'E', 'L');
  lateMs = 100;
  // The timer rings when a scan has stalled for too long, and finds that it is late.
  vi.advanceTimersByTime(settings.stallMs - lateMs);
  lateMs += 100;
  vi.advanceTimersToNextTimer();
  pressAt(startMs + 500, '1');
  lateMs += 800;
  vi.advanceTimersToNextTimer();
  expect(onCut).not.toHaveBeenCalled();
  pressAt(startMs + 1000, '2', 'Enter');
  expect(taken.mock.calls[0]?.[0]).toMatchObject({ codes: [{ text: 'REEL12' }] });
  stop();
});
