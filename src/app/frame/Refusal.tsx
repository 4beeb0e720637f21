// A refusal takes the screen: band, octagon and word; what differs, character by character or by size; where this reel belongs and what
// is right here; what to do, with the caution where the hand goes.

import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { mixedUp } from '../../../shared/floor/look-alikes.ts';
import { type FloorState, slotKey } from '../../../shared/floor/state.ts';
import { differingCharacters } from '../../../shared/labels/part-difference.ts';
import { type Reason, reasonVerdicts } from '../../../shared/verdict/reasons.ts';
import { useApp, useFloor } from '../app.ts';
import type { DeskRun, ShownVerdict } from '../desk/desk.ts';
import { lineToTell } from '../line-in-hand.ts';
import { Button } from '../ui/Button.tsx';
import { useTakesPlace } from '../ui/place.ts';
import { VerdictShape } from '../ui/Shape.tsx';
import { whichPanels } from '../which-panels.ts';
import { heldWords } from '../words/held.ts';
import { partListWords } from '../words/part-list.ts';
import { refusalWords } from '../words/refusal.ts';
import { verdictWords } from '../words/verdict.ts';
import { formatTime, say } from '../words/words.ts';
import { longestWord } from './far-word.ts';
import { likenessText } from './LookAlikes.tsx';
import { reasonFacts } from './reason-facts.ts';
import { type Compared, comparedBy, feederFor, homesOf, rightReelFor, unloadFirst } from './refusal-model.ts';
import { UnloadDialog } from './UnloadDialog.tsx';

/** Slots named; the rest is in the setup. */
const HOMES_SHOWN = 3;

/** Two part numbers one above the other: what differs is marked, with a sign between. Shorter pieces are filled up, so that columns stay. */
function characterRows({ wanted, found }: { readonly wanted: string; readonly found: string }) {
  const pieces = differingCharacters(wanted, found);
  const fill = (text: string, other: string) => '\u00b7'.repeat(Math.max(0, other.length - text.length));
  const row = (side: 'wanted' | 'found') =>
    pieces.map((piece, at) => {
      const text = piece[side];
      const other = piece[side === 'wanted' ? 'found' : 'wanted'];
      return piece.same ? (
        text
      ) : (
        <span key={at}>
          {text !== '' && <mark>{text}</mark>}
          <i aria-hidden="true" data-raw>
            {fill(text, other)}
          </i>
        </span>
      );
    });
  return { wanted: row('wanted'), found: row('found'), pieces };
}

function Comparison({ shown, compared }: { readonly shown: ShownVerdict; readonly compared: Compared }) {
  const words = say(verdictWords);
  const more = say(refusalWords);
  const { wanted, found, isClosest, unit } = compared;
  const rows = characterRows({ wanted, found });
  const differ = rows.pieces.reduce(
    (sum, piece) => sum + (piece.same ? 0 : Math.max(piece.wanted.length, piece.found.length)),
    0,
  );
  const long = Math.max(wanted.length, found.length) > 16;
  const signs = rows.pieces
    .map(({ same, wanted: a, found: b }) => (same ? '\u00a0' : '≠').repeat(Math.max(a.length, b.length)))
    .join('');
  return (
    <div class={`pair${long ? ' long' : ''}${unit === 'mm' ? ' sizes' : ''}`}>
      <p>
        {isClosest && `${more.closest}: `}
        {words.wants(isClosest ? String(shown.reasons[0]?.['slot'] ?? '') : (shown.slot ?? ''))}
      </p>
      <p class="code chars" translate={false}>
        {unit === 'mm' ? <mark>{wanted} mm</mark> : rows.wanted}
      </p>
      {!long && (
        <p class="code chars signs" aria-hidden="true">
          {unit === 'mm' ? '≠' : signs}
        </p>
      )}
      <p class="code chars" translate={false}>
        {unit === 'mm' ? <mark>{found} mm</mark> : rows.found}
      </p>
      <p>{unit === 'mm' ? shown.feeder : words.says}</p>{' '}
      {unit === 'part' && <p class="soft">{more.characters(differ)}</p>}
    </div>
  );
}

/** A mix-up of two parts that look alike names the pair, so that the next who fetches knows. */
function MixUp({ compared: { wanted, found, unit } }: { readonly compared: Compared }) {
  const pair = unit === 'part' ? mixedUp(useFloor(), wanted, found) : null;
  if (pair === null) return null;
  return (
    <p class="say" data-testid="mix-up">
      ≈ {say(partListWords).alike.mixUp(wanted, found, likenessText(pair))}
    </p>
  );
}

/** Where this reel belongs, and what is right here. */
function WhereTo({ shown }: { readonly shown: ShownVerdict }) {
  const app = useApp();
  const floor = useFloor();
  const more = say(refusalWords);
  const { line } = shown;
  if (shown.bad === 'feeder') {
    const feeder = feederFor(floor, line, shown.slot);
    return (
      <div class="go">
        <section>
          <small>{more.feederToFetch}</small>
          {feeder === null ? <span>{more.feederNone}</span> : <b class="code">{feeder}</b>}
        </section>
      </div>
    );
  }
  const homes = homesOf(floor, line, shown);
  const right = rightReelFor(floor, { line, slot: shown.slot, nowMs: app.clock.nowMs() });
  const [first] = homes;
  const nameOf = (home: (typeof homes)[number]) =>
    home.line === null ? home.slot : more.onLine(home.slot, floor.lines.get(home.line)?.name ?? home.line);
  return (
    <div class="go">
      <section>
        <small>{more.belongsAt}</small>
        {first === undefined ? (
          <span>{more.belongsNowhere}</span>
        ) : (
          <>
            <b class="code">{homes.slice(0, HOMES_SHOWN).map(nameOf).join(', ')}</b>
            <span>{first.isLoaded ? more.hasReel : more.lacksReel}</span>
          </>
        )}
      </section>
      {right !== null && shown.slot !== null && (
        <section>
          <small>{more.rightReel(shown.slot)}</small>
          <b class="code">{right.part}</b>
          <span class={right.reel === null ? '' : 'code'}>
            {right.reel === null
              ? more.rightReelNone
              : [right.place, more.rightReelAt(right.reel, right.more)].filter(Boolean).join(' · ')}
          </span>
        </section>
      )}
    </div>
  );
}

