// A reel from the side, so that nobody measures the flange: a full 0402 reel of 10 000 winds to 137 of the flange's 178 mm.

import { countWords } from '../words/count.ts';
import { say } from '../words/words.ts';
import { readFigure } from './count-model.ts';

/** Diameter of the flange that is drawn, mm: a 180 mm reel of IEC 60286-3. */
const FLANGE_MM = 178;

export function ReelPicture({ outerMm, hubMm }: { readonly outerMm: string; readonly hubMm: string }) {
  const words = say(countWords);
  const outer = Math.min(FLANGE_MM, readFigure(outerMm) ?? 137);
  const hub = Math.min(outer, readFigure(hubMm) ?? 60);
  return (
    <svg class="reel-picture" viewBox="-100 -104 200 246" role="img" aria-label={words.picture}>
      <circle r={FLANGE_MM / 2} class="flange" />
      <circle r={outer / 2} class="wound" />
      <circle r={hub / 2} class="hub" />
      <circle r={6.5} class="bore" />
      <path d={`M0 -${FLANGE_MM / 2 - 2}v-12`} class="thin" />
      <text x="0" y="-94" text-anchor="middle" class="quiet">
        {words.flange}
      </text>
      <Arrow y={106} half={outer / 2} label={`D ${words.wound}`} />
      <Arrow y={128} half={hub / 2} label={`d ${words.hub}`} />
      <path d={`M-${outer / 2} 0V106M${outer / 2} 0V106`} class="thin" />
      <path d={`M-${hub / 2} 0V128M${hub / 2} 0V128`} class="thin" />
    </svg>
  );
}

function Arrow({ y, half, label }: { readonly y: number; readonly half: number; readonly label: string }) {
  const head = Math.min(5, half / 2);
  return (
    <>
      <path
        d={`M-${half} ${y}H${half}M-${half} ${y}l${head} -${head}M-${half} ${y}l${head} ${head}M${half} ${y}l-${head} -${head}M${half} ${y}l-${head} ${head}`}
        class="measure"
      />
      <text x="0" y={y + 11} text-anchor="middle" class="label">
        {label}
      </text>
    </>
  );
}
