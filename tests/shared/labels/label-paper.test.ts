// Labels on paper: every label within its page, none over another, the code in whole dots, nothing over the edge.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type FaceLine, layFace, usualWidth } from '../../../shared/labels/label-face.ts';
import { FIRST_PAPER, type Paper, pagesOf, paperProblem } from '../../../shared/labels/label-paper.ts';

const none = { first: 0, offsetXMm: 0, offsetYMm: 0 };
const papers: fc.Arbitrary<Paper> = fc
  .record({
    paper: fc.constantFrom('roll', 'sheet'),
    widthMm: fc.integer({ min: 18, max: 120 }),
    heightMm: fc.integer({ min: 18, max: 120 }),
    columns: fc.integer({ min: 1, max: 5 }),
    rows: fc.integer({ min: 1, max: 12 }),
    leftMm: fc.integer({ min: 0, max: 12 }),
    topMm: fc.integer({ min: 0, max: 12 }),
    gapXMm: fc.integer({ min: 0, max: 4 }),
    gapYMm: fc.integer({ min: 0, max: 4 }),
    marginMm: fc.integer({ min: 0, max: 3 }),
    dpi: fc.constantFrom(203, 300, 600),
  })
  .map((paper) => ({
    ...paper,
    pageWidthMm: 2 * paper.leftMm + paper.columns * (paper.widthMm + paper.gapXMm),
    pageHeightMm: 2 * paper.topMm + paper.rows * (paper.heightMm + paper.gapYMm),
  }));

describe('labels on a page', () => {
  test('lie within it and none over another, each once', () => {
    fc.assert(
      fc.property(papers, fc.nat(70), fc.nat(20), (paper, count, first) => {
        expect(paperProblem(paper)).toBeNull();
        const pages = pagesOf(paper, count, { ...none, first });
        expect(pages.flat().map(({ index }) => index)).toEqual([...Array(count).keys()]);
        for (const page of pages) {
          const corners = new Set(page.map(({ xMm, yMm }) => `${xMm} ${yMm}`));
          expect(corners.size).toBe(page.length);
          for (const { xMm, yMm } of page) {
            expect(xMm).toBeGreaterThanOrEqual(0);
            expect(xMm + paper.widthMm).toBeLessThanOrEqual(paper.pageWidthMm + 0.05);
            expect(yMm + paper.heightMm).toBeLessThanOrEqual(paper.pageHeightMm + 0.05);
          }
        }
      }),
    );
  });

  // A4 with 3 × 8 labels of 70 × 37 mm, as sold: 8 × 37 = 296 of 297 mm (common practice).
  const a4: Paper = {
    paper: 'sheet',
    widthMm: 70,
    heightMm: 37,
    pageWidthMm: 210,
    pageHeightMm: 297,
    columns: 3,
    rows: 8,
    leftMm: 0,
    topMm: 0.5,
    gapXMm: 0,
    gapYMm: 0,
    marginMm: 3,
    dpi: 600,
  };

  test('of a sheet begin where the used ones end, moved as the printer wants', () => {
    const pages = pagesOf(a4, 25, { first: 4, offsetXMm: 1, offsetYMm: -0.5 });
    expect(pages.map((page) => page.length)).toEqual([20, 5]);
    expect(pages[0]?.[0]).toEqual({ index: 0, xMm: 71, yMm: 37 });
    expect(pages[1]?.[0]).toEqual({ index: 20, xMm: 1, yMm: 0 });
  });

  test.each([
    [{ ...a4, columns: 4 }, 'too-wide', 70],
    [{ ...a4, topMm: 8 }, 'too-high', 7],
    [{ ...a4, marginMm: 17 }, 'no-room', 2],
  ] as const)('that do not fit are told, and by how much', (paper, code, overMm) => {
    expect(paperProblem(paper)).toMatchObject({ code, overMm: expect.closeTo(overMm, 6) });
  });

  test('of a roll never begin in the middle', () => {
    expect(pagesOf(FIRST_PAPER, 2, { ...none, first: 3 }).map((page) => page.length)).toEqual([1, 1]);
  });
});

