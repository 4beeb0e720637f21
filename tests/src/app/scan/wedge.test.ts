import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  assembleWedge,
  DEFAULT_WEDGE_SETTINGS,
  EMPTY_WEDGE_STATE,
  type WedgeEvent,
} from '../../../../src/app/scan/wedge.ts';
import { keyDown, run, scannerEvents } from './wedge-streams.ts';

// Header, format 06, group and record separators and end of transmission as ISO/IEC 15434 lays them down; data invented.
const ENVELOPE = '[)>\u001e06\u001dPCUST-0042\u001d1PABC0603-103\u001dQ4000\u001d1TLOT77\u001e\u0004';

describe('assembleWedge() on scanner streams', () => {
  const rows: readonly (readonly [
    reason: string,
    text: string,
    options: Parameters<typeof scannerEvents>[1],
  ])[] = [
    ['a fast cabled scanner', 'REEL-000123', { gapMs: 2 }],
    ['an ordinary scanner', 'REEL-000123', { gapMs: 20 }],
    ['a Bluetooth scanner', 'REEL-000123', { gapMs: 60 }],
    ['the slowest Bluetooth seen', 'REEL-000123', { gapMs: 120 }],
    ['control characters by Ctrl', ENVELOPE, { controls: 'ctrl' }],
    ['control characters by Ctrl, slow', ENVELOPE, { controls: 'ctrl', gapMs: 120 }],
    ['control characters by Alt and number pad', ENVELOPE, { controls: 'alt', gapMs: 8 }],
    ['a tabulator at the end', 'REEL-000123', { end: 'Tab' }],
    ['no terminator', 'REEL-000123', { end: null }],
    ['blanks in the text', ' A B  C', { gapMs: 4 }],
    ['300 characters at once', 'X1-'.repeat(100), { gapMs: 3 }],
    ['300 characters over slow Bluetooth: 36 seconds', 'X1-'.repeat(100), { gapMs: 120 }],
    ['two characters with a terminator', '07', { gapMs: 10 }],
  ];
  for (const [reason, text, options] of rows) {
    it(`reads ${reason}`, () => {
      const { scans, cuts, passed, released } = run(scannerEvents(text, options));
      expect(scans.map((scan) => scan.text)).toEqual([text]);
      expect(cuts).toEqual([]);
      expect(released).toBe('');
      expect(passed.filter((key) => !['Control', 'Alt'].includes(key))).toEqual([]);
    });
  }

  it('reads a substitute key the plant has set as the group separator', () => {
    const settings = { ...DEFAULT_WEDGE_SETTINGS, substitutes: { F8: '\u001d', '~': '\u001d' } };
    expect(run(scannerEvents('AB\u001dCD', { controls: 'f8' }), settings).scans[0]?.text).toBe('AB\u001dCD');
    expect(run(scannerEvents('AB~CD'), settings).scans[0]?.text).toBe('AB\u001dCD');
  });

  it('reads Ctrl by key position inside a burst, as a US scanner on a German tablet sends it', () => {
    const burst = scannerEvents('ABCD', { end: null });
    const gs = keyDown('+', 1020, { code: 'BracketRight', ctrl: true });
    const { scans } = run([...burst, gs, keyDown('E', 1025), keyDown('Enter', 1030)]);
    expect(scans[0]?.text).toBe('ABCD\u001dE');
  });

  it('reads the third level of a European layout as a character and not as a control sequence', () => {
    const burst = scannerEvents('ABCD', { end: null });
    const bracket = keyDown(']', 1020, { code: 'Digit9', ctrl: true, alt: true, altGraph: true });
    expect(run([...burst, bracket, keyDown('Enter', 1025)]).scans[0]?.text).toBe('ABCD]');
  });

  it('reads by key position where the scanner is known to send US keys', () => {
    const settings = { ...DEFAULT_WEDGE_SETTINGS, read: 'us-positions' as const };
    const azerty = [
      keyDown('q', 1000, { code: 'KeyA' }),
      keyDown('&', 1005, { code: 'Digit1' }),
      keyDown('Q', 1010, { code: 'KeyA', shift: true }),
      keyDown(')', 1015, { code: 'Minus' }),
      keyDown('Enter', 1020),
    ];
    expect(run(azerty, settings).scans[0]?.text).toBe('a1A-');
  });

  it('keeps two scans apart that follow each other at once', () => {
    const first = scannerEvents('REEL-1', { startMs: 1000 });
    const second = scannerEvents('SLOT-9', { startMs: 1036 });
    expect(run([...first, ...second]).scans.map(({ text }) => text)).toEqual(['REEL-1', 'SLOT-9']);
  });

  it('joins a scan that stalled when its terminator is known to come', () => {
    const start = run(scannerEvents('FIRST', { startMs: 0 })).state;
    const stalled = [
      ...scannerEvents('REEL-', { startMs: 5000, end: null }),
      ...scannerEvents('77', { startMs: 5600 }),
    ];
    const { scans, cuts } = run(stalled, DEFAULT_WEDGE_SETTINGS, start);
    expect([scans.map(({ text }) => text), cuts]).toEqual([['REEL-77'], []]);
  });

  it('calls a scan without its known terminator cut, and whole when the same comes again', () => {
    const start = run(scannerEvents('FIRST', { startMs: 0 })).state;
    const once = run(scannerEvents('REEL-77', { startMs: 5000, end: null }), DEFAULT_WEDGE_SETTINGS, start);
    expect([once.scans, once.cuts.map(({ text }) => text)]).toEqual([[], ['REEL-77']]);
    const again = run(
      scannerEvents('REEL-77', { startMs: 9000, end: null }),
      DEFAULT_WEDGE_SETTINGS,
      once.state,
    );
    expect([again.scans.map(({ text }) => text), again.cuts]).toEqual([['REEL-77'], []]);
  });

  it('joins a first scan that stalls, before anything was learnt about the scanner', () => {
    const stalled = [...scannerEvents('REEL-', { end: null }), ...scannerEvents('77', { startMs: 1600 })];
    expect(run(stalled).scans.map(({ text }) => text)).toEqual(['REEL-77']);
  });

  it('learns from two silent ends that no terminator comes, and waits no longer than a gap from then on', () => {
    const pair = [
      ...scannerEvents('REEL-1', { end: null }),
      ...scannerEvents('REEL-2', { startMs: 5000, end: null }),
    ];
    const { state } = run(pair);
    const third = scannerEvents('REEL-3', { startMs: 9000, end: null });
    const last = third.reduce(
      (step, event) => assembleWedge(step.state, event),
      assembleWedge(state, { type: 'tick', timeMs: 8000 }),
    );
    expect(last.wakeAtMs).toBe(9000 + 5 * 5 + DEFAULT_WEDGE_SETTINGS.gapMs);
  });

  it('swallows a terminator that comes after the scan was given out, so that it presses nothing', () => {
    const atMs = 1030 + DEFAULT_WEDGE_SETTINGS.stallMs + 500;
    const { scans, passed } = run([...scannerEvents('REEL-77', { end: null }), keyDown('Enter', atMs)]);
    expect([scans.map(({ endedBy }) => endedBy), passed]).toEqual([['silence'], []]);
  });

  it('takes the prefix off and knows a scan by it even in a field at any pace', () => {
    const settings = { ...DEFAULT_WEDGE_SETTINGS, prefix: '\u0002', substitutes: { F9: '\u0002' } };
    const events = [
      keyDown('F9', 990, { target: 'field' }),
      ...scannerEvents('AB12', { gapMs: 90, target: 'field' }),
    ];
    const { scans, released } = run(events, settings);
    expect([scans[0]?.text, released]).toEqual(['AB12', '']);
  });

  it('marks a key that says nothing in the middle of a scan and keeps it from the page', () => {
    const events = [...scannerEvents('ABCD', { end: null }), keyDown('F5', 1020), keyDown('Enter', 1025)];
    const { scans, passed } = run(events);
    expect([scans[0]?.text, scans[0]?.unknownKeys, passed]).toEqual(['ABCD\ufffd', ['F5'], []]);
  });

  it('ignores keys that repeat by being held in the middle of a scan', () => {
    const events = [
      ...scannerEvents('ABCD', { end: null }),
      keyDown('D', 1020, { repeat: true }),
      keyDown('Enter', 1025),
    ];
    expect(run(events).scans[0]?.text).toBe('ABCD');
  });

  it('swallows the release of each key it swallowed and of no other', () => {
    const down = assembleWedge(EMPTY_WEDGE_STATE, keyDown(' ', 1000));
    const up = assembleWedge(down.state, { type: 'keyup', key: ' ', code: 'Space', timeMs: 1001 });
    const other = assembleWedge(up.state, { type: 'keyup', key: 'x', code: 'KeyX', timeMs: 1002 });
    expect([down.swallow, up.swallow, other.swallow]).toEqual([true, true, false]);
  });

  it('gives every text back whole for any pace up to 120 ms and any mix of control characters', () => {
    const char = fc.constantFrom(...'ABCxyz0189-/ .', '\u001d', '\u001e', '\u001f', '\u001c', '\u0004');
    const texts = fc
      .string({ unit: char, minLength: 2, maxLength: 60 })
      .filter((text) => text.charAt(0) !== '\u0004');
    fc.assert(
      fc.property(
        texts,
        fc.integer({ min: 1, max: 120 }),
        fc.constantFrom('ctrl', 'alt'),
        (text, gapMs, controls) => {
          const { scans } = run(
            scannerEvents(text, { gapMs: Math.max(gapMs, 6), controls: controls as 'ctrl' | 'alt' }),
          );
          expect(scans.map((scan) => scan.text)).toEqual([text]);
        },
      ),
      { seed: 20_481, numRuns: 300 },
    );
  });
});

