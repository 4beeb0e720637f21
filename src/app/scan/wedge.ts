// Which keys are one scan of a keyboard-wedge scanner, and which are a person typing?
// Method: a state machine over plain events. Terminator first, prefix if the plant sets one, pace last; a scan is capped
// by silence and never by its total time, as a label of 300 characters over slow Bluetooth takes half a minute.
// Refused: pace alone (fast typists and slow scanners overlap) and reading the focused field afterwards (the scan is
// then already in the wrong place). Keys are held back until it is clear whose they are, and given back if a person's.

import { altDigitsToChar, type KeyDown, type KeyReading, keyMeaning, LOST } from './wedge-keys.ts';

/** Where keys go at this moment: nowhere that types, a field a person may type in, or the hidden field kept for Android. */
export type WedgeTarget = 'none' | 'field' | 'sink';

export type WedgeEvent =
  | ({
      readonly type: 'keydown';
      readonly timeMs: number;
      readonly target: WedgeTarget;
      readonly value: string;
    } & KeyDown)
  | { readonly type: 'keyup'; readonly timeMs: number; readonly key: string; readonly code: string }
  | { readonly type: 'input'; readonly timeMs: number; readonly target: WedgeTarget; readonly value: string }
  | { readonly type: 'tick'; readonly timeMs: number };

export interface WedgeSettings extends KeyReading {
  /** Longest pause between two keys of one scan where nobody can be typing. Slow Bluetooth sends a key each 120 ms. */
  readonly gapMs: number;
  /** Longest pause between two keys that still cannot be a person typing into a field. */
  readonly fastGapMs: number;
  /** How long a scan may stall when its terminator is still to come. */
  readonly stallMs: number;
  /** How long after a scan a stray terminator still belongs to it. */
  readonly lateMs: number;
  readonly terminators: readonly ('Enter' | 'Tab')[];
  /** `terminator`: always comes. `silence`: never comes. `learn`: expected from the first time it was seen, waited for until two scans came without. */
  readonly ending: 'terminator' | 'silence' | 'learn';
  /** What the scanner sends before each scan, or empty. */
  readonly prefix: string;
}

export const DEFAULT_WEDGE_SETTINGS: WedgeSettings = {
  gapMs: 200,
  fastGapMs: 35,
  stallMs: 800,
  lateMs: 700,
  terminators: ['Enter', 'Tab'],
  ending: 'learn',
  prefix: '',
  substitutes: {},
  read: 'layout',
};

/** This many keys at scanner pace are a scan even inside a field. */
const BURST_KEYS = 4;
/** So many scans in a row without a terminator teach that none will come. */
const SILENT_ENDS = 2;
/** Fewest characters with a terminator: one alone may be a person's key before Enter. */
const LEAST_ENDED = 2;

export interface WedgeScan {
  readonly text: string;
  readonly startMs: number;
  readonly endMs: number;
  readonly endedBy: 'Enter' | 'Tab' | 'silence';
  /** Mean time between two characters; null for a single one. */
  readonly paceMs: number | null;
  /** Keys that say nothing and came in the middle, by name; each is U+FFFD in the text. */
  readonly unknownKeys: readonly string[];
}

export interface WedgeState {
  readonly phase: 'idle' | 'undecided' | 'burst';
  readonly target: WedgeTarget;
  readonly text: string;
  /** Characters kept from the focused element, to be given back if a person typed them. */
  readonly held: string;
  readonly keys: number;
  readonly startMs: number;
  readonly lastMs: number;
  readonly altDigits: string | null;
  readonly unknownKeys: readonly string[];
  /** Key positions whose release must be kept from the page as well. */
  readonly swallowedCodes: readonly string[];
  /** Value of the focused field before a key that could not be identified. */
  readonly valueBefore: string | null;
  /** Value to put back into a field if what was typed into it turns out to be a scan. */
  readonly fieldBefore: string | null;
  readonly terminatorSeen: boolean;
  /** Scans in a row that ended by silence. */
  readonly silentEnds: number;
  readonly endedMs: number | null;
  readonly lastCut: string | null;
}

export interface WedgeStep {
  readonly state: WedgeState;
  /** Keep this event from the page. */
  readonly swallow: boolean;
  readonly scan?: WedgeScan;
  /** A scan that stopped before its terminator: half a label, to be scanned again. */
  readonly cut?: WedgeScan;
  /** Characters that a person typed, to be given back to the element that had the focus. */
  readonly release?: string;
  /** Value the field has to get back, as a scan went into it key by key. */
  readonly takeBack?: string;
  /** Send a tick at this time; null when there is nothing to wait for. */
  readonly wakeAtMs: number | null;
}

export const EMPTY_WEDGE_STATE: WedgeState = {
  phase: 'idle',
  target: 'none',
  text: '',
  held: '',
  keys: 0,
  startMs: 0,
  lastMs: 0,
  altDigits: null,
  unknownKeys: [],
  swallowedCodes: [],
  valueBefore: null,
  fieldBefore: null,
  terminatorSeen: false,
  silentEnds: 0,
  endedMs: null,
  lastCut: null,
};

