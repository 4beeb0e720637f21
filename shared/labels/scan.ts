// What one look, one trigger pull or one typed line brought: codes as they were read, and the way they came in.

/** How a scan came in. */
export const scanPaths = ['camera', 'wedge', 'typed', 'practice'] as const;
export type ScanPath = (typeof scanPaths)[number];

/** Which part of a message a symbol carries, where the message is spread over several (structured append of QR Code and Data Matrix). */
export interface Portion {
  /** Counted from 0. */
  readonly index: number;
  readonly of: number;
  /** The same for all symbols of one message; empty where the symbology has none. */
  readonly id: string;
}

/** One code as it was read: control characters are kept as they are (GS is U+001D). */
export interface ScannedCode {
  readonly text: string;
  /** Symbology by its standard name without blanks (`DataMatrix`, `Code128`), or null where the path cannot know. */
  readonly format: string | null;
  /** Symbology identifier of ISO/IEC 15424 (`]d2`), or null where the path does not tell. */
  readonly symbologyId: string | null;
  /** Absent where the symbol is a message of its own. */
  readonly portion?: Portion;
}

/** Everything that came in one look, one trigger pull or one typed line. */
export interface Scan {
  readonly codes: readonly ScannedCode[];
  readonly via: ScanPath;
  /** Milliseconds since 1970 by the tablet's clock. */
  readonly atMs: number;
}

/** How a reel that the camera passed over is known to belong to a slot. */
export const belongings = ['nearest-below', 'bank-order'] as const;
/** One of them. */
export type Belonging = (typeof belongings)[number];
