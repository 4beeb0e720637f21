// Key streams as scanners of several kinds send them, and a runner that lets the assembler see them with its timer.
// The shapes (Ctrl sequences, Alt with number pad, unidentified keys with the field's value) were observed in Chromium
// and on Android; the texts are invented.

import {
  assembleWedge,
  DEFAULT_WEDGE_SETTINGS,
  EMPTY_WEDGE_STATE,
  type WedgeEvent,
  type WedgeScan,
  type WedgeSettings,
  type WedgeState,
  type WedgeTarget,
} from '../../../../src/app/scan/wedge.ts';

type KeyDownEvent = Extract<WedgeEvent, { type: 'keydown' }>;

export interface StreamOptions {
  readonly startMs?: number;
  readonly gapMs?: number;
  readonly target?: WedgeTarget;
  readonly controls?: 'ctrl' | 'alt' | 'f8';
  readonly end?: 'Enter' | 'Tab' | null;
}

export function keyDown(key: string, timeMs: number, more: Partial<KeyDownEvent> = {}): WedgeEvent {
  return {
    type: 'keydown',
    key,
    code: codeOf(key),
    ctrl: false,
    alt: false,
    shift: /^[A-Z]$/.test(key),
    meta: false,
    altGraph: false,
    repeat: false,
    target: 'none',
    value: '',
    timeMs,
    ...more,
  };
}

function codeOf(key: string): string {
  if (/^[a-z]$/i.test(key)) return `Key${key.toUpperCase()}`;
  if (/^\d$/.test(key)) return `Digit${key}`;
  return { ' ': 'Space', '-': 'Minus', ']': 'BracketRight', Enter: 'Enter', Tab: 'Tab' }[key] ?? '';
}

const CONTROL_KEYS: Readonly<Record<string, readonly [key: string, code: string, shift: boolean]>> = {
  '\u001c': ['\\', 'Backslash', false],
  '\u001d': [']', 'BracketRight', false],
  '\u001e': ['^', 'Digit6', true],
  '\u001f': ['_', 'Minus', true],
  '\u0004': ['d', 'KeyD', false],
};

function controlEvents(char: string, atMs: number, options: StreamOptions): readonly WedgeEvent[] {
  const { target = 'none', controls = 'ctrl' } = options;
  if (controls === 'f8') return [keyDown('F8', atMs, { code: 'F8', target })];
  if (controls === 'alt') {
    const digits = String(char.charCodeAt(0)).padStart(3, '0');
    // With number lock off the digits arrive as the keys below them.
    const names = [
      'Insert',
      'End',
      'ArrowDown',
      'PageDown',
      'ArrowLeft',
      'Clear',
      'ArrowRight',
      'Home',
      'ArrowUp',
      'PageUp',
    ];
    return [
      keyDown('Alt', atMs, { code: 'AltLeft', alt: true, target }),
      ...[...digits].map((digit, at) =>
        keyDown(names[Number(digit)] ?? '', atMs + at, { code: `Numpad${digit}`, alt: true, target }),
      ),
      { type: 'keyup', key: 'Alt', code: 'AltLeft', timeMs: atMs + 3 },
    ];
  }
  const [key, code, shift] = CONTROL_KEYS[char] ?? ['', '', false];
  return [
    keyDown('Control', atMs, { code: 'ControlLeft', ctrl: true, target }),
    keyDown(key, atMs, { code, ctrl: true, shift, target }),
    { type: 'keyup', key, code, timeMs: atMs },
    { type: 'keyup', key: 'Control', code: 'ControlLeft', timeMs: atMs },
  ];
}

/** What a scanner sends for a text. */
export function scannerEvents(text: string, options: StreamOptions = {}): readonly WedgeEvent[] {
  const { startMs = 1000, gapMs = 5, target = 'none', end = 'Enter' } = options;
  const chars = [...text];
  const events = chars.flatMap((char, at): readonly WedgeEvent[] => {
    const timeMs = startMs + at * gapMs;
    if (char < ' ') return controlEvents(char, timeMs, options);
    const down = keyDown(char, timeMs, { target });
    return [down, { type: 'keyup', key: char, code: codeOf(char), timeMs: timeMs + Math.min(1, gapMs) }];
  });
  const endMs = startMs + chars.length * gapMs;
  return end === null ? events : [...events, keyDown(end, endMs, { target })];
}

export interface Ran {
  readonly state: WedgeState;
  readonly scans: readonly WedgeScan[];
  readonly cuts: readonly WedgeScan[];
  readonly released: string;
  readonly takenBack: readonly string[];
  /** Keys that reached the page, by name. */
  readonly passed: readonly string[];
}

/** Runs events with the timer that the step asks for, and on to silence at the end. */
export function run(
  events: readonly WedgeEvent[],
  settings: WedgeSettings = DEFAULT_WEDGE_SETTINGS,
  start: WedgeState = EMPTY_WEDGE_STATE,
): Ran {
  let state = start;
  let wakeAtMs: number | null = null;
  const scans: WedgeScan[] = [];
  const cuts: WedgeScan[] = [];
  const takenBack: string[] = [];
  const passed: string[] = [];
  let released = '';
  const feed = (event: WedgeEvent) => {
    const step = assembleWedge(state, event, settings);
    state = step.state;
    wakeAtMs = step.wakeAtMs;
    if (step.scan) scans.push(step.scan);
    if (step.cut) cuts.push(step.cut);
    if (step.takeBack !== undefined) takenBack.push(step.takeBack);
    released += step.release ?? '';
    if (event.type === 'keydown' && !step.swallow) passed.push(event.key);
  };
  for (const event of events) {
    if (wakeAtMs !== null && wakeAtMs < event.timeMs) feed({ type: 'tick', timeMs: wakeAtMs });
    feed(event);
  }
  if (wakeAtMs !== null) feed({ type: 'tick', timeMs: wakeAtMs });
  return { state, scans, cuts, released, takenBack, passed };
}
