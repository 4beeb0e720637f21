// Which step the next scan answers.

import { describe, expect, test } from 'vitest';
import type { ChecklistView, StepState } from '../../../shared/checklist/answers.ts';
import { currentScanStep } from '../../../shared/checklist/current.ts';
import { changeoverChecklist } from '../../../shared/checklist/shipped-changeover.ts';
import type { ChecklistStep } from '../../../shared/floor/checklist.ts';

const scanStep = changeoverChecklist.steps.find(({ kind }) => kind === 'scan');
if (!scanStep) throw new TypeError('Cannot go on as the shipped list must ask for a scan');
const like = (step: string, kind: ChecklistStep['kind'], state: StepState, mandatory = true) => ({
  step: { ...scanStep, step, kind, mandatory },
  state,
  answer: null,
});
const viewOf = (...steps: ReturnType<typeof like>[]): ChecklistView => ({
  steps,
  done: 0,
  asked: steps.length,
  missing: [],
  canClose: false,
});

describe('currentScanStep()', () => {
  const list = viewOf(
    like('papers', 'tick', 'done'),
    like('moves', 'known', 'open'),
    like('picture', 'photo', 'open', false),
    like('stencil', 'scan', 'open'),
    like('paste', 'scan', 'open'),
  );

  test('is the first that is open, past what is known by itself and what may stay open', () => {
    expect(currentScanStep(list, null)?.step).toBe('stencil');
  });

  test('is the one whose field was entered, until it is answered', () => {
    expect(currentScanStep(list, 'paste')?.step).toBe('paste');
    const answered = viewOf(like('stencil', 'scan', 'open'), like('paste', 'scan', 'done'));
    expect(currentScanStep(answered, 'paste')?.step).toBe('stencil');
  });

  test('is none while something else comes first, or waits for the line to stop', () => {
    expect(
      currentScanStep(viewOf(like('papers', 'tick', 'open'), like('stencil', 'scan', 'open')), null),
    ).toBeNull();
    expect(currentScanStep(viewOf(like('stencil', 'scan', 'waiting')), 'stencil')).toBeNull();
    expect(currentScanStep(viewOf(like('stencil', 'scan', 'done')), null)).toBeNull();
  });

  test('is one that was answered with the wrong code', () => {
    expect(currentScanStep(viewOf(like('stencil', 'scan', 'short')), null)?.step).toBe('stencil');
  });
});