type Outcome = Omit<WedgeStep, 'wakeAtMs'>;

/** One event further. Pure: the same state, event and settings always give the same step. */
export function assembleWedge(
  state: WedgeState,
  event: WedgeEvent,
  settings: WedgeSettings = DEFAULT_WEDGE_SETTINGS,
): WedgeStep {
  const isOver = state.phase !== 'idle' && event.timeMs - state.lastMs >= silenceMs(state, settings);
  const before: Outcome = isOver ? finishBySilence(state, settings) : { state, swallow: false };
  const after = take(before.state, event, settings);
  const merged: Outcome = { ...before, ...after };
  const release = (before.release ?? '') + (after.release ?? '');
  const next = merged.state;
  return {
    ...merged,
    ...(release === '' ? {} : { release }),
    wakeAtMs: next.phase === 'idle' ? null : next.lastMs + silenceMs(next, settings),
  };
}

function expectsTerminator(state: WedgeState, settings: WedgeSettings): boolean {
  return settings.ending === 'terminator' || (settings.ending === 'learn' && state.terminatorSeen);
}

function silenceMs(state: WedgeState, settings: WedgeSettings): number {
  if (state.phase === 'undecided' && state.target === 'field') return settings.fastGapMs;
  if (state.phase !== 'burst' || settings.ending === 'silence') return settings.gapMs;
  // Until it has been learnt that no terminator comes, a pause may be a stall in the middle of a label.
  const mayStall = expectsTerminator(state, settings) || state.silentEnds < SILENT_ENDS;
  return mayStall ? settings.stallMs : settings.gapMs;
}

function toIdle(state: WedgeState): WedgeState {
  const { swallowedCodes, terminatorSeen, silentEnds, endedMs, lastCut } = state;
  return { ...EMPTY_WEDGE_STATE, swallowedCodes, terminatorSeen, silentEnds, endedMs, lastCut };
}

function toScan(state: WedgeState, endedBy: WedgeScan['endedBy'], prefix: string): WedgeScan {
  const text = prefix !== '' && state.text.startsWith(prefix) ? state.text.slice(prefix.length) : state.text;
  const paceMs = state.keys > 1 ? (state.lastMs - state.startMs) / (state.keys - 1) : null;
  return {
    text,
    startMs: state.startMs,
    endMs: state.lastMs,
    endedBy,
    paceMs,
    unknownKeys: state.unknownKeys,
  };
}

function finishBySilence(state: WedgeState, settings: WedgeSettings): Outcome {
  const idle = { ...toIdle(state), endedMs: state.lastMs + silenceMs(state, settings) };
  const takeBack = state.fieldBefore === null ? {} : { takeBack: state.fieldBefore };
  if (state.phase !== 'burst' || state.keys < LEAST_ENDED) return giveBack(state);
  const scan = toScan(state, 'silence', settings.prefix);
  // The same text cut twice is no stall: this scanner sends no terminator.
  const isWhole = !expectsTerminator(state, settings) || state.lastCut === scan.text;
  if (!isWhole) return { state: { ...idle, lastCut: scan.text }, swallow: false, cut: scan, ...takeBack };
  return {
    state: { ...idle, terminatorSeen: false, silentEnds: state.silentEnds + 1, lastCut: null },
    swallow: false,
    scan,
    ...takeBack,
  };
}

/** Back to idle; what was held goes back to the person who typed it. */
function giveBack(state: WedgeState): Outcome {
  return { state: toIdle(state), swallow: false, ...(state.held === '' ? {} : { release: state.held }) };
}

function take(state: WedgeState, event: WedgeEvent, settings: WedgeSettings): Outcome {
  switch (event.type) {
    case 'tick':
      return { state, swallow: false };
    case 'keyup':
      return takeKeyUp(state, event, settings);
    case 'input':
      return takeInput(state, event, settings);
    case 'keydown':
      return takeKeyDown(state, event, settings);
  }
}

/** Alt was let go unseen: its digits count before the next key does. */
function withAltDigits(state: WedgeState, timeMs: number, settings: WedgeSettings): WedgeState {
  if (state.altDigits === null || state.altDigits === '') return state;
  return withChar({ ...state, altDigits: '' }, altDigitsToChar(state.altDigits), {
    timeMs,
    settings,
    isHeld: false,
  });
}

