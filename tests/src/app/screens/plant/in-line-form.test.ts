// Panels in the line as typed, and what a trace takes from it.

import { describe, expect, test } from 'vitest';
import { panelsInLine } from '../../../../../shared/floor/in-line.ts';
import { fromInLineForm, toInLineForm, withSeen } from '../../../../../src/app/screens/plant/in-line-form.ts';
import { beginStory, counted, started, tellPlant } from '../../../../shared/floor/story.ts';

function form(behind: string, before: string, missed = '') {
  const story = beginStory();
  tellPlant(story);
  const { rows } = toInLineForm(story.floor(), 'L1');
  return { rows: rows.map((row) => ({ ...row, behind, before })), missed };
}

describe('panels in the line', () => {
  test('are a guess until somebody enters them, and it is said how wide', () => {
    const story = beginStory();
    tellPlant(story);
    const floor = story.floor();
    // One machine: 3 panels at most at work and waiting (common practice), 15 behind the last machine.
    expect(panelsInLine(floor, 'L1', 'M1-F-001')).toMatchObject({ least: -3, most: 18, isGuess: true });
    expect(toInLineForm(floor, 'L1').rows).toEqual([
      {
        machine: 'M1',
        name: 'first',
        behind: '',
        before: '',
        assumed: { behind: 18, before: 3 },
        seen: null,
      },
    ]);
    expect(fromInLineForm(toInLineForm(floor, 'L1'), 'L1')?.machines).toEqual([]);
  });

  test('go into the log and come back as entered', () => {
    const payload = fromInLineForm(form('5', '2', '0,1'), 'L1');
    expect(payload).toEqual({ line: 'L1', machines: [{ machine: 'M1', least: -2, most: 5 }], missed: 0.001 });
    const story = beginStory();
    tellPlant(story);
    if (payload) story.tell('line.panels-ruled', payload);
    expect(toInLineForm(story.floor(), 'L1')).toMatchObject({
      rows: [{ behind: '5', before: '2' }],
      missed: '0.1',
    });
    expect(panelsInLine(story.floor(), 'L1', 'M1-R-003')).toEqual({
      least: -2,
      most: 5,
      missed: 0.001,
      isGuess: false,
    });
  });

  test('are taken from what scans showed, by a person; what was entered and is more stays', () => {
    const story = beginStory();
    tellPlant(story);
    story.tell('run.started', started('r1'));
    story.tell('panel.seen', { line: 'L1', machine: 'M1', serial: 'PN4', via: 'wedge' });
    for (let at = 1; at <= 4; at++) story.tell('panels.counted', counted('r1', 1, `PN${at}`));
    const read = toInLineForm(story.floor(), 'L1');
    expect(read.rows).toMatchObject([{ behind: '', before: '', seen: { panels: 1, behind: 4, before: 0 } }]);
    expect(withSeen(read).rows).toMatchObject([{ behind: '4', before: '0' }]);
    const entered = { ...read, rows: read.rows.map((row) => ({ ...row, behind: '9', before: '2' })) };
    expect(withSeen(entered).rows).toMatchObject([{ behind: '9', before: '2' }]);
    expect(withSeen(form('5', '', '')).rows).toMatchObject([{ behind: '5', before: '' }]);
  });

  test('are refused whole where a number does not fit', () => {
    for (const [behind, before, missed] of [
      ['-1', '', ''],
      ['1.5', '', ''],
      ['501', '', ''],
      ['1', 'x', ''],
      ['1', '', '50'],
      ['1', '', 'few'],
    ])
      expect(
        fromInLineForm(form(behind ?? '', before ?? '', missed ?? ''), 'L1'),
        `${behind} ${before} ${missed}`,
      ).toBeNull();
  });
});
