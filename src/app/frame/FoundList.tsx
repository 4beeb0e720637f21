// What the camera's pass has found so far, beside the picture: reels that are wanted first, then what may not be used; in a sweep what
// is asked, and the slots that were not seen yet by name.

import type { SetupProgress } from '../../../shared/floor/progress.ts';
import type { Sweep } from '../../../shared/floor/state.ts';
import type { ScannedCode } from '../../../shared/labels/scan.ts';
import { Button } from '../ui/Button.tsx';
import { findWords } from '../words/find.ts';
import { verdictWords } from '../words/verdict.ts';
import { formatCount, say } from '../words/words.ts';
import { findShapes, lookOf, reelWord } from './find-looks.ts';
import type { FoundReel } from './find-model.ts';
import type { Swept } from './find-sweep.ts';
import type { Find, SlotAsked } from './use-find.ts';

const order = ['wanted', 'barred', 'stands', 'other'] as const;

/** Every reel that was read, the wanted ones first; the newest first among the same. */
export function FoundList({ find }: { readonly find: Find }) {
  const words = say(findWords);
  const reels = [...find.pan.found.values()].reverse().flatMap(({ key, copies }) => {
    const thing = find.thingOf(key);
    return thing !== null && 'reel' in thing ? [{ key, copies, thing }] : [];
  });
  const count = (is: FoundReel['is']) => reels.filter(({ thing }) => thing.is === is).length;
  const sorted = [...reels].sort((a, b) => order.indexOf(a.thing.is) - order.indexOf(b.thing.is));
  return (
    <div class="found" data-testid="found">
      <p role="status" data-testid="found-told">
        {reels.length === 0
          ? words.none
          : words.told(formatCount(count('wanted')), formatCount(count('barred')), formatCount(reels.length))}
      </p>
      <ul>
        {sorted.map(({ key, copies, thing }) => (
          <FoundRow key={key} thing={thing} copies={copies} />
        ))}
      </ul>
    </div>
  );
}

function FoundRow({ thing, copies }: { readonly thing: FoundReel; readonly copies: number }) {
  const words = say(findWords);
  const { look } = lookOf(thing, new Set());
  return (
    <li class={`is-${look}`} data-testid={`found-${thing.is}`}>
      <Shape look={look} />
      <span class="grow">
        <b class="code" translate={false}>
          {thing.text}
        </b>
        <small class="code" translate={false}>
          {thing.reel.reel ?? thing.reel.lot ?? ''}
          {copies > 1 && ` ${words.times(formatCount(copies))}`}
        </small>
      </span>
      <span class="word">{thing.is === 'other' ? words.other : reelWord(thing)}</span>
    </li>
  );
}

function Shape({ look }: { readonly look: ReturnType<typeof lookOf>['look'] }) {
  return (
    <svg class="find-shape" viewBox="-12 -12 24 24" width="26" height="26" aria-hidden="true">
      <path d={findShapes[look]} />
    </svg>
  );
}

interface SweptListProps {
  readonly find: Find;
  readonly progress: SetupProgress;
  /** That goes on; null where none does. */
  readonly sweep: Sweep | null;
  readonly onCheck: (slot: string, codes: readonly ScannedCode[]) => void;
}

export function SweptList({ find, progress, sweep, onCheck }: SweptListProps) {
  const words = say(findWords);
  const seen = new Set(sweep?.seen);
  const loaded = progress.slots.filter((each) => each.loaded !== null).map(({ slot }) => slot);
  const missing = loaded.filter((slot) => !seen.has(slot));
  return (
    <div class="found" data-testid="found">
      <p role="status" data-testid="found-told">
        {words.swept(formatCount(loaded.length - missing.length), formatCount(loaded.length))}
      </p>
      <ul>
        {find.asked.map((each) => (
          <AskedRow
            key={each.slot}
            asked={each}
            onCheck={(key) => onCheck(each.slot, find.pan.found.get(key)?.codes ?? [])}
          />
        ))}
      </ul>
      {missing.length > 0 && (
        <>
          <h3>{words.missing}</h3>
          <p class="missing code" translate={false} data-testid="find-missing">
            {missing.map((slot) => (
              <span key={slot}>{slot}</span>
            ))}
          </p>
        </>
      )}
    </div>
  );
}

function AskedRow({
  asked,
  onCheck,
}: {
  readonly asked: SlotAsked;
  readonly onCheck: (key: string) => void;
}) {
  const words = say(findWords);
  const isAgainst = asked.is === 'seen' && asked.swept.is === 'against';
  return (
    <li class={`asked ${isAgainst ? 'is-barred' : 'is-unknown'}`} data-testid="find-asked">
      <Shape look={isAgainst ? 'barred' : 'unknown'} />
      <span class="grow">
        {asked.is === 'several' ? words.several(asked.slot) : sweptText(asked.slot, asked.swept)}
      </span>
      {asked.is === 'seen' && (
        <Button testId="find-check" onPress={() => onCheck(asked.key)}>
          {words.check}
        </Button>
      )}
    </li>
  );
}

function sweptText(slot: string, swept: Swept): string {
  if (swept.is === 'against') return `${slot}: ${say(verdictWords).reasons[swept.why.code].title}`;
  return say(findWords).unsure(slot);
}
