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

/** Draws the strip. Hidden from readers of the screen: the row beside it says the same in words. */
export function TapeStrip(props: TapeStripProps) {
  const { width, height = 44, tone = 'plain' } = props;
  const late = Math.min(props.late, width);
  const early = Math.min(props.early, late);
  const pockets = [];
  for (let x = 6; x < late; x += PITCH) {
    const share = x <= early ? 1 : late > early ? 1 - (x - early) / (late - early) : 0;
    if (share <= 0.02) continue;
    pockets.push(
      <g key={x} opacity={0.2 + 0.8 * share}>
        <circle cx={x} cy={height * 0.24} r={2.4} class="hole" />
        <rect x={x - 4} y={height * 0.43} width={8} height={height * 0.34} rx={1.5} class="pocket" />
      </g>,
    );
  }
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
      {pockets}
      {joint !== null && joint < width && <path d={`M${joint} 3v${height - 6}`} class="joint" />}
      {bracket !== null && <path d={bracket} class="window" />}
    </svg>
  );
}
