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
  const { document } = page;
  const settings = options.settings ?? (() => DEFAULT_WEDGE_SETTINGS);
  const sink = (options.keepSink ?? /Android/.test(page.navigator.userAgent)) ? createSink(document) : null;
  let state: WedgeState = EMPTY_WEDGE_STATE;
  let heldFrom: Element | null = null;
  let timer: number | undefined;
  let isReleasing = false;

  function step(event: WedgeEvent): WedgeStep {
    const focused = deepFocus(document);
    const wasIdle = state.phase === 'idle';
    const result = assembleWedge(state, event, settings());
    state = result.state;
    // Anything given back belongs to the element that had the focus when the keys were held, not to a later one.
    if (result.release !== undefined) release(result.release, heldFrom);
    if (wasIdle || result.release !== undefined) heldFrom = focused;
    if (result.takeBack !== undefined) putBack(result.takeBack, heldFrom);
    if (sink && (result.scan ?? result.cut)) clearSink(sink);
    if (result.cut) options.onCut?.(result.cut);
    if (result.scan) deliver(result.scan);
    arm(result.wakeAtMs);
    return result;
  }

  function deliver(scan: WedgeScan): void {
    if (options.onRaw?.(scan) === false) return;
    stream.push({ codes: [textToScannedCode(scan.text)], via: 'wedge', atMs: options.nowMs() });
  }

  function release(text: string, target: Element | null): void {
    if (!target?.isConnected) return;
    isReleasing = true;
    try {
      giveBackText(document, target, text);
    } finally {
      isReleasing = false;
    }
  }

  function arm(wakeAtMs: number | null, isSecond = false): void {
    page.clearTimeout(timer);
    if (wakeAtMs === null) return;
    timer = page.setTimeout(
      () => {
        const lateMs = page.performance.now() - wakeAtMs;
        if (lateMs > HELD_UP_MS && !isSecond) arm(page.performance.now() + 1, true);
        else step({ type: 'tick', timeMs: Math.max(wakeAtMs, page.performance.now()) });
      },
      Math.max(0, wakeAtMs - page.performance.now()),
    );
  }

  function targetOf(event: Event): WedgeTarget {
    const target = event.composedPath()[0];
    if (sink !== null && target === sink) return 'sink';
    return isElement(target) && target.matches(FIELDS) ? 'field' : 'none';
  }

  function keep(event: Event): void {
    event.preventDefault();
    event.stopImmediatePropagation();
  }

  function onKeyDown(event: KeyboardEvent): void {
    const { key, code, repeat, timeStamp } = event;
    const result = step({
      type: 'keydown',
      key,
      code,
      repeat,
      ctrl: event.ctrlKey,
      alt: event.altKey,
      shift: event.shiftKey,
      meta: event.metaKey,
      altGraph: event.getModifierState('AltGraph'),
      timeMs: timeStamp,
      target: targetOf(event),
      value: fieldValue(event),
    });
    if (result.swallow) keep(event);
  }

  function onKeyUp(event: KeyboardEvent): void {
    if (step({ type: 'keyup', key: event.key, code: event.code, timeMs: event.timeStamp }).swallow)
      keep(event);
  }

  function onInput(event: Event): void {
    if (isReleasing) return;
    step({ type: 'input', timeMs: event.timeStamp, target: targetOf(event), value: fieldValue(event) });
  }

  function onClick(event: MouseEvent): void {
    // A tapped button keeps the focus, and the next scanner's Enter would be aimed at it. A keyboard's click has detail 0.
    const focused = deepFocus(document);
    if (event.detail > 0 && focused instanceof HTMLElement && !focused.matches(FIELDS)) focused.blur();
    if (sink) focusSink(document, sink);
  }

  const capture = { capture: true };
  page.addEventListener('keydown', onKeyDown, capture);
  page.addEventListener('keyup', onKeyUp, capture);
  page.addEventListener('input', onInput, capture);
  page.addEventListener('click', onClick);
  if (sink) focusSink(document, sink);
  return () => {
    page.clearTimeout(timer);
    page.removeEventListener('keydown', onKeyDown, capture);
    page.removeEventListener('keyup', onKeyUp, capture);
    page.removeEventListener('input', onInput, capture);
    page.removeEventListener('click', onClick);
    sink?.remove();
  };
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

function clearSink(sink: HTMLInputElement): void {
  sink.value = '';
}

/** Focuses the hidden field when nothing else has the focus; inside an open dialog, as the rest of the page is inert. */
function focusSink(document: Document, sink: HTMLInputElement): void {
  const dialogs = document.querySelectorAll('dialog[open]');
  const home = dialogs[dialogs.length - 1] ?? document.body;
  if (sink.parentElement !== home) home.append(sink);
  const focused = deepFocus(document);
  if (focused === null || focused === document.body) sink.focus({ preventScroll: true });
}
