// Ties the wedge assembler to a page: listens before anybody else, keeps a scan's keys from the page, gives a person's back.
// Method: capture phase on the window, event time stamps rather than the time of handling (a busy page delays handling,
// not the stamps). Refused: a focused field as the only catcher, as a dialog or a tap takes the focus away.

import { type ScanStream, textToScannedCode } from './scan.ts';
import {
  assembleWedge,
  DEFAULT_WEDGE_SETTINGS,
  EMPTY_WEDGE_STATE,
  type WedgeEvent,
  type WedgeScan,
  type WedgeSettings,
  type WedgeState,
  type WedgeStep,
  type WedgeTarget,
} from './wedge.ts';

export interface WedgeOptions {
  /** The tablet's clock, milliseconds since 1970. */
  readonly nowMs: () => number;
  /** Read at each key, so that a change in the settings screen holds at once. Default: `DEFAULT_WEDGE_SETTINGS`. */
  readonly settings?: () => WedgeSettings;
  /** A scan that stopped half-way; the task in hand asks for it again. */
  readonly onCut?: (scan: WedgeScan) => void;
  /** Every scan as it came, with pace and unknown keys, for the self-test. `false` keeps it from the stream. */
  readonly onRaw?: (scan: WedgeScan) => unknown;
  /** A key that a person pressed by itself where nothing types: the page's own short cuts. */
  readonly onLone?: (key: string) => void;
  /** Keys of a scan come; what it answers with is called once the scan was taken, or stopped half-way. */
  readonly onKeys?: () => () => void;
  /** Keep a hidden field focused, for systems whose key events name no key. Default: on Android only. */
  readonly keepSink?: boolean;
}

const FIELDS =
  'textarea, [contenteditable=""], [contenteditable="true"], [data-typing], input:not([type=button], [type=submit], ' +
  '[type=reset], [type=checkbox], [type=radio], [type=range], [type=file], [type=color], [type=image])';
const PRESSABLE = 'button, summary, [role=button], [role=checkbox], [role=switch], input';
/** A timer that fires this much late was held up, and keys may still be queued behind it. */
const HELD_UP_MS = 40;

/** Starts listening. Answers how to stop. */
export function attachWedge(page: Window, stream: ScanStream, options: WedgeOptions): () => void {
  const listener = new WedgeListener(page, stream, options);
  return () => listener.close();
}

// A class, as it holds listeners, a timer and a hidden field that have to be let go.
class WedgeListener {
  readonly #page: Window;
  readonly #stream: ScanStream;
  readonly #options: WedgeOptions;
  readonly #sink: HTMLInputElement | null;
  #state: WedgeState = EMPTY_WEDGE_STATE;
  #heldFrom: Element | null = null;
  #timer: number | undefined;
  /** When the timer rings, and when the next tick is due: a timer set anew for each key costs more than one that rings too soon. */
  #ringsAtMs = 0;
  #wakeAtMs: number | null = null;
  /** The timer waits once more for keys that were queued behind it. */
  #isSecond = false;
  #isReleasing = false;
  /** Set while keys of a scan come. */
  #taken: (() => void) | null = null;

