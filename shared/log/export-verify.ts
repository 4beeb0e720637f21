// Is an exported log as it was written? Joins the walk along the chains with what reading the file has found: a readable cell
// that was altered, a record that is none, a signature that fails or is gone.

import {
  type ChainBreak,
  type ChainEvidence,
  type ChainFault,
  type ChainReport,
  verifyChains,
} from './chain.ts';
import { chainId, type Entry, entryId } from './entry.ts';
import type { ExportFault, ExportFaultCode, ExportReading } from './export-read.ts';
import { compareText } from './order.ts';
import { sealedHash } from './seal.ts';

/** The first thing that does not hold, named by its entry. */
export interface ExportBreak extends Omit<ChainBreak, 'fault'> {
  readonly fault: ChainFault | ExportFaultCode | 'signature-missing';
  /** Where a cell or key is at fault: which one. */
  readonly column: string | null;
}

/** The verdict on an export. */
export interface ExportReport extends Omit<ChainReport, 'firstBroken'> {
  readonly firstBroken: ExportBreak | null;
  /** Everything that reading found, in the order of the rows. */
  readonly faults: readonly ExportFault[];
}

/** What the check may use besides the export. */
export interface ExportEvidence extends Omit<ChainEvidence, 'omitted'> {
  /** Says whether the tablet that wrote an entry has a key, so that a missing signature is a fault. */
  readonly mustBeSigned?: (entry: Entry) => boolean;
}

/** Checks an export; the break named is the first in the order (tablet, epoch, seq). Cost as `verifyChains`. */
export function verifyExport(reading: ExportReading, evidence: ExportEvidence = {}): ExportReport {
  const { mustBeSigned, ...forChains } = evidence;
  const report = verifyChains(reading.entries, { ...forChains, omitted: reading.omitted });
  const breaks: ExportBreak[] = report.firstBroken ? [{ ...report.firstBroken, column: null }] : [];
  for (const { entry, code, wanted, found, column } of reading.faults) {
    if (entry !== null) breaks.push({ ...entry, id: entryId(entry), fault: code, wanted, found, column });
  }
  breaks.push(...proofBreaks(reading.proofs ?? []));
  for (const entry of reading.entries) {
    if (entry.sig !== null || !mustBeSigned?.(entry)) continue;
    const { tablet, epoch, seq } = entry;
    const place = { id: entryId(entry), tablet, epoch, seq, column: null };
    breaks.push({ ...place, fault: 'signature-missing', wanted: 'signature by the tablet', found: '' });
  }
  // A stable sort: of two faults of one entry, the chain's own is named first.
  const [first = null] = breaks.sort((a, b) => compareText(chainId(a), chainId(b)) || a.seq - b.seq);
  return {
    ...report,
    ok: report.ok && reading.faults.length === 0 && first === null,
    firstBroken: first,
    faults: reading.faults,
  };
}

/** The plant's own line: as it was written, and one of it at most. */
function proofBreaks(proofs: readonly Entry[]): readonly ExportBreak[] {
  return proofs.flatMap((proof, at): ExportBreak[] => {
    const { tablet, epoch, seq, hash } = proof;
    const place = { id: entryId(proof), tablet, epoch, seq, column: null };
    const wanted = sealedHash(proof);
    if (wanted !== hash)
      return [
        { ...place, fault: 'hash-differs', wanted: wanted ?? 'a text that can be sealed', found: hash },
      ];
    if (at === 0) return [];
    return [{ ...place, fault: 'doubled', wanted: 'one record of this kind', found: String(at + 1) }];
  });
}
