import { describe, expect, test } from 'vitest';
import { fullCalibration } from '../../../../../../src/app/scan/calibration.ts';
import { throughLayouts } from '../../../../../../src/app/scan/layouts.ts';
import { createRawScans } from '../../../../../../src/app/scan/raw.ts';
import type { WedgeScan } from '../../../../../../src/app/scan/wedge.ts';
import { wedgeReport } from '../../../../../../src/app/scan/wedge-report.ts';
import {
  fitnessOf,
  isKept,
  readAs,
  tellFindings,
  visibleStretches,
} from '../../../../../../src/app/screens/plant/scanner/model.ts';

const scanOf = (text: string, more: Partial<WedgeScan> = {}): WedgeScan => ({
  text,
  startMs: 0,
  endMs: 100,
  endedBy: 'Enter',
  paceMs: 4,
  unknownKeys: [],
  ...more,
});
const label = '[)>\u001e06\u001dPBW-10023\u001dQ4000\u001d1TLT-0123456789\u001dABCDEFG\u001e\u0004';

test('`visibleStretches()` shows every control character by its name and loses nothing', () => {
  expect(visibleStretches('A\u001d\u001eB\u0001\ufffd')).toEqual([
    { text: 'A', isControl: false },
    { text: 'GS', isControl: true },
    { text: 'RS', isControl: true },
    { text: 'B', isControl: false },
    { text: '^A', isControl: true },
    { text: '?', isControl: true },
  ]);
});

describe('the report in words', () => {
  test('a scanner that is set right has nothing to tell', () => {
    const report = wedgeReport(scanOf(fullCalibration.text));
    expect(fitnessOf(report)).toBe('right');
    expect(tellFindings(report)).toEqual([]);
  });

  test('lost separators are told once, together', () => {
    const report = wedgeReport(scanOf(fullCalibration.text.replace(/[\u0000-\u001f]/g, '')));
    expect(fitnessOf(report)).toBe('plain-only');
    expect(tellFindings(report)).toEqual([{ code: 'separators-lost', names: ['RS', 'GS', 'EOT'] }]);
  });

  test('another keyboard is named and nothing is trusted', () => {
    const report = wedgeReport(scanOf(throughLayouts(fullCalibration.text, 'us', 'german')));
    expect(fitnessOf(report)).toBe('wrong');
    expect(tellFindings(report)).toContainEqual({ code: 'layout-differs', tablet: 'german', scanner: 'us' });
  });

  test('a missing Enter and a slow pace are told beside a scanner that is right', () => {
    const report = wedgeReport(scanOf(fullCalibration.text, { endedBy: 'silence', paceMs: 60 }));
    expect(fitnessOf(report)).toBe('right');
    expect(tellFindings(report).map(({ code }) => code)).toEqual(['terminator-missing', 'slow']);
  });
});

test('`readAs()` says what a label says, and nothing of what is none', () => {
  expect(readAs(scanOf(label), [])).toMatchObject([
    { field: 'part', value: 'BW-10023' },
    { field: 'quantity', value: '4000' },
    { field: 'lot', value: 'LT-0123456789' },
  ]);
  expect(readAs(scanOf('M1-F-014'), [])).toEqual([]);
});

test('`isKept()` compares pace and ending', () => {
  const { settings } = wedgeReport(scanOf(fullCalibration.text));
  expect(isKept(null, settings)).toBe(false);
  expect(isKept(settings, settings)).toBe(true);
  expect(isKept(settings, { ...settings, ending: 'silence' })).toBe(false);
});

test('raw scans go nowhere else while somebody looks', () => {
  const raw = createRawScans();
  const seen: string[] = [];
  expect(raw.push(scanOf('one'))).toBe(true);
  const release = raw.take(({ text }) => seen.push(text));
  expect(raw.push(scanOf('two'))).toBe(false);
  release();
  expect(raw.push(scanOf('three'))).toBe(true);
  expect(seen).toEqual(['two']);
});
