import { describe, expect, it } from 'vitest';
import {
  calibrationOf,
  checkCalibration,
  fullCalibration,
  invertCase,
  stripedCalibration,
} from '../../../../src/app/scan/calibration.ts';
import { keyboardLayouts, throughLayouts } from '../../../../src/app/scan/layouts.ts';
import type { WedgeScan } from '../../../../src/app/scan/wedge.ts';
import { wedgeReport } from '../../../../src/app/scan/wedge-report.ts';
import { run, scannerEvents } from './wedge-streams.ts';

function scanOf(text: string, more: Partial<WedgeScan> = {}): WedgeScan {
  return { text, startMs: 0, endMs: 500, endedBy: 'Enter', paceMs: 5, unknownKeys: [], ...more };
}

describe('checkCalibration()', () => {
  it('is equal for the text as printed', () => {
    expect(checkCalibration(fullCalibration.text)).toEqual({
      isEqual: true,
      characters: { kind: 'equal' },
      isCaseInverted: false,
      separators: [
        { name: 'RS', fate: 'kept', by: null },
        { name: 'GS', fate: 'kept', by: null },
        { name: 'EOT', fate: 'kept', by: null },
      ],
    });
  });

  for (const layout of keyboardLayouts.filter((each) => each !== 'us')) {
    it(`names ${layout} when a US scanner types on such a tablet, and the other way round`, () => {
      const onTablet = checkCalibration(throughLayouts(fullCalibration.text, 'us', layout)).characters;
      expect(onTablet).toEqual({ kind: 'layout', tablet: layout, scanner: 'us' });
      const onUs = checkCalibration(throughLayouts(fullCalibration.text, layout, 'us')).characters;
      expect(onUs).toEqual({ kind: 'layout', tablet: 'us', scanner: layout });
    });
  }

  it('names Caps Lock alone and together with a layout', () => {
    expect(checkCalibration(invertCase(fullCalibration.text)).isCaseInverted).toBe(true);
    const both = checkCalibration(invertCase(throughLayouts(fullCalibration.text, 'us', 'french')));
    expect([both.characters, both.isCaseInverted]).toEqual([
      { kind: 'layout', tablet: 'french', scanner: 'us' },
      true,
    ]);
  });

  it('tells each separator lost, or replaced and by what', () => {
    const lost = checkCalibration(fullCalibration.text.replace('\u001d', ''));
    expect(lost.separators.map(({ fate }) => fate)).toEqual(['kept', 'lost', 'kept']);
    const replaced = checkCalibration(fullCalibration.text.replace('\u001d', '~').replace('\u001e', '^'));
    expect(replaced.separators.map(({ fate, by }) => [fate, by])).toEqual([
      ['replaced', '^'],
      ['replaced', '~'],
      ['kept', null],
    ]);
    expect([lost.isEqual, replaced.isEqual]).toEqual([false, false]);
  });

  it('names no layout for another code', () => {
    expect(checkCalibration('PART-42').characters.kind).toBe('unknown');
  });
});

