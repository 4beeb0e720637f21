// What one scan says about the scanner: what is told of it, which characters to show, what was read of it.

import { parseLabel } from '../../../../../shared/labels/label.ts';
import type { LabelRule } from '../../../../../shared/labels/rules.ts';
import type { WedgeScan, WedgeSettings } from '../../../scan/wedge.ts';
import type { WedgeFinding, WedgeReport } from '../../../scan/wedge-report.ts';

/** A stretch of what arrived; control characters stand alone, by their name. */
export interface Stretch {
  readonly text: string;
  readonly isControl: boolean;
}

const names: Readonly<Record<number, string>> = {
  4: 'EOT',
  9: 'TAB',
  10: 'LF',
  13: 'CR',
  28: 'FS',
  29: 'GS',
  30: 'RS',
  31: 'US',
  127: 'DEL',
  65533: '?',
};

/** Splits text so that control characters can be seen. */
export function visibleStretches(text: string): readonly Stretch[] {
  const stretches: Stretch[] = [];
  for (const char of text) {
    const code = char.charCodeAt(0);
    const isControl = code < 32 || code === 127 || code === 0xfffd;
    const last = stretches.at(-1);
    const shown = isControl ? (names[code] ?? `^${String.fromCharCode(code + 64)}`) : char;
    if (!isControl && last && !last.isControl)
      stretches[stretches.length - 1] = { ...last, text: last.text + char };
    else stretches.push({ text: shown, isControl });
  }
  return stretches;
}

/** What is wrong, with lost separators told together. */
export type ToldFinding =
  | Exclude<WedgeFinding, { readonly code: 'separator-lost' | 'nothing-arrived' }>
  | { readonly code: 'separators-lost'; readonly names: readonly string[] };

/** The findings as they are told, in their order; the good news is in the verdict and left out. */
export function tellFindings(report: WedgeReport): readonly ToldFinding[] {
  const lost = report.findings.flatMap((finding) =>
    finding.code === 'separator-lost' ? [finding.separator] : [],
  );
  const told: ToldFinding[] = [];
  for (const finding of report.findings) {
    if (finding.code === 'separator-lost') {
      if (!told.some(({ code }) => code === 'separators-lost'))
        told.push({ code: 'separators-lost', names: lost });
    } else if (finding.code !== 'all-equal' && finding.code !== 'nothing-arrived') told.push(finding);
  }
  return told;
}

/** How far the scanner can be trusted. */
export type Fitness = 'right' | 'plain-only' | 'wrong';

/** The report in one word. */
export function fitnessOf(report: WedgeReport): Fitness {
  if (!report.isFit) return 'wrong';
  return report.isFitForStructured ? 'right' : 'plain-only';
}

/** Fields shown of a label, in their order. */
export const shownFields = ['part', 'supplierPart', 'quantity', 'lot', 'dateCode', 'reel'] as const;

/** What a scan says as a label; empty where it is none. */
export function readAs(
  scan: WedgeScan,
  rules: readonly LabelRule[],
): readonly { readonly field: (typeof shownFields)[number]; readonly value: string }[] {
  const reading = parseLabel([scan.text], { rules });
  return shownFields.flatMap((field) => {
    const value = reading[field];
    return value === null ? [] : [{ field, value: String(value) }];
  });
}

/** True where what the test found is what the tablet keeps already. */
export function isKept(kept: Partial<WedgeSettings> | null, found: Partial<WedgeSettings>): boolean {
  if (kept === null) return false;
  return kept.ending === found.ending && kept.gapMs === found.gapMs && kept.fastGapMs === found.fastGapMs;
}