  constructor(page: Window, stream: ScanStream, options: WedgeOptions) {
    this.#page = page;
    this.#stream = stream;
    this.#options = options;
    const keepsSink = options.keepSink ?? /Android/.test(page.navigator.userAgent);
    this.#sink = keepsSink ? createSink(page.document) : null;
    page.addEventListener('keydown', this.#onKeyDown, true);
    page.addEventListener('keyup', this.#onKeyUp, true);
    page.addEventListener('input', this.#onInput, true);
    page.addEventListener('click', this.#onClick);
    if (this.#sink) focusSink(page.document, this.#sink);
  }

  close(): void {
    const page = this.#page;
    page.clearTimeout(this.#timer);
    this.#endKeys();
    page.removeEventListener('keydown', this.#onKeyDown, true);
    page.removeEventListener('keyup', this.#onKeyUp, true);
    page.removeEventListener('input', this.#onInput, true);
    page.removeEventListener('click', this.#onClick);
    this.#sink?.remove();
  }

  #step(event: WedgeEvent): WedgeStep {
    const wasIdle = this.#state.phase === 'idle';
    const result = assembleWedge(this.#state, event, this.#options.settings?.() ?? DEFAULT_WEDGE_SETTINGS);
    this.#state = result.state;
    if (result.state.phase === 'burst') this.#taken ??= this.#options.onKeys?.() ?? null;
    const isHeldFrom = wasIdle || result.release !== undefined;
    const focused = isHeldFrom ? deepFocus(this.#page.document) : null;
    // Anything given back belongs to the element that had the focus when the keys were held, not to a later one.
    if (result.release !== undefined) this.#release(result.release);
    if (result.takeBack !== undefined) putBack(result.takeBack, this.#heldFrom);
    if (isHeldFrom) this.#heldFrom = focused;
    if (this.#sink && (result.scan ?? result.cut)) this.#sink.value = '';
    this.#arm(result.wakeAtMs);
    try {
      if (result.cut) this.#options.onCut?.(result.cut);
      if (result.scan) this.#deliver(result.scan);
    } finally {
      if (result.state.phase !== 'burst') this.#endKeys();
    }
    return result;
  }

  #endKeys(): void {
    this.#taken?.();
    this.#taken = null;
  }

  #deliver(scan: WedgeScan): void {
    if (this.#options.onRaw?.(scan) === false) return;
    const atMs = this.#options.nowMs();
    this.#stream.push({ codes: [textToScannedCode(scan.text)], via: 'wedge', atMs });
  }

  #release(text: string): void {
    const target = this.#heldFrom;
    if (!target?.isConnected) return;
    if (text.length === 1 && text !== ' ' && !target.matches(FIELDS)) this.#options.onLone?.(text);
    this.#isReleasing = true;
    try {
      giveBackText(this.#page.document, target, text);
    } finally {
      this.#isReleasing = false;
    }
  }

  #arm(wakeAtMs: number | null): void {
    this.#wakeAtMs = wakeAtMs;
    this.#isSecond = false; // keys came: more of them may be queued
    const isSet = this.#timer !== undefined;
    if (wakeAtMs === null || (isSet && this.#ringsAtMs <= wakeAtMs)) return;
    this.#ring(wakeAtMs);
  }

  #ring(atMs: number): void {
    const page = this.#page;
    page.clearTimeout(this.#timer);
    this.#ringsAtMs = atMs;
    this.#timer = page.setTimeout(
      () => {
        this.#timer = undefined;
        const wakeAtMs = this.#wakeAtMs;
        if (wakeAtMs === null) return;
        const nowMs = page.performance.now();
        if (nowMs < wakeAtMs) this.#ring(wakeAtMs);
        else if (nowMs - atMs > HELD_UP_MS && !this.#isSecond) {
          // Held up: keys may be queued behind this timer that are older than it.
          this.#isSecond = true;
          this.#ring(nowMs + 1);
        } else this.#step({ type: 'tick', timeMs: nowMs });
      },
      Math.max(0, atMs - page.performance.now()),
    );
  }

  #targetOf(event: Event): WedgeTarget {
    const target = event.composedPath()[0];
    if (this.#sink !== null && target === this.#sink) return 'sink';
    return isElement(target) && target.matches(FIELDS) ? 'field' : 'none';
  }

  readonly #onKeyDown = (event: KeyboardEvent): void => {
    const { key, code, repeat } = event;
    const result = this.#step({
      type: 'keydown',
      key,
      code,
      repeat,
      ctrl: event.ctrlKey,
      alt: event.altKey,
      shift: event.shiftKey,
      meta: event.metaKey,
      altGraph: event.getModifierState('AltGraph'),
      timeMs: event.timeStamp,
      target: this.#targetOf(event),
      value: fieldValue(event),
    });
    if (result.swallow) keep(event);
  };

  readonly #onKeyUp = (event: KeyboardEvent): void => {
    const { key, code, timeStamp } = event;
    if (this.#step({ type: 'keyup', key, code, timeMs: timeStamp }).swallow) keep(event);
  };

  readonly #onInput = (event: Event): void => {
    if (this.#isReleasing) return;
    const { timeStamp } = event;
    this.#step({ type: 'input', timeMs: timeStamp, target: this.#targetOf(event), value: fieldValue(event) });
  };

  readonly #onClick = (event: MouseEvent): void => {
    // A tapped button keeps the focus, and the next scanner's Enter would be aimed at it. A keyboard's click has detail 0.
    const { document } = this.#page;
    const focused = deepFocus(document);
    if (event.detail > 0 && focused instanceof HTMLElement && !focused.matches(FIELDS)) focused.blur();
    if (this.#sink) focusSink(document, this.#sink);
  };
}

/** Keeps a key from whatever is on the page; who listens at the window itself, as the alarm does, still hears that there was one. */
function keep(event: Event): void {
  event.preventDefault();
  event.stopPropagation();
}

function isElement(target: EventTarget | null | undefined): target is Element {
  return target instanceof Element;
}

function fieldValue(event: Event): string {
  const target = event.composedPath()[0];
  return target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement ? target.value : '';
}

function deepFocus(document: Document): Element | null {
  let focused = document.activeElement;
  while (focused?.shadowRoot?.activeElement) focused = focused.shadowRoot.activeElement;
  return focused;
}

function giveBackText(document: Document, target: Element, text: string): void {
  if (!target.matches(FIELDS)) {
    // Outside a field only a blank does anything: it presses the control that has the focus.
    if (text === ' ' && target instanceof HTMLElement && target.matches(PRESSABLE)) target.click();
    return;
  }
  // The one call that keeps the caret, the selection and undo as if the keys had never been held.
  if (deepFocus(document) === target && document.execCommand('insertText', false, text)) return;
  if (!(target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement)) return;
  target.value += text;
  target.dispatchEvent(new InputEvent('input', { bubbles: true, data: text, inputType: 'insertText' }));
}

function putBack(value: string, target: Element | null): void {
  if (!(target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement)) return;
  target.value = value;
  target.dispatchEvent(new InputEvent('input', { bubbles: true, inputType: 'historyUndo' }));
}

function createSink(document: Document): HTMLInputElement {
  const sink = document.createElement('input');
  sink.type = 'text';
  for (const [name, value] of [
    ['inputmode', 'none'],
    ['autocomplete', 'off'],
    ['autocorrect', 'off'],
    ['autocapitalize', 'off'],
    ['spellcheck', 'false'],
    ['tabindex', '-1'],
    ['aria-hidden', 'true'],
    ['data-scan-sink', ''],
  ] as const) {
    sink.setAttribute(name, value);
  }
  sink.className = 'scan-sink';
  Object.assign(sink.style, {
    position: 'fixed',
    insetBlockEnd: '0',
    width: '1px',
    height: '1px',
    opacity: '0',
    border: '0',
  });
  return sink;
}

/** Focuses the hidden field when nothing else has the focus; inside an open dialog, as the rest of the page is inert. */
function focusSink(document: Document, sink: HTMLInputElement): void {
  const dialogs = document.querySelectorAll('dialog[open]');
  const home = dialogs[dialogs.length - 1] ?? document.body;
  if (sink.parentElement !== home) home.append(sink);
  const focused = deepFocus(document);
  if (focused === null || focused === document.body) sink.focus({ preventScroll: true });
}