describe('wedgeReport()', () => {
  const codes = (scan: WedgeScan | null) => wedgeReport(scan).findings.map(({ code }) => code);

  const rows: readonly (readonly [reason: string, scan: WedgeScan | null, codes: readonly string[]])[] = [
    ['no scan came', null, ['nothing-arrived']],
    ['all is well', scanOf(fullCalibration.text), ['all-equal']],
    ['only the beginning came', scanOf(fullCalibration.text.slice(0, 20)), ['half-arrived']],
    ['another code was scanned', scanOf('SLOT-7'), ['characters-differ']],
    ['GS is lost', scanOf(fullCalibration.text.replace('\u001d', '')), ['separator-lost']],
    ['GS comes as a tilde', scanOf(fullCalibration.text.replace('\u001d', '~')), ['separator-replaced']],
    [
      'no terminator',
      scanOf(fullCalibration.text, { endedBy: 'silence' }),
      ['all-equal', 'terminator-missing'],
    ],
    ['a slow scanner', scanOf(fullCalibration.text, { paceMs: 110 }), ['all-equal', 'slow']],
    ['Caps Lock', scanOf(invertCase(fullCalibration.text)), ['case-inverted']],
    [
      'the symbology identifier is sent',
      scanOf(`]d1${fullCalibration.text}`),
      ['all-equal', 'symbology-id-sent'],
    ],
    [
      'a named key came',
      scanOf(fullCalibration.text, { unknownKeys: ['F5', 'F5'] }),
      ['all-equal', 'unknown-key'],
    ],
  ];
  for (const [reason, scan, wanted] of rows) {
    it(`answers ${wanted.join(', ')} when ${reason}`, () => expect(codes(scan)).toEqual(wanted));
  }

  it('allows structured labels only with every separator kept', () => {
    const fit = wedgeReport(scanOf(fullCalibration.text));
    const unfit = wedgeReport(scanOf(fullCalibration.text.replace('\u001e', '')));
    expect([fit.isFit, fit.isFitForStructured, unfit.isFit, unfit.isFitForStructured]).toEqual([
      true,
      true,
      true,
      false,
    ]);
  });

  it('answers settings under which the same scanner is kept out of a field', () => {
    const first = run(scannerEvents(fullCalibration.text, { gapMs: 100 }));
    const [scan] = first.scans;
    const { settings } = wedgeReport(scan ?? null);
    expect(settings).toMatchObject({ ending: 'terminator', gapMs: 230, fastGapMs: 130 });
  });
});

const label = '[)>\u001e06\u001dPBW-10023\u001dQ4000\u001d1TLT-0123456789\u001dABCDEFG\u001e\u0004';

describe('calibrationOf()', () => {
  const pairs = keyboardLayouts.flatMap((layout) => [[layout, 'us'] as const, ['us', layout] as const]);

  it.each(pairs)('knows the code through a scanner set to %s and a tablet set to %s', (scanner, tablet) => {
    expect(calibrationOf(throughLayouts(fullCalibration.text, scanner, tablet))).toBe(fullCalibration);
    expect(calibrationOf(throughLayouts(stripedCalibration.text, scanner, tablet))).toBe(stripedCalibration);
  });

  it.each([
    ['capitals swapped', fullCalibration.text.toLowerCase()],
    ['separators lost', fullCalibration.text.replace(/[\u0000-\u001f]/g, '')],
    ['half of it', fullCalibration.text.slice(0, 30)],
    ['the kind of code in front', `]Q1${fullCalibration.text}`],
    ['a character too many near the front', `AB*${fullCalibration.text.slice(2)}`],
  ])('knows it with %s', (_, text) => {
    expect(calibrationOf(text)).toBe(fullCalibration);
  });

  it.each([
    ['a label', label],
    ['a slot', 'M1-F-014'],
    ['a long number', '0123456789'.repeat(5)],
    ['twice the code', fullCalibration.text + fullCalibration.text],
  ])('does not take %s for it', (_, text) => {
    expect(calibrationOf(text)).toBeNull();
  });
});

describe('the striped code', () => {
  it('is equal as printed, tells its one separator, and names every layout', () => {
    expect(checkCalibration(stripedCalibration.text)).toMatchObject({ isEqual: true });
    expect(wedgeReport(scanOf(stripedCalibration.text)).findings).toEqual([{ code: 'all-equal' }]);
    const lost = wedgeReport(scanOf(stripedCalibration.text.replace('\u001d', '')));
    expect(lost.findings).toEqual([{ code: 'separator-lost', separator: 'GS' }]);
    for (const layout of keyboardLayouts.filter((each) => each !== 'us')) {
      const arrived = throughLayouts(stripedCalibration.text, 'us', layout);
      expect(checkCalibration(arrived).characters, layout).toEqual({
        kind: 'layout',
        tablet: layout,
        scanner: 'us',
      });
    }
    expect(checkCalibration(invertCase(stripedCalibration.text)).isCaseInverted).toBe(true);
    expect(wedgeReport(scanOf(stripedCalibration.text.slice(0, 12))).findings).toMatchObject([
      { code: 'half-arrived', characters: 12 },
    ]);
  });
});
