import { describe, expect, it } from 'vitest';
import { calibrationText, checkCalibration, invertCase } from '../../../../src/app/scan/calibration.ts';
import { LAYOUTS, throughLayouts } from '../../../../src/app/scan/layouts.ts';
import type { WedgeScan } from '../../../../src/app/scan/wedge.ts';
import { wedgeReport } from '../../../../src/app/scan/wedge-report.ts';
import { run, scannerEvents } from './wedge-streams.ts';

function scanOf(text: string, more: Partial<WedgeScan> = {}): WedgeScan {
  return { text, startMs: 0, endMs: 500, endedBy: 'Enter', paceMs: 5, unknownKeys: [], ...more };
}

describe('checkCalibration()', () => {
  it('is equal for the text as printed', () => {
    expect(checkCalibration(calibrationText)).toEqual({
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

  for (const layout of LAYOUTS.filter((each) => each !== 'us')) {
    it(`names ${layout} when a US scanner types on such a tablet, and the other way round`, () => {
      const onTablet = checkCalibration(throughLayouts(calibrationText, 'us', layout)).characters;
      expect(onTablet).toEqual({ kind: 'layout', tablet: layout, scanner: 'us' });
      const onUs = checkCalibration(throughLayouts(calibrationText, layout, 'us')).characters;
      expect(onUs).toEqual({ kind: 'layout', tablet: 'us', scanner: layout });
    });
  }

  it('names Caps Lock alone and together with a layout', () => {
    expect(checkCalibration(invertCase(calibrationText)).isCaseInverted).toBe(true);
    const both = checkCalibration(invertCase(throughLayouts(calibrationText, 'us', 'french')));
    expect([both.characters, both.isCaseInverted]).toEqual([
      { kind: 'layout', tablet: 'french', scanner: 'us' },
      true,
    ]);
  });

  it('tells each separator lost, or replaced and by what', () => {
    const lost = checkCalibration(calibrationText.replace('\u001d', ''));
    expect(lost.separators.map(({ fate }) => fate)).toEqual(['kept', 'lost', 'kept']);
    const replaced = checkCalibration(calibrationText.replace('\u001d', '~').replace('\u001e', '^'));
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
    ['all is well', scanOf(calibrationText), ['all-equal']],
    ['only the beginning came', scanOf(calibrationText.slice(0, 20)), ['half-arrived']],
    ['another code was scanned', scanOf('SLOT-7'), ['characters-differ']],
    ['GS is lost', scanOf(calibrationText.replace('\u001d', '')), ['separator-lost']],
    ['GS comes as a tilde', scanOf(calibrationText.replace('\u001d', '~')), ['separator-replaced']],
    ['no terminator', scanOf(calibrationText, { endedBy: 'silence' }), ['all-equal', 'terminator-missing']],
    ['a slow scanner', scanOf(calibrationText, { paceMs: 110 }), ['all-equal', 'slow']],
    ['Caps Lock', scanOf(invertCase(calibrationText)), ['case-inverted']],
    ['the symbology identifier is sent', scanOf(`]d1${calibrationText}`), ['all-equal', 'symbology-id-sent']],
    [
      'a named key came',
      scanOf(calibrationText, { unknownKeys: ['F5', 'F5'] }),
      ['all-equal', 'unknown-key'],
    ],
  ];
  for (const [reason, scan, wanted] of rows) {
    it(`answers ${wanted.join(', ')} when ${reason}`, () => expect(codes(scan)).toEqual(wanted));
  }

  it('allows structured labels only with every separator kept', () => {
    const fit = wedgeReport(scanOf(calibrationText));
    const unfit = wedgeReport(scanOf(calibrationText.replace('\u001e', '')));
    expect([fit.isFit, fit.isFitForStructured, unfit.isFit, unfit.isFitForStructured]).toEqual([
      true,
      true,
      true,
      false,
    ]);
  });

  it('answers settings under which the same scanner is kept out of a field', () => {
    const first = run(scannerEvents(calibrationText, { gapMs: 100 }));
    const [scan] = first.scans;
    const { settings } = wedgeReport(scan ?? null);
    expect(settings).toMatchObject({ ending: 'terminator', gapMs: 230, fastGapMs: 130 });
  });
});
