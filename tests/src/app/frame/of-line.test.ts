// What was opened on a line closes with it: another line that a scan takes in hand must neither show nor write what was asked for the first.

import { signal } from '@preact/signals';
import { h, render } from 'preact';
import { useState } from 'preact/hooks';
import { act } from 'preact/test-utils';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { type App, AppContext } from '../../../../src/app/app.ts';
import { OfLine } from '../../../../src/app/frame/OfLine.tsx';
import { readSources } from '../../../source-scan.ts';
import { Node, smallDocument } from '../small-document.ts';

beforeEach(() => void vi.stubGlobal('document', smallDocument));
afterEach(() => void vi.unstubAllGlobals());

it('closes what was opened on the line once another is in hand, and leaves it closed when that comes back', async () => {
  const line = signal<string | null>('L1');
  let openSlot: (slot: string) => void = () => undefined;
  const Slots = () => {
    const [slot, setSlot] = useState('none');
    openSlot = setSlot;
    return h('p', null, slot);
  };
  const root = new Node(1, 'div');
  const app = { line } as unknown as App; // all that is asked of it
  const drawn = h(AppContext.Provider, { value: app }, h(OfLine, null, h(Slots, null)));
  await act(() => render(drawn, root as never)); // stands in for an element
  await act(() => openSlot('M1-F-001'));
  expect(root.textContent).toBe('M1-F-001');
  await act(() => {
    line.value = 'L2';
  });
  expect(root.textContent).toBe('none');
  await act(() => {
    line.value = 'L1';
  });
  expect(root.textContent).toBe('none');
});

it('holds for what is opened at a slot that is loaded, at a line and at a handover', () => {
  const texts = new Map(readSources(['src/app/screens']).map(({ path, source }) => [path, source]));
  const of = (path: string) => texts.get(`src/app/screens/${path}`);
  expect(of('load/Load.tsx')).toMatch(/<OfLine>\s*<LineToLoad /);
  expect(of('line/Line.tsx')).toMatch(/<OfLine>\s*<LineInHand /);
  expect(of('log/Shift.tsx')).toContain('<Handover key={line} ');
});