describe('assembleWedge() with a person at the keys', () => {
  const typed = (text: string, gapMs: number, startMs = 1000) =>
    scannerEvents(text, { gapMs, startMs, target: 'field', end: null });

  it('gives slow typing in a field back, key by key, and lets Enter through', () => {
    const events = [...typed('part 42', 180), keyDown('Enter', 1000 + 7 * 180, { target: 'field' })];
    const { released, scans, passed } = run(events);
    expect([released, scans, passed]).toEqual(['part 42', [], ['Enter']]);
  });

  it('gives fast typing in a field back as well', () => {
    expect(run(typed('quick brown fox', 70)).released).toBe('quick brown fox');
  });

  it('keeps a burst out of the field that has the focus', () => {
    const { released, scans } = run(scannerEvents('REEL-000123', { gapMs: 10, target: 'field' }));
    expect([released, scans.map(({ text }) => text)]).toEqual(['', ['REEL-000123']]);
  });

  it('keeps a slow scanner out of the field once its pace is set', () => {
    const settings = { ...DEFAULT_WEDGE_SETTINGS, fastGapMs: 140 };
    const { released, scans } = run(scannerEvents('REEL-000123', { gapMs: 110, target: 'field' }), settings);
    expect([released, scans.map(({ text }) => text)]).toEqual(['', ['REEL-000123']]);
  });

  it('tells typing and a scan in the middle of it apart', () => {
    const events = [
      ...typed('ab', 150, 1000),
      ...scannerEvents('REEL-77', { startMs: 1500, gapMs: 4, target: 'field' }),
      ...typed('cd', 150, 2500),
    ];
    const { released, scans } = run(events);
    expect([released, scans.map(({ text }) => text)]).toEqual(['abcd', ['REEL-77']]);
  });

  it('lets Enter, Tab, arrows, Escape and shortcuts through when no scan is under way', () => {
    const keys: WedgeEvent[] = [
      keyDown('Enter', 1000),
      keyDown('Tab', 2000),
      keyDown('ArrowDown', 3000),
      keyDown('Escape', 4000),
      keyDown('r', 5000, { ctrl: true }),
      keyDown('c', 6000, { meta: true }),
      keyDown('+', 7000, { ctrl: true, code: 'BracketRight' }),
    ];
    expect(run(keys).passed).toEqual(['Enter', 'Tab', 'ArrowDown', 'Escape', 'r', 'c', '+']);
  });

  it('gives a blank on a button back, so that it still presses', () => {
    const { released, scans } = run([keyDown(' ', 1000)]);
    expect([released, scans]).toEqual([' ', []]);
  });

  it('gives held keys back before a Backspace', () => {
    const { released, passed } = run([
      keyDown('a', 1000, { target: 'field' }),
      keyDown('Backspace', 1010, { target: 'field' }),
    ]);
    expect([released, passed]).toEqual(['a', ['Backspace']]);
  });

  it('never loses or repeats a character that a person types at 60 ms or slower', () => {
    const text = fc.string({ unit: fc.constantFrom(...'abcDEF 0123-'), minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(
        text,
        fc.array(fc.integer({ min: 60, max: 900 }), { minLength: 30, maxLength: 30 }),
        (given, gaps) => {
          let timeMs = 1000;
          const events = [...given].map((char, at) => {
            timeMs += gaps[at] ?? 100;
            return keyDown(char, timeMs, { target: 'field' });
          });
          const { released, scans } = run(events);
          expect([released, scans]).toEqual([given, []]);
        },
      ),
      { seed: 7, numRuns: 300 },
    );
  });
});

describe('assembleWedge() on Android', () => {
  /** Keys that name nothing; the text shows only in the value of the field that has the focus. */
  function unnamed(
    text: string,
    options: { gapMs: number; target: 'sink' | 'field'; before?: string },
  ): WedgeEvent[] {
    const { gapMs, target, before = '' } = options;
    return [...text].flatMap((_, at) => {
      const timeMs = 1000 + at * gapMs;
      const value = before + text.slice(0, at);
      return [
        keyDown('Unidentified', timeMs, { code: '', target, value }),
        { type: 'input' as const, timeMs: timeMs + 1, target, value: before + text.slice(0, at + 1) },
      ];
    });
  }

  it('reads the hidden field when keys are unidentified', () => {
    const events = [
      ...unnamed('REEL-77', { gapMs: 12, target: 'sink' }),
      keyDown('Enter', 1100, { target: 'sink' }),
    ];
    expect(run(events).scans.map(({ text }) => text)).toEqual(['REEL-77']);
  });

  it('reads a stream in which only some keys are unidentified', () => {
    const events: WedgeEvent[] = [
      keyDown('A', 1000, { target: 'sink' }),
      keyDown('Unidentified', 1010, { target: 'sink', value: '' }),
      { type: 'input', timeMs: 1011, target: 'sink', value: '#' },
      keyDown('B', 1020, { target: 'sink' }),
      keyDown('Unidentified', 1030, { target: 'sink', value: '#' }),
      { type: 'input', timeMs: 1031, target: 'sink', value: '#:' },
      keyDown('Enter', 1040, { target: 'sink' }),
    ];
    expect(run(events).scans.map(({ text }) => text)).toEqual(['A#B:']);
  });

  it('takes a scan back out of a field that unidentified keys typed into', () => {
    const events = [
      ...unnamed('REEL-77', { gapMs: 12, target: 'field', before: 'note ' }),
      keyDown('Enter', 1100, { target: 'field' }),
    ];
    const { scans, takenBack } = run(events);
    expect([scans.map(({ text }) => text), takenBack]).toEqual([['REEL-77'], ['note ']]);
  });

  it('leaves a person typing on the screen keyboard alone', () => {
    const { scans, takenBack, passed } = run(unnamed('hello', { gapMs: 160, target: 'field' }));
    expect([scans, takenBack, passed.length]).toEqual([[], [], 5]);
  });

  it('leaves a suggestion that was tapped alone', () => {
    const events: WedgeEvent[] = [
      keyDown('Unidentified', 1000, { target: 'field', value: '' }),
      { type: 'input', timeMs: 1001, target: 'field', value: 'feeder' },
    ];
    const { scans, takenBack } = run(events);
    expect([scans, takenBack]).toEqual([[], []]);
  });
});
