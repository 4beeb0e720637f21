// The clock of forecasts: hand-worked jumps, and by properties that no reading goes back and none is lost to a clock set wrong.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  afterEntry,
  CLOCK_AHEAD_MS,
  CLOCK_STEP_MS,
  createSteadyClock,
  firstReading,
  nextReading,
  type Reading,
} from '../../../../src/app/device/clock.ts';

const minuteMs = 60_000;
const hourMs = 60 * minuteMs;
const sixMs = Date.UTC(2026, 2, 2, 6);

/** A tablet whose two clocks are set by hand. */
function tablet() {
  const at = { wallMs: sixMs, elapsedMs: 5000 };
  const clock = createSteadyClock(() => ({ ...at }));
  return {
    clock,
    /** Time goes by. */
    pass: (ms: number) => {
      at.wallMs += ms;
      at.elapsedMs += ms;
    },
    /** Somebody sets the clock, or the tablet sleeps. */
    jump: (ms: number) => {
      at.wallMs += ms;
    },
  };
}

describe('a clock set back', () => {
  test('goes on from its last reading, says so, and is silent again once it is set right', () => {
    const { clock, pass, jump } = tablet();
    pass(10 * minuteMs);
    expect(clock.nowMs()).toBe(sixMs + 10 * minuteMs);
    jump(-hourMs);
    pass(minuteMs);
    expect(clock.nowMs()).toBe(sixMs + 11 * minuteMs);
    expect(clock.slip.value).toEqual({ kind: 'back', byMs: hourMs, atMs: sixMs + 11 * minuteMs });
    pass(20 * minuteMs);
    expect(clock.nowMs()).toBe(sixMs + 31 * minuteMs);
    expect(clock.slip.value?.atMs).toBe(sixMs + 11 * minuteMs);
    jump(hourMs);
    expect(clock.nowMs()).toBe(sixMs + 31 * minuteMs);
    expect(clock.slip.value).toBeNull();
  });

  test('goes on through a sleep, in which elapsed time stands still', () => {
    const { clock, pass, jump } = tablet();
    jump(-hourMs);
    expect(clock.nowMs()).toBe(sixMs);
    jump(25 * minuteMs);
    pass(minuteMs);
    expect(clock.nowMs()).toBe(sixMs + 26 * minuteMs);
    expect(clock.slip.value?.kind).toBe('back');
  });

  test('set back twice is held by both', () => {
    const { clock, jump } = tablet();
    jump(-hourMs);
    clock.nowMs();
    jump(-hourMs);
    expect(clock.nowMs()).toBe(sixMs);
    expect(clock.slip.value?.byMs).toBe(2 * hourMs);
  });

  test('by a few seconds is no slip, and the reading waits', () => {
    const { clock, pass, jump } = tablet();
    jump(-20_000);
    expect(clock.nowMs()).toBe(sixMs);
    pass(30_000);
    expect(clock.nowMs()).toBe(sixMs + 10_000);
    expect(clock.slip.value).toBeNull();
  });

  test('while the page was closed: the newest entry is the least that it is', () => {
    const { clock, pass, jump } = tablet();
    jump(-hourMs);
    const opened = createSteadyClock(() => ({ wallMs: sixMs - hourMs, elapsedMs: 0 }));
    opened.sawEntry(sixMs - minuteMs);
    expect(opened.nowMs()).toBe(sixMs - minuteMs);
    expect(opened.slip.value).toMatchObject({ kind: 'behind-log', byMs: 59 * minuteMs });
    pass(0);
    expect(clock.nowMs()).toBe(sixMs);
  });
});

describe('a clock set ahead', () => {
  test('is believed and told where it is more than a tablet sleeps; a person may say that it is right', () => {
    const { clock, pass, jump } = tablet();
    jump(hourMs);
    expect(clock.nowMs()).toBe(sixMs + hourMs);
    expect(clock.slip.value).toBeNull();
    jump(9 * hourMs);
    pass(1000);
    expect(clock.nowMs()).toBe(sixMs + 10 * hourMs + 1000);
    expect(clock.slip.value).toMatchObject({ kind: 'ahead', byMs: 9 * hourMs });
    clock.trust();
    pass(1000);
    clock.nowMs();
    expect(clock.slip.value).toBeNull();
  });
});

describe('the server’s time', () => {
  test('comes before the tablet’s clock and before entries of tablets that run ahead', () => {
    const { clock, pass } = tablet();
    clock.sawEntry(sixMs + 24 * hourMs);
    expect(clock.nowMs()).toBe(sixMs + 24 * hourMs);
    clock.sawServer(sixMs + 5 * minuteMs);
    expect(clock.nowMs()).toBe(sixMs + 5 * minuteMs);
    expect(clock.slip.value).toMatchObject({ kind: 'behind-server', byMs: 5 * minuteMs });
    clock.sawEntry(sixMs + 24 * hourMs);
    pass(minuteMs);
    expect(clock.nowMs()).toBe(sixMs + 6 * minuteMs);
  });

  test('that agrees clears what was told', () => {
    const { clock, jump } = tablet();
    jump(5 * hourMs);
    clock.nowMs();
    expect(clock.slip.value?.kind).toBe('ahead');
    clock.sawServer(sixMs + 5 * hourMs + 2000);
    expect(clock.slip.value).toBeNull();
  });

  test('holds back a clock that is ahead of it', () => {
    const { clock, pass, jump } = tablet();
    jump(hourMs);
    clock.nowMs();
    clock.sawServer(sixMs);
    pass(minuteMs);
    expect(clock.nowMs()).toBe(sixMs + minuteMs);
    expect(clock.slip.value).toMatchObject({ kind: 'ahead-of-server', byMs: hourMs });
    jump(-hourMs);
    expect(clock.nowMs()).toBe(sixMs + minuteMs);
    expect(clock.slip.value).toBeNull();
  });
});

const event = fc.record({
  pass: fc.integer({ min: 0, max: 30 * minuteMs }),
  jump: fc.oneof(fc.constant(0), fc.integer({ min: -26 * hourMs, max: 26 * hourMs })),
  entry: fc.option(fc.integer({ min: 0, max: hourMs })),
});

test('no reading goes back, none falls behind time elapsed by more than a step, and none behind an entry known', () => {
  fc.assert(
    fc.property(fc.array(event, { maxLength: 20 }), (events) => {
      let look = { wallMs: sixMs, elapsedMs: 0 };
      let reading: Reading = firstReading(look);
      let newestMs = 0;
      for (const { pass, jump, entry } of events) {
        look = { wallMs: look.wallMs + pass + jump, elapsedMs: look.elapsedMs + pass };
        const next = nextReading(reading, look);
        expect(next.nowMs).toBeGreaterThanOrEqual(reading.nowMs + Math.max(0, pass - CLOCK_STEP_MS));
        expect(next.nowMs).toBeGreaterThanOrEqual(newestMs);
        if (jump < -CLOCK_STEP_MS - CLOCK_AHEAD_MS && reading.heldMs === 0)
          expect(next.slip?.kind).toBe('back');
        reading = next;
        if (entry === null) continue;
        newestMs = Math.max(newestMs, reading.nowMs - 30 * minuteMs + entry);
        reading = afterEntry(reading, look, newestMs);
        expect(reading.nowMs).toBeGreaterThanOrEqual(newestMs);
      }
    }),
  );
});
