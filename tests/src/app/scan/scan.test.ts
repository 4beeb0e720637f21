import { describe, expect, it } from 'vitest';
import type { Scan } from '../../../../shared/labels/scan.ts';
import { createScanStream, textToScannedCode, typedScan } from '../../../../src/app/scan/scan.ts';

const scan: Scan = { codes: [{ text: 'R-1', format: null, symbologyId: null }], via: 'wedge', atMs: 5 };

describe('createScanStream()', () => {
  it('gives a scan to the newest taker only, and to every watcher', () => {
    const stream = createScanStream();
    const got: string[] = [];
    stream.subscribe(() => got.push('watcher'));
    stream.take(() => got.push('task'));
    const release = stream.take(() => got.push('dialog'));
    expect(stream.push(scan)).toBe(true);
    release();
    stream.push(scan);
    expect(got).toEqual(['watcher', 'dialog', 'watcher', 'task']);
  });

  it('hands a scan on when the newest taker declines, and says when nobody took it', () => {
    const stream = createScanStream();
    const got: string[] = [];
    const release = stream.take(() => got.push('task'));
    stream.take(() => false);
    expect(stream.push(scan)).toBe(true);
    release();
    expect([stream.push(scan), got]).toEqual([false, ['task']]);
  });

  it('stops telling a watcher that left, even from within its own call', () => {
    const stream = createScanStream();
    let calls = 0;
    const leave = stream.subscribe(() => {
      calls += 1;
      leave();
    });
    stream.push(scan);
    stream.push(scan);
    expect(calls).toBe(1);
  });
});

describe('textToScannedCode()', () => {
  // Identifiers of ISO/IEC 15424 as published: ]d1 ECC 200, ]d2 ECC 200 with FNC1, ]C1 GS1-128, ]Q3 QR with FNC1.
  const rows = [
    [']d2010400000', '010400000', 'DataMatrix', ']d2'],
    [']C10104', '0104', 'Code128', ']C1'],
    [']Q3X', 'X', 'QRCode', ']Q3'],
    [']A0PART', 'PART', 'Code39', ']A0'],
    ['PLAIN', 'PLAIN', null, null],
    [']', ']', null, null],
    ['[)>\u001e06\u001dPX\u001e\u0004', '[)>\u001e06\u001dPX\u001e\u0004', null, null],
  ] as const;
  for (const [given, text, format, symbologyId] of rows) {
    it(`splits ${JSON.stringify(given)}`, () => {
      expect(textToScannedCode(given)).toEqual({ text, format, symbologyId });
    });
  }
});

describe('typedScan()', () => {
  it('answers null for blanks and drops blanks at the ends', () => {
    expect(typedScan('  \t', 1)).toBeNull();
    expect(typedScan(' R-1 ', 1)?.codes[0]?.text).toBe('R-1');
  });
});
