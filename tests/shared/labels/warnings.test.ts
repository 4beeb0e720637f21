import { describe, expect, it } from 'vitest';
import { formatLabelWarning, type LabelWarning } from '../../../shared/labels/warnings.ts';

describe('formatLabelWarning()', () => {
  it.each<[LabelWarning, string]>([
    [{ code: 'no-part-number' }, 'no part number on this label'],
    [{ code: 'keyboard-layout', layout: 'German (QWERTZ)', text: 'ü=:06', meant: null }, 'German (QWERTZ)'],
    [{ code: 'conflict', field: 'lot', values: ['A', 'B'] }, '"A", "B"'],
    [{ code: 'identifier-lower-case', id: 'q' }, 'read as Q'],
    [{ code: 'quantity-marks', text: '4,000', quantity: 4000 }, 'read as 4000'],
    [{ code: 'no-such-week', id: '10D', text: '2753' }, '"2753" (10D)'],
  ])('words %o with its facts', (warning, part) => {
    expect(formatLabelWarning(warning)).toContain(part);
  });

  it('shows control characters and cuts long texts', () => {
    const text = formatLabelWarning({ code: 'separators-lost', text: `\x1d${'X'.repeat(500)}` });
    expect(text).toContain('\\u001d');
    expect(text.length).toBeLessThan(250);
  });
});
