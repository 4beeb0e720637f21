// The marks on the labels in view: an outline, a shape and a word each; one that may not be used is crossed out.

import { fitPicture, fitQuad, placeTags, type Size } from '../scan/camera-fit.ts';
import { findShapes, lookOf } from './find-looks.ts';
import type { Find } from './use-find.ts';

export function FindMarks(props: {
  readonly find: Find;
  readonly box: Size;
  readonly ticked: ReadonlySet<string>;
}) {
  const { find, box, ticked } = props;
  const fit = fitPicture(find.picture, box);
  const shown = find.pan.inView.map(({ key, quad }) => ({
    quad: fitQuad(fit, quad),
    ...lookOf(key === null ? null : find.thingOf(key), ticked),
  }));
  if (shown.length === 0) return null;
  // A word of capitals and figures is wider than words are on average.
  const tags = placeTags(
    shown.map(({ quad, text }) => ({ quad, text: `${text}  ` })),
    box,
  );
  const at = (x: number, y: number) => `${Math.round(x)} ${Math.round(y)}`;
  return (
    <svg class="camera-marks find-marks" aria-hidden="true">
      {shown.map(({ quad: [a, b, c, d], look }, index) => {
        const round = `M${at(a.x, a.y)}L${at(b.x, b.y)}L${at(c.x, c.y)}L${at(d.x, d.y)}Z`;
        const cross =
          look === 'barred' ? `M${at(a.x, a.y)}L${at(c.x, c.y)}M${at(b.x, b.y)}L${at(d.x, d.y)}` : '';
        return (
          <g key={index}>
            <path class="find-under" d={round + cross} />
            <path class={`find-outline is-${look}`} d={round + cross} />
          </g>
        );
      })}
      {shown.map(({ look }, index) => {
        const tag = tags[index];
        if (!tag) return null;
        const markX = tag.text ? 18 - tag.width / 2 : 0;
        return (
          <g key={index} class={`find-tag is-${look}`} transform={`translate(${at(tag.x, tag.y)})`}>
            <rect x={-tag.width / 2} y={-16} width={tag.width} height={32} rx={8} />
            <path d={findShapes[look]} transform={`translate(${markX} 0)`} />
            {tag.text && (
              <text x={markX + 14} y={6}>
                {tag.text.trim()}
              </text>
            )}
          </g>
        );
      })}
    </svg>
  );
}
