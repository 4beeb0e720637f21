// What the drawings of the help are made of: the parts that the screens themselves show, at the sizes of a drawing. A scene runs as the
// language runs, and its arrows turn with it; a tape and its time axis never do. Pictures of screens were refused: they are out of date
// with the next change, in one language, and in one theme.

import type { ComponentChildren } from 'preact';
import type { ScreenName } from '../router.ts';
import { code128Bars } from '../ui/code128.ts';
import { Icon, type IconName } from '../ui/Icon.tsx';
import { PracticeShape } from '../ui/PracticeMark.tsx';
import { VerdictShape, verdictTones } from '../ui/Shape.tsx';
import { TapeStrip } from '../ui/TapeStrip.tsx';

/** Screens with a help: all that have the frame. */
export type HelpScreen = Exclude<ScreenName, 'wall'>;

/** One part of a drawing, or an arrow to the next. */
type Part =
  | { readonly icon: IconName; readonly tone?: 'go' | 'care' | 'stop' | 'act' }
  | 'then'
  | 'tape'
  | 'accepted'
  | 'refused'
  | 'held'
  | 'cells'
  | 'rows'
  | 'ticked'
  | 'code'
  | 'run'
  | 'life'
  | 'practice';

const icon = (name: IconName, tone?: 'go' | 'care' | 'stop' | 'act'): Part =>
  tone === undefined ? { icon: name } : { icon: name, tone };

/** Three drawings a screen, one to each line of its help. */
export const helpScenes: Readonly<
  Record<HelpScreen, readonly [readonly Part[], readonly Part[], readonly Part[]]>
> = {
  line: [['tape'], [icon('walk', 'act'), 'then', icon('splice')], ['run']],
  load: [['cells'], ['code', 'then', icon('reel')], ['accepted', 'refused', 'held']],
  change: [
    [icon('change'), 'then', 'rows'],
    ['code', 'then', icon('check', 'go')],
    ['ticked', 'then', icon('play', 'go')],
  ],
  stock: [[icon('reel'), 'then', icon('line')], ['code', 'then', icon('stock')], ['life']],
  log: [
    ['rows', icon('person')],
    [icon('reel'), 'then', icon('stock'), 'then', icon('log')],
    [icon('person'), 'then', icon('person')],
  ],
  plant: [
    ['rows', 'then', 'cells'],
    [icon('person'), icon('print')],
    ['practice', 'then', icon('line')],
  ],
  search: [
    ['code', 'then', icon('search', 'act')],
    [icon('reel'), icon('stock'), icon('log'), icon('person')],
    ['rows', 'then', icon('reel')],
  ],
  lines: [
    ['run', 'rows'],
    [icon('bell', 'care'), 'held'],
    ['rows', 'then', icon('line')],
  ],
};

/** Size of one part, px. */
const PART = 44;

export function HelpScene({ parts }: { readonly parts: readonly Part[] }) {
  return (
    <div class="help-scene" aria-hidden="true">
      {parts.map((part, at) => (
        <HelpPart key={at} part={part} />
      ))}
    </div>
  );
}

function HelpPart({ part }: { readonly part: Part }): ComponentChildren {
  if (typeof part === 'object')
    return (
      <span class={`part ${part.tone ?? ''}`}>
        <Icon name={part.icon} size={PART} />
      </span>
    );
  switch (part) {
    case 'then':
      return (
        <span class="then">
          <Icon name="right" size={20} />
        </span>
      );
    case 'tape':
      return <TapeStrip width={190} height={48} early={128} late={168} opens={84} closes={126} />;
    case 'accepted':
    case 'refused':
    case 'held':
      return (
        <span class={`part ${verdictTones[part]}`}>
          <VerdictShape verdict={part} size={PART} />
        </span>
      );
    case 'practice':
      return <PracticeShape size={PART} />;
    default:
      return drawings[part];
  }
}

/** Slots of a bank: loaded ones filled, one that is next with a ring. */
const cells = (
  <svg aria-hidden="true" class="drawn" width={96} height={PART} viewBox="0 0 96 44">
    {[0, 1, 2, 3, 4, 5, 6, 7].map((at) => (
      <rect
        key={at}
        x={3 + (at % 4) * 24}
        y={at < 4 ? 3 : 25}
        width={18}
        height={16}
        rx={3}
        class={at < 5 ? 'full' : at === 5 ? 'next' : 'empty'}
      />
    ))}
  </svg>
);

const rows = (
  <svg aria-hidden="true" class="drawn" width={60} height={PART} viewBox="0 0 60 44">
    <path d="M16 8h40M16 22h34M16 36h38" class="stroke" />
    <path d="M4 8h2M4 22h2M4 36h2" class="stroke" />
  </svg>
);

const ticked = (
  <svg aria-hidden="true" class="drawn" width={60} height={PART} viewBox="0 0 60 44">
    <path d="M24 8h32M24 22h28M24 36h30" class="stroke" />
    <path d="M3 8l4 4 7-8M3 22l4 4 7-8M3 36l4 4 7-8" class="stroke go" />
  </svg>
);

const { bars, width: barsWidth } = code128Bars('M1-F-003');
const code = (
  <svg aria-hidden="true" class="drawn" width={84} height={PART} viewBox="0 0 84 44">
    <rect x={1} y={1} width={82} height={42} rx={5} class="paper" />
    <g transform={`translate(9 9) scale(${66 / barsWidth} 1)`}>
      {bars.map((bar) => (
        <rect key={bar.from} x={bar.from} y={0} width={bar.width} height={26} class="bar" />
      ))}
    </g>
  </svg>
);

/** Progress of a run and its stop. */
const run = (
  <svg aria-hidden="true" class="drawn" width={120} height={PART} viewBox="0 0 120 44">
    <rect x={1} y={8} width={118} height={28} rx={8} class="paper" />
    <path d="M14 15l11 7-11 7z" class="stroke go" />
    <path d="M38 22h66" class="track" />
    <path d="M38 22h40" class="track go" />
  </svg>
);

/** What is left of a floor life. */
const life = (
  <svg aria-hidden="true" class="drawn" width={120} height={PART} viewBox="0 0 120 44">
    <circle cx={22} cy={22} r={17} class="stroke" />
    <path d="M22 11v11l8 5" class="stroke" />
    <path d="M52 22h62" class="track" />
    <path d="M52 22h24" class="track care" />
  </svg>
);

const drawings = { cells, rows, ticked, code, run, life } as const;
