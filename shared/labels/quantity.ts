// How many parts a label says are on the reel: a number, with or without thousands marks, decimals and a unit behind it.
// Method: one pass over the characters. Refused: parseFloat, which reads `2N3904` as 2.

/** A quantity read. `marks`: thousands marks were taken out, which a reader should know. */
export interface QuantityReading {
  readonly quantity: number;
  /** As printed, or null. */
  readonly unit: string | null;
  readonly marks: boolean;
}

// Units that stand behind a quantity: words in use, and codes of UN/ECE Recommendation 20 (common practice; NAR, C62, H87 count pieces).
const UNITS = new Set(
  'PC PCS PCS. PCE PCES PIECE PIECES EA EACH ST STK STCK NAR C62 H87 PZ PZA UN UNIT UNITS NOS RL REEL REELS M MTR MM G GR GRM KG KGM'.split(
    ' ',
  ),
);

function digitRun(text: string, from: number): number {
  let at = from;
  for (;;) {
    const char = text.charCodeAt(at);
    if (!(char >= 48 && char <= 57)) return at;
    at += 1;
  }
}

/**
 * Reads a quantity: `4000`, `4,000`, `4.000`, `4 000`, `4'000` (marks before groups of exactly three digits), `12.5`,
 * `4000 PCS`, `5000NAR000` (unit, then three decimals). null where it is not a number that can be read without guessing:
 * `4K`, `-5`, `2N3904`, more than 2^53.
 */
export function parseQuantity(printed: string): QuantityReading | null {
  const text = printed.trim();
  const first = digitRun(text, 0);
  if (first === 0) return null;
  if (first === text.length) return finish(text, null, false);
  let number = text.slice(0, first);
  let at = first;
  let marks = false;
  const mark = text[at];
  if (mark === ',' || mark === '.' || mark === ' ' || mark === "'" || mark === '\u2019') {
    const grouped = readGroups(text, first, mark);
    if (grouped !== null) {
      number = grouped.number;
      at = grouped.end;
      marks = true;
    } else if (mark === ',' || mark === '.') {
      const end = digitRun(text, at + 1);
      if (end === at + 1) return null;
      number += `.${text.slice(at + 1, end)}`;
      at = end;
    }
  }
  const rest = text.slice(at).trim();
  if (rest === '') return finish(number, null, marks);
  return readUnit(number, rest, marks);
}

/** Groups of three digits behind one and the same mark; null where the layout is another. */
function readGroups(text: string, first: number, mark: string): { number: string; end: number } | null {
  if (first > 3 || text.charCodeAt(0) === 48) return null;
  let number = text.slice(0, first);
  let at = first;
  while (text[at] === mark) {
    const end = digitRun(text, at + 1);
    if (end !== at + 4) return at === first ? null : mark === ' ' ? { number, end: at } : null;
    number += text.slice(at + 1, end);
    at = end;
  }
  return { number, end: at };
}

function readUnit(number: string, rest: string, marks: boolean): QuantityReading | null {
  if (UNITS.has(rest.toUpperCase())) return finish(number, rest, marks);
  const unit = rest.slice(0, 3);
  const decimals = rest.slice(3);
  if (decimals.length !== 3 || digitRun(decimals, 0) !== 3 || number.includes('.')) return null;
  return UNITS.has(unit.toUpperCase()) ? finish(`${number}.${decimals}`, unit, marks) : null;
}

function finish(number: string, unit: string | null, marks: boolean): QuantityReading | null {
  const quantity = Number(number);
  return Number.isFinite(quantity) && quantity <= Number.MAX_SAFE_INTEGER ? { quantity, unit, marks } : null;
}
