// A part that arrives late must be shown whenever it arrives, also between a drawing and what follows from that drawing.

import { h, options, render } from 'preact';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { lazy } from '../../../../src/app/frame/lazy.tsx';
import { Node, smallDocument } from '../small-document.ts';

/** Effects that wait for the picture to be painted. */
const afterPaint: (() => void)[] = [];
const { requestAnimationFrame: before } = options;

beforeEach(() => {
  vi.stubGlobal('document', smallDocument);
  options.requestAnimationFrame = (effect) => void afterPaint.push(effect);
});

afterEach(() => {
  vi.unstubAllGlobals();
  if (before) options.requestAnimationFrame = before;
  else delete options.requestAnimationFrame;
});

const paint = () => {
  for (const effect of afterPaint.splice(0)) effect();
};

function draw(part: ReturnType<typeof lazy>): Node {
  const root = new Node(1, 'div');
  render(h(part, {}), root as never); // stands in for an element
  return root;
}

/** A press by the keyboard, each a second after the one before. */
let pressedMs = 0;
function press(root: Node, testId: string): void {
  const button = root.find(testId);
  if (!button) throw new Error(`Cannot press ${testId} as it must be drawn: current value is none`);
  pressedMs += 1000;
  const event = { type: 'click', detail: 0, timeStamp: pressedMs, currentTarget: button, target: button };
  button.listeners.get('click')?.call(button, event);
}

const Verdict = () => h('b', null, 'Right reel');

describe('a part that is fetched when it is first drawn', () => {
  it('stands once it is here', async () => {
    const root = draw(lazy(async () => Verdict, 'soon'));
    expect(root.textContent).toBe('soon');
    paint();
    await expect.poll(() => root.textContent).toBe('Right reel');
  });

  it('stands too where an earlier fetch ends between its drawing and the effects of that', async () => {
    let arrive: (component: typeof Verdict) => void = () => undefined;
    const part = lazy(
      () =>
        new Promise<typeof Verdict>((resolve) => {
          arrive = resolve;
        }),
      'soon',
    );
    part.preload();
    const root = draw(part);
    arrive(Verdict);
    const other = draw(part);
    await expect
      .poll(() => draw(part).textContent) // drawn anew it is there at once
      .toBe('Right reel');
    expect([root.textContent, other.textContent]).toEqual(['soon', 'soon']);
    paint();
    await expect.poll(() => [root.textContent, other.textContent]).toEqual(['Right reel', 'Right reel']);
  });
});

describe('a part that is out of reach', () => {
  const told = 'Part of the app could not be loaded.';
  const reload = vi.fn();
  const server = { answers: false };

  beforeEach(() => {
    reload.mockClear();
    server.answers = false;
    vi.stubGlobal('location', { pathname: '/', reload });
    vi.stubGlobal('fetch', async () => {
      if (!server.answers) throw new TypeError('Failed to fetch');
      return { ok: true };
    });
  });

  /** A part whose first loads fail. */
  function failing(times: number): ReturnType<typeof lazy> {
    let left = times;
    return lazy(async () => {
      left -= 1;
      if (left >= 0) throw new TypeError('Failed to fetch dynamically imported module');
      return Verdict;
    }, 'soon');
  }

  it('says so in its place, and stands once a tap finds it', async () => {
    const root = draw(failing(2));
    paint();
    await expect.poll(() => root.textContent).toContain(told);
    press(root, 'part-again');
    await expect.poll(() => root.textContent).toBe('soon');
    await expect.poll(() => root.textContent).toContain(told);
    press(root, 'part-again');
    await expect.poll(() => root.textContent).toBe('Right reel');
    expect(reload).not.toHaveBeenCalled(); // without a network the page is kept
  });

  it('has the page loaded anew where the server answers and the browser does not ask it again', async () => {
    const root = draw(failing(9));
    paint();
    await expect.poll(() => root.textContent).toContain(told);
    server.answers = true;
    press(root, 'part-again');
    await expect.poll(() => reload.mock.calls.length).toBe(1);
  });
});
