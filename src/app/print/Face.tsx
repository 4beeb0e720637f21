// A label as it is printed: black on white in millimetres, whatever the theme.

import { type Face as Laid, layFace, type NoFace } from '../../../shared/labels/label-face.ts';
import type { Paper } from '../../../shared/labels/label-paper.ts';
import type { CodeSquares } from '../scan/symbol.ts';
import type { PlantLabel } from './labels.ts';
import { LABEL_FACES, measuredWidth } from './measure.ts';

/** Dark squares as one path: a run of neighbours is one stroke, so that no hairline shows between them. */
export function squaresPath({ side, dark }: CodeSquares): string {
  let path = '';
  for (let y = 0; y < side; y += 1) {
    for (let x = 0; x < side; x += 1) {
      if (!dark[y * side + x]) continue;
      const from = x;
      while (x + 1 < side && dark[y * side + x + 1]) x += 1;
      path += `M${from} ${y}h${x + 1 - from}v1h-${x + 1 - from}z`;
    }
  }
  return path;
}

/** A label that is ready: its code drawn, its text laid out. */
export interface ReadyLabel {
  readonly key: string;
  readonly symbol: CodeSquares;
  readonly face: Laid;
}

/** Lays a label out; what is wrong with it where it has no room on the paper. */
export function readyLabel(paper: Paper, label: PlantLabel, symbol: CodeSquares): ReadyLabel | NoFace {
  const face = layFace(paper, symbol.side, label.lines, measuredWidth);
  return 'problem' in face ? face : { key: label.name, symbol, face };
}

/** The drawing inside one label, mm from its corner. */
export function FaceDrawing({ symbol, face }: ReadyLabel) {
  const { code, lines } = face;
  return (
    <g fill="#000" direction="ltr">
      <path
        d={squaresPath(symbol)}
        transform={`translate(${code.xMm} ${code.yMm}) scale(${code.moduleMm})`}
        shape-rendering="crispEdges"
      />
      {lines.map((line) => (
        <text
          key={line.name}
          transform={`translate(${line.xMm} ${line.yMm}) scale(${line.narrow} 1)`}
          font-size={line.sizeMm}
          font-weight={line.isBold ? 700 : 400}
          font-family={LABEL_FACES}
        >
          {line.text}
        </text>
      ))}
    </g>
  );
}

/** One label on the screen, as large as its box allows. */
export function FacePreview({ paper, label }: { readonly paper: Paper; readonly label: ReadyLabel }) {
  return (
    <svg
      class="label-preview"
      viewBox={`0 0 ${paper.widthMm} ${paper.heightMm}`}
      role="img"
      aria-label={label.face.lines.map(({ text }) => text).join(', ')}
      data-testid="label-preview"
    >
      <rect width={paper.widthMm} height={paper.heightMm} rx="1" fill="#fff" />
      <FaceDrawing {...label} />
    </svg>
  );
}
