import './tape.css';

/**
 * A reel wherever one is shown: a run of pockets between sprocket holes that empties from one end. Along a time axis the tape
 * ends where the reel runs out, and fades between the early and the late bound.
 */
export interface TapeStripProps {
  /** Width in px of the drawing's own space. */
  readonly width: number;
  /** Where the tape surely still has parts, where it may end at the latest; px from the left. */
  readonly early: number;
  readonly late: number;
  /** The splice window in px; absent where it is not known. */
  readonly opens?: number | null;
  readonly closes?: number | null;
  /** Where a joined tape begins, in px. */
  readonly joint?: number | null;
  readonly tone?: 'plain' | 'care' | 'stop' | 'go';
  readonly height?: number;
}

const PITCH = 13;
/** Where the first pocket stands. */
const FIRST = 6;

/** Sprocket holes and pockets from `x` on, `count` of them. */
function pocketPaths(x: number, count: number, height: number): { holes: string; pockets: string } {
  const top = height * 0.43;
  const depth = height * 0.34;
  let holes = '';
  let pockets = '';
  for (let at = 0; at < count; at++) {
    const middle = x + at * PITCH;
    holes += `M${middle - 2.4} ${height * 0.24}a2.4 2.4 0 1 0 4.8 0a2.4 2.4 0 1 0-4.8 0`;
    pockets += `M${middle - 4} ${top}h8v${depth}h-8z`;
  }
  return { holes, pockets };
}

/** Draws the strip. Hidden from readers of the screen: the row beside it says the same in words. */
export function TapeStrip(props: TapeStripProps) {
  const { width, height = 44, tone = 'plain' } = props;
  const late = Math.min(props.late, width);
  const early = Math.min(props.early, late);
  // Whole pockets are one drawing; only those that may be gone already stand alone, as each fades differently.
  const whole = Math.max(0, Math.floor((Math.min(early, late - 0.01) - FIRST) / PITCH) + 1);
  const fading = [];
  for (let x = FIRST + whole * PITCH; x < late; x += PITCH) {
    const share = late > early ? 1 - (x - early) / (late - early) : 0;
    if (share <= 0.02) continue;
    const { holes, pockets } = pocketPaths(x, 1, height);
    fading.push(
      <g key={x} opacity={0.2 + 0.8 * share}>
        <path d={holes} class="hole" />
        <path d={pockets} class="pocket" />
      </g>,
    );
  }
  const { holes, pockets } = pocketPaths(FIRST, whole, height);
  const { opens = null, closes = null, joint = null } = props;
  const bracket =
    opens !== null && closes !== null && opens < width
      ? `M${opens} 6V1.5H${Math.min(closes, width)}V6M${opens} ${height - 6}V${height - 1.5}H${Math.min(closes, width)}V${height - 6}`
      : null;
  return (
    <svg
      class={`tape ${tone}`}
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      <rect x={0} y={4} width={Math.max(late, 3)} height={height - 8} rx={4} class="band" />
      <path d={holes} class="hole" />
      <path d={pockets} class="pocket" />
      {fading}
      {joint !== null && joint < width && <path d={`M${joint} 3v${height - 6}`} class="joint" />}
      {bracket !== null && <path d={bracket} class="window" />}
    </svg>
  );
}
