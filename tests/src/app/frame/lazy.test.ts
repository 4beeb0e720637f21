// A part that arrives late must be shown whenever it arrives, also between a drawing and what follows from that drawing.

import { h, options, render } from 'preact';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { lazy } from '../../../../src/app/frame/lazy.tsx';

/** As much of a document's node as drawing a word needs. */
class Node {
  readonly childNodes: Node[] = [];
  readonly attributes: unknown[] = [];
  parentNode: Node | null = null;
  readonly nodeType: number;
  readonly localName: string;
  data: string;

  constructor(nodeType: number, localName: string, data = '') {
    this.nodeType = nodeType;
    this.localName = localName;
    this.data = data;
  }

  get firstChild(): Node | null {
    return this.childNodes[0] ?? null;
  }

  get nextSibling(): Node | null {
    const beside = this.parentNode?.childNodes ?? [];
    return beside[beside.indexOf(this) + 1] ?? null;
  }

  get textContent(): string {
    return this.data + this.childNodes.map((child) => child.textContent).join('');
  }

  insertBefore(child: Node, before: Node | null): Node {
    child.remove();
    child.parentNode = this;
    this.childNodes.splice(before ? this.childNodes.indexOf(before) : this.childNodes.length, 0, child);
    return child;
  }

  removeChild(child: Node): void {
    this.childNodes.splice(this.childNodes.indexOf(child), 1);
    child.parentNode = null;
  }

  remove(): void {
    this.parentNode?.removeChild(this);
  }
}

/** Effects that wait for the picture to be painted. */
const afterPaint: (() => void)[] = [];
const { requestAnimationFrame: before } = options;

beforeEach(() => {
  vi.stubGlobal('document', {
    createElementNS: (_space: string, name: string) => new Node(1, name),
    createTextNode: (data: string) => new Node(3, '#text', data),
  });
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