/** Where the panels are asked for that a reel found by a check may be on; null where none is in question. */
function panelsOf(floor: FloorState, line: string, { act, slot, entry, reasons, reel }: ShownVerdict) {
  if (act !== 'sweep' || slot === null) return null;
  const has = (code: Reason['code']) => reasons.some((reason) => reason.code === code);
  if (has('not-the-loaded-reel')) return whichPanels({ ...reel, cause: 'wrong-reel', of: entry });
  const tape = floor.slots.get(slotKey(line, slot))?.tapes.at(-1);
  if (!has('floor-life-over') || !tape) return null;
  return whichPanels({ ...tape, cause: 'floor-life', of: tape.entry });
}

export function Refusal({ desk, shown }: { readonly desk: DeskRun; readonly shown: ShownVerdict }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(verdictWords);
  const more = say(refusalWords);
  const { line } = shown;
  const zone = floor.lines.get(line)?.zone ?? 'UTC';
  const band = useTakesPlace<HTMLElement>();
  const title = useId();
  const [unloading, setUnloading] = useState<string | null>(null);
  const inTheWay = unloadFirst(line, shown);
  const wasInTheWay = useRef(inTheWay !== null && floor.slots.has(slotKey(line, inTheWay)));
  const isOutOfTheWay = wasInTheWay.current && inTheWay !== null && !floor.slots.has(slotKey(line, inTheWay));
  // What stood in the way is off, as far as the log says: the reel in hand is judged anew.
  useEffect(() => {
    if (isOutOfTheWay) desk.again();
  }, [isOutOfTheWay]);
  const [first, ...rest] = shown.reasons;
  if (!first) return null;
  const compared = comparedBy(shown);
  const others = rest.filter(({ code }) => reasonVerdicts[code] !== 'accepted');
  const home =
    shown.bad === 'reel' ? homesOf(floor, line, shown).find((each) => each.line === null) : undefined;
  const canUnload = inTheWay !== null && floor.slots.has(slotKey(line, inTheWay));
  const loaded = unloading === null ? undefined : floor.slots.get(slotKey(line, unloading));
  const panels = panelsOf(floor, line, shown);
  const lineName = lineToTell(app, line);
  const goesOn = first.code === 'wrong-part' || first.code === 'reel-elsewhere';
  return (
    <section
      ref={band}
      class="verdict refused taken"
      role="alert"
      aria-labelledby={title}
      data-testid="verdict"
      data-verdict="refused"
      style={{ '--letters': longestWord(words.refused) }}
    >
      <div class="head">
        <VerdictShape verdict="refused" size={112} />
        <div>
          <p class="kind">
            {words.refused}
            {lineName !== null && <span class="at"> · {lineName}</span>}
          </p>
          <h1 id={title}>{words.reasons[first.code].title}</h1>
          <p>
            {words.reasons[first.code].act} {shown.act === 'load' && more.nothingLoaded}
          </p>
        </div>
        <small>{more.inLog(formatTime(shown.atMs, zone))}</small>
      </div>
      <div class="why">
        <div class="cmp">
          {compared !== null && <Comparison shown={shown} compared={compared} />}
          <p class="say">{words.reasons[first.code].say(reasonFacts(first))}</p>
          {compared !== null && <MixUp compared={compared} />}
          {others.map((reason) => (
            <p class="also" key={reason.code}>
              <b>{words.also}: </b>
              {words.reasons[reason.code].title}. {words.reasons[reason.code].say(reasonFacts(reason))}
            </p>
          ))}
        </div>
        <WhereTo shown={shown} />
      </div>
      <div class="foot">
        <p class="mind">⚠ {more.reachIn}</p>
        <div class="acts">
          {inTheWay !== null && canUnload && (
            <Button tone="act" large testId="verdict-unload" onPress={() => setUnloading(inTheWay)}>
              {more.unload(inTheWay)}
            </Button>
          )}
          <Button tone={canUnload ? 'plain' : 'act'} large onPress={desk.goOn} testId="verdict-go-on">
            {shown.bad === 'feeder' ? more.anotherFeeder : words.another}
          </Button>
          {panels !== null && (
            <a class="button large" href={panels} onClick={desk.goOn} data-testid="verdict-panels">
              {say(heldWords).which}
            </a>
          )}
          {home !== undefined && !home.isLoaded && goesOn && !canUnload && (
            <Button large onPress={desk.carryOn} testId="verdict-carry-on">
              {more.carryOn(home.slot)}
            </Button>
          )}
        </div>
      </div>
      {loaded && <UnloadDialog loaded={loaded} onClose={() => setUnloading(null)} />}
    </section>
  );
}