describe('a label’s face', () => {
  const lines: readonly FaceLine[] = [
    { name: 'id', text: 'K7PM2Q3-4F9C', size: 'id', keep: true },
    { name: 'part', text: 'RC-0402-103-T5', size: 'large', keep: true },
    { name: 'left', text: 'Left 1,234 ± 12', size: 'plain', keep: true },
    { name: 'lot', text: 'Lot L-778231 · date code 2618', size: 'plain', keep: false },
    { name: 'maker', text: 'Supplier part AC-0402-10K-1PCT', size: 'plain', keep: false },
    { name: 'life', text: 'Level 3 · 160 h left, until 2 Mar 14:00', size: 'plain', keep: false },
    { name: 'printed', text: 'Reprint 2 · 29 Nov 14:02', size: 'small', keep: true },
  ];

  test('has its code in whole dots with white around it, and all text inside the margin', () => {
    fc.assert(
      fc.property(papers, fc.constantFrom(18, 24, 32, 36, 40, 44), (paper, modules) => {
        const face = layFace(paper, modules, lines);
        if ('problem' in face) return;
        const { xMm, yMm, moduleMm, dots } = face.code;
        expect(moduleMm).toBeCloseTo((dots * 25.4) / paper.dpi, 9);
        expect(dots).toBeGreaterThanOrEqual(3);
        expect(moduleMm).toBeGreaterThanOrEqual(0.25);
        expect(xMm - moduleMm).toBeGreaterThanOrEqual(0);
        expect(xMm + (modules + 1) * moduleMm).toBeLessThanOrEqual(paper.widthMm + 0.2);
        expect(yMm + (modules + 1) * moduleMm).toBeLessThanOrEqual(paper.heightMm + 0.2);
        for (const line of face.lines) {
          expect(line.sizeMm).toBeGreaterThan(1.6);
          expect(line.narrow).toBeGreaterThanOrEqual(0.69);
          const wide = usualWidth(line.text, line.isBold) * line.sizeMm * line.narrow;
          expect(line.xMm + wide).toBeLessThanOrEqual(paper.widthMm - paper.marginMm + 1e-6);
          expect(line.xMm).toBeGreaterThanOrEqual(paper.marginMm);
          expect(line.yMm).toBeLessThanOrEqual(paper.heightMm - paper.marginMm + 1e-6);
          const beside = line.xMm > xMm + (modules + 1) * moduleMm;
          if (!beside) expect(line.yMm - line.sizeMm).toBeGreaterThan(yMm + modules * moduleMm);
        }
        expect([...face.lines.map(({ name }) => name), ...face.left].sort()).toEqual(
          lines.map(({ name }) => name).sort(),
        );
        for (const { name, keep } of lines) if (keep) expect(face.left).not.toContain(name);
      }),
    );
  });

  test('leaves the least important out first and says so', () => {
    const face = layFace({ widthMm: 50, heightMm: 16, marginMm: 1, dpi: 300 }, 32, lines);
    expect(face).toMatchObject({ left: ['maker', 'life'] });
  });

  test('is none where the code has no room', () => {
    expect(layFace({ widthMm: 14, heightMm: 60, marginMm: 1, dpi: 203 }, 36, lines)).toMatchObject({
      problem: 'code-too-large',
    });
    expect(layFace({ widthMm: 22, heightMm: 20, marginMm: 1, dpi: 203 }, 36, lines)).toMatchObject({
      problem: 'text-too-large',
    });
  });

  test('cuts what nobody could read in one line, and says so', () => {
    const long = [{ name: 'part', text: 'X'.repeat(120), size: 'large', keep: true }] as const;
    expect(layFace({ widthMm: 40, heightMm: 25, marginMm: 1, dpi: 300 }, 32, long)).toMatchObject({
      cut: ['part'],
    });
  });
});
