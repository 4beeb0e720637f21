// A tray from above, pocket by pocket: what was taken is empty, what is left is full, and a tap says which is the next.

import { type Pocket, pocketAt, pocketsOf, type TrayForm, takenBefore } from '../../../shared/floor/tray.ts';
import { packWords } from '../words/packs.ts';
import { formatCount, say } from '../words/words.ts';

/** One pocket in the picture's own measure. */
const CELL = 10;
/** Pockets that a finger can still tell apart on the narrowest screen, and that a picture draws quickly. */
export const MOST_POCKETS = 600;

interface TrayPictureProps {
  readonly form: TrayForm;
  /** Pockets of the whole stack taken so far, fewer than it has: the tray with the next one is drawn. */
  readonly taken: number;
  readonly onTap: (pocket: Pocket) => void;
}

export function TrayPicture({ form, taken, onTap }: TrayPictureProps) {
  const words = say(packWords);
  const { rows, columns, first } = form;
  const next = pocketAt(form, taken);
  const { tray } = next;
  const places = Array.from({ length: rows * columns }, (_, at) => ({
    tray,
    row: Math.floor(at / columns) + 1,
    column: (at % columns) + 1,
  }));
  const pocketAtPoint = (event: { readonly clientX: number; readonly clientY: number }, box: DOMRect) => {
    const within = (share: number, most: number) => Math.min(most, Math.max(1, Math.ceil(share * most)));
    onTap({
      tray,
      row: within((event.clientY - box.top) / box.height, rows),
      column: within((event.clientX - box.left) / box.width, columns),
    });
  };
  return (
    <button
      type="button"
      class="tray-picture"
      data-testid="tray-picture"
      aria-label={words.pocketName(formatCount(next.row), formatCount(next.column))}
      data-first={first}
      onClick={(event) => {
        const area = event.currentTarget.querySelector('svg');
        // A key press has no point: it takes the pocket after the one that is next.
        if (area && event.detail > 0) pocketAtPoint(event, area.getBoundingClientRect());
        else onTap(pocketAt(form, Math.min(taken + 1, pocketsOf(form) - 1)));
      }}
    >
      <svg viewBox={`0 0 ${columns * CELL} ${rows * CELL}`} aria-hidden="true">
        {places.map((pocket) => {
          const at = takenBefore(form, pocket);
          const state = at < taken ? 'taken' : at === taken ? 'next' : 'full';
          const [x, y] = [(pocket.column - 1) * CELL, (pocket.row - 1) * CELL];
          return (
            <g key={at} class={state}>
              <rect x={x + 1} y={y + 1} width={CELL - 2} height={CELL - 2} rx="1" />
              {state === 'next' && <path d={`M ${x + 3} ${y + 2.5} l 4.5 2.5 l -4.5 2.5 z`} />}
              {state === 'full' && <Pin1 corner={form.pin1} x={x} y={y} />}
            </g>
          );
        })}
      </svg>
    </button>
  );
}

/** The mark of pin 1, in its corner of the part. */
function Pin1(props: { readonly corner: TrayForm['pin1']; readonly x: number; readonly y: number }) {
  const { corner, x, y } = props;
  if (corner === null) return null;
  const [right, down] = [corner.endsWith('right'), corner.startsWith('bottom')];
  return <circle cx={x + (right ? 7 : 3)} cy={y + (down ? 7 : 3)} r="1" />;
}