function takeKeyDown(
  given: WedgeState,
  event: Extract<WedgeEvent, { type: 'keydown' }>,
  settings: WedgeSettings,
): Outcome {
  const isActive = given.phase !== 'idle';
  if (event.repeat) return { state: given, swallow: isActive };
  const meaning = keyMeaning(event, isActive, settings);
  const state = meaning.kind === 'alt-digit' ? given : withAltDigits(given, event.timeMs, settings);
  const started = isActive ? state : { ...state, target: event.target };
  switch (meaning.kind) {
    case 'char': {
      const next = withChar({ ...started, altDigits: null }, meaning.char, {
        timeMs: event.timeMs,
        settings,
        isHeld: true,
      });
      return swallowing(next, event.code);
    }
    case 'alt-digit': {
      const start = isActive ? started : { ...started, phase: 'undecided' as const, startMs: event.timeMs };
      return swallowing(
        { ...start, lastMs: event.timeMs, altDigits: (state.altDigits ?? '') + meaning.digit },
        event.code,
      );
    }
    case 'end':
      return takeEnd(started, { by: meaning.by, code: event.code, timeMs: event.timeMs }, settings);
    case 'modifier': {
      const touched = isActive ? { ...state, lastMs: event.timeMs } : state;
      return { state: touched, swallow: isActive && event.key === 'Alt' };
    }
    case 'unidentified': {
      const fieldBefore = isActive ? state.fieldBefore : event.target === 'field' ? event.value : null;
      const touched = { ...started, valueBefore: event.value, fieldBefore };
      return { state: isActive ? { ...touched, lastMs: event.timeMs } : touched, swallow: false };
    }
    default: {
      if (state.phase !== 'burst') return giveBack(state);
      const lost = withChar(state, LOST, { timeMs: event.timeMs, settings, isHeld: false });
      return swallowing({ ...lost, unknownKeys: [...state.unknownKeys, event.key] }, event.code);
    }
  }
}

function takeEnd(
  state: WedgeState,
  end: { readonly by: 'Enter' | 'Tab'; readonly code: string; readonly timeMs: number },
  settings: WedgeSettings,
): Outcome {
  const isTerminator = settings.terminators.includes(end.by);
  if (isTerminator && state.phase !== 'idle' && [...state.text].length >= LEAST_ENDED) {
    const scan = toScan(state, end.by, settings.prefix);
    const idle = {
      ...toIdle(state),
      terminatorSeen: true,
      silentEnds: 0,
      endedMs: end.timeMs,
      lastCut: null,
    };
    const takeBack = state.fieldBefore === null ? {} : { takeBack: state.fieldBefore };
    return { ...swallowing(idle, end.code), scan, ...takeBack };
  }
  const isLate = isTerminator && state.endedMs !== null && end.timeMs - state.endedMs < settings.lateMs;
  return isLate ? swallowing(toIdle(state), end.code) : giveBack(state);
}

function takeKeyUp(
  state: WedgeState,
  event: Extract<WedgeEvent, { type: 'keyup' }>,
  settings: WedgeSettings,
): Outcome {
  if (event.key === 'Alt' && state.altDigits !== null && state.altDigits !== '') {
    return { state: { ...withAltDigits(state, event.timeMs, settings), altDigits: null }, swallow: true };
  }
  if (!state.swallowedCodes.includes(event.code)) return { state, swallow: false };
  return {
    state: { ...state, swallowedCodes: state.swallowedCodes.filter((code) => code !== event.code) },
    swallow: true,
  };
}

function takeInput(
  state: WedgeState,
  event: Extract<WedgeEvent, { type: 'input' }>,
  settings: WedgeSettings,
): Outcome {
  const before = state.valueBefore ?? (event.target === 'sink' ? '' : null);
  if (before === null) return { state, swallow: false };
  const added = event.value.startsWith(before) ? [...event.value.slice(before.length)] : [];
  // More than one at once in a field is a suggestion tapped or a paste: a person's.
  if (added.length === 0 || (added.length > 1 && event.target === 'field')) {
    return {
      state: { ...toIdle(state), valueBefore: event.target === 'sink' ? event.value : null },
      swallow: false,
    };
  }
  const start = state.phase === 'idle' ? { ...state, target: event.target } : state;
  const next = added.reduce(
    (each, char) => withChar(each, char, { timeMs: event.timeMs, settings, isHeld: false }),
    start,
  );
  return { state: { ...next, valueBefore: event.value }, swallow: false };
}

function withChar(
  state: WedgeState,
  char: string,
  how: { readonly timeMs: number; readonly settings: WedgeSettings; readonly isHeld: boolean },
): WedgeState {
  const isFirst = state.keys === 0;
  const text = state.text + char;
  const keys = state.keys + 1;
  const { prefix } = how.settings;
  const isControl = char < ' ';
  const isSure =
    state.phase === 'burst' || isControl || keys >= BURST_KEYS || (prefix !== '' && text === prefix);
  return {
    ...state,
    phase: isSure ? 'burst' : 'undecided',
    text,
    keys,
    held: how.isHeld && !isControl ? state.held + char : state.held,
    startMs: isFirst ? how.timeMs : state.startMs,
    lastMs: how.timeMs,
  };
}

function swallowing(state: WedgeState, code: string): Outcome {
  return { state: { ...state, swallowedCodes: [...state.swallowedCodes.slice(-7), code] }, swallow: true };
}
