// The worker that proposes slots, behind a port that can be made to wait or to break; and a session that goes the board's way.

import { describe, expect, test } from 'vitest';
import { proposeSlots } from '../../../../../../shared/assign/propose.ts';
import { emptyState } from '../../../../../../shared/floor/state.ts';
import { planOf } from '../../../../../../src/app/screens/plant/sheet/board-model.ts';
import { type AssignPort, createSlotDesk } from '../../../../../../src/app/screens/plant/sheet/slot-desk.ts';

const question = {
  line: { machines: [{ machine: 'M1', name: 'M1', banks: [{ bank: 'F', name: 'F', positions: 4 }] }] },
  parts: [{ part: 'A', width: 1, perPanel: 1 }],
  standing: [],
  elsewhere: [],
};
const context = {
  floor: emptyState(),
  line: 'L1',
  side: 'top' as const,
  product: '',
  widths: new Map(),
  plan: null,
};

function setUp() {
  const ports: (AssignPort & { ended: boolean; answer: () => void })[] = [];
  const desk = createSlotDesk(() => {
    const port: (typeof ports)[number] = {
      ended: false,
      onmessage: null,
      onerror: null,
      answer: () => undefined,
      postMessage(request) {
        port.answer = () =>
          port.onmessage?.({
            data: { id: request.id, parts: proposeSlots(request.question), others: [] },
          } as MessageEvent); // the one member that is read
      },
      terminate() {
        port.ended = true;
      },
    };
    ports.push(port);
    return port;
  });
  const propose = () => desk.propose(question, (parts) => planOf(parts, context));
  return { desk, ports, propose };
}

describe('the slots in hand', () => {
  test('a proposal becomes the plan, and its worker is ended', () => {
    const { desk, ports, propose } = setUp();
    propose();
    expect(desk.isBusy.value).toBe(true);
    ports[0]?.answer();
    expect(desk.plan.value?.slots.get('A')).toMatch(/^M1-F-/);
    expect([desk.isBusy.value, ports[0]?.ended]).toEqual([false, true]);
  });

  test('one that was given up is ended and says nothing more', () => {
    const { desk, ports, propose } = setUp();
    propose();
    desk.giveUp();
    ports[0]?.answer();
    expect([desk.plan.value, desk.isBusy.value, ports[0]?.ended]).toEqual([null, false, true]);
  });

  test('a newer question ends the older one', () => {
    const { desk, ports, propose } = setUp();
    propose();
    propose();
    ports[0]?.answer();
    expect([desk.plan.value, ports[0]?.ended, ports[1]?.ended]).toEqual([null, true, false]);
  });

  test('a worker that breaks is told, and the next proposal begins without that', () => {
    const { desk, ports, propose } = setUp();
    propose();
    ports[0]?.onerror?.({} as ErrorEvent); // nothing of it is read
    expect([desk.isFailed.value, desk.isBusy.value]).toEqual([true, false]);
    propose();
    expect(desk.isFailed.value).toBe(false);
  });

  test('widths are said for a part however it is written, and unsaid', () => {
    const { desk } = setUp();
    desk.sayWidth(' bw-1', 12);
    expect([...desk.widths.value]).toEqual([['BW-1', 12]]);
    desk.sayWidth('BW-1', null);
    expect(desk.widths.value.size).toBe(0);
    desk.sayWidth('BW-1', 8);
    desk.clear();
    expect(desk.widths.value.size).toBe(0);
  });
});
