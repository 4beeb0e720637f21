// Every reel that the log knows: where it is, how many parts it still has and how surely, its lot; counted or blocked from here.

import { useComputed } from '@preact/signals';
import { useMemo, useState } from 'preact/hooks';
import { blockReasons } from '../../../../shared/floor/fits.ts';
import { isReelKnown, reelOf } from '../../../../shared/floor/gone-reels.ts';
import { kindListed, kindOfReel } from '../../../../shared/floor/packs.ts';
import { hasOwnId } from '../../../../shared/floor/reel-id.ts';
import type { Reel } from '../../../../shared/floor/state.ts';
import { moistureOfParts, type PartMoistureKnown } from '../../../../shared/moisture/reel-life.ts';
import { useApp, useFloor } from '../../app.ts';
import { AirDialog } from '../../frame/AirDialog.tsx';
import { CountDialog, spread, type TakenCount } from '../../frame/CountDialog.tsx';
import { PackDialog } from '../../frame/packs-later.tsx';
import { leftOn } from '../../left-on.ts';
import { LongRows } from '../../long-rows.tsx';
import { useRefusal } from '../../may.ts';
import { reelName } from '../../reel-name.ts';
import { address } from '../../router.ts';
import { Button } from '../../ui/Button.tsx';
import { Field } from '../../ui/Field.tsx';
import { useSlices } from '../../use-slices.ts';
import { countWords } from '../../words/count.ts';
import { reelLifeText } from '../../words/life-text.ts';
import { printWords } from '../../words/print.ts';
import { stockWords } from '../../words/stock.ts';
import { formatCount, say } from '../../words/words.ts';
import { BlockDialog } from './Blocks.tsx';
import { lifeEndOf, listSteps, type ReelFilter, reelFilters } from './found-reels.ts';
import { isUsedUp, LeftOfReel, type Listed, whereText } from './listed.tsx';
import { PutAway, type PutReel } from './PutAway.tsx';
import { putOf, type ReelAct, ReelDialog } from './ReelDialog.tsx';
import { MergeDialog, SplitDialog } from './SplitMerge.tsx';

/** Reels drawn at once; a search narrows the rest. */
const SHOWN = 60;

interface ReelsProps {
  readonly query: string;
  readonly onQuery: (query: string) => void;
  /** The reel whose label was scanned last, null where none was. */
  readonly scanned: PutReel | null;
  /** What a label without an id said, which was scanned last; null where none was. */
  readonly fresh: Omit<PutReel, 'reel'> | null;
  /** The reel that lies open at first; null where none does. */
  readonly opened: string | null;
}

export function Reels(props: ReelsProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(stockWords);
  const [asked, setAsked] = useState<{ readonly reel: string; readonly query: string } | null>(
    props.opened === null ? null : { reel: props.opened, query: props.query },
  );
  const [doing, setDoing] = useState<{ readonly act: ReelAct; readonly listed: Listed } | null>(null);
  const [filter, setFilter] = useState<ReelFilter>('all');
  const [putting, setPutting] = useState<PutReel | null>(null);
  const { found, listedOf, lineOf, moist } = useFound(props.query, filter);
  const isNew =
    props.scanned !== null && props.scanned.reel === props.query && !isReelKnown(floor, props.scanned.reel);
  const refusal = useRefusal('verify-reel');
  // A scan or a search while a reel is open is about another one.
  const openReel = asked?.query === props.query ? reelOf(floor, asked.reel) : undefined;
  const opened = openReel ? listedOf(openReel) : null;
  if (floor.reels.size === 0 && floor.goneReels.size === 0 && !isNew && props.fresh === null)
    return <p class="empty">{words.noReels}</p>;
  if (found === null) return <p class="empty">{words.looking}</p>;
  const { shown, count } = found;
  return (
    <section class="stack">
      <Field
        more="no-print reel-search"
        label={words.search}
        testId="reel-search"
        type="search"
        autocomplete="off"
        value={props.query}
        onInput={props.onQuery}
      />
      <Filters filter={filter} count={count} onChoose={setFilter} />
      {count === 0 && <p class="empty">{words.none}</p>}
      {isNew && (
        <div>
          <Button tone="act" large testId="put-new" onPress={() => setPutting(props.scanned)}>
            {words.putNew}
          </Button>
        </div>
      )}
      {props.fresh !== null && (
        <div>
          <Button
            tone="act"
            large
            testId="label-new"
            disabledReason={refusal}
            onPress={() => {
              if (props.fresh !== null) app.labelWanted.value = { fresh: props.fresh };
            }}
          >
            {say(printWords).newPackage}
          </Button>
        </div>
      )}
      <div class="reel-list" data-testid="reel-list">
        <LongRows
          items={shown}
          keyOf={({ reel }) => reel}
          draw={(reel) => (
            <ReelRow
              key={reel.reel}
              listed={listedOf(reel)}
              onOpen={() => setAsked({ reel: reel.reel, query: props.query })}
            />
          )}
        />
      </div>
      {count > shown.length && <p class="soft">{words.more(count - shown.length)}</p>}
      <div class="no-print">
        <a class="button" href={address('plant', 'parts', 'counts')} data-testid="reels-from-file">
          {words.fromFile}
        </a>
      </div>
      {opened && (
        <ReelDialog
          listed={opened}
          onClose={() => setAsked(null)}
          onAct={(act) => {
            setAsked(null);
            if (act === 'put') setPutting(putFrom(opened.reel, props.scanned));
            else setDoing({ act, listed: opened });
          }}
        />
      )}
      {doing && (
        <Doing
          act={doing.act}
          listed={listedOf(doing.listed.reel)}
          line={lineOf(doing.listed.reel)}
          part={moist.get(doing.listed.reel.part ?? '') ?? null}
          onClose={() => setDoing(null)}
        />
      )}
      {putting && (
        <PutAway
          reel={putting}
          before={reelOf(floor, putting.reel)?.place ?? ''}
          onClose={() => setPutting(null)}
        />
      )}
    </section>
  );
}

/** What is put away: of a reel that was used up long ago its label in hand tells more than the log. */
function putFrom(reel: Reel, scanned: PutReel | null): PutReel {
  return reel.gone && scanned?.reel === reel.reel ? scanned : putOf(reel);
}

/** What a search finds, once it is found, and what is reckoned of each reel. */
function useFound(query: string, filter: ReelFilter) {
  const app = useApp();
  const floor = useFloor();
  // A reel of the store lies open where this tablet's line is.
  const lineOf = (reel: Reel) => reel.at?.line ?? app.line.value;
  const moist = useMemo(() => moistureOfParts(floor), [floor.setups.size, floor.parts.size]);
  const zone = floor.lines.get(app.line.value ?? '')?.zone ?? 'UTC';
  // What is left of a floor life is told in minutes.
  const minute = useComputed(() => Math.floor(app.nowMs.value / 60_000)).value;
  const nowMs = app.clock.nowMs();
  const endOf = (reel: Reel) =>
    lifeEndOf(floor, reel, { line: lineOf(reel), part: moist.get(reel.part ?? '') ?? null, nowMs });
  const found = useSlices(
    () => listSteps(floor, { query, filter, most: SHOWN, endOf }),
    [app.tick.value, minute, query, filter],
  );
  const listedOf = (reel: Reel): Listed => ({
    reel,
    isBlocked: blockReasons(floor, reel).length > 0,
    ...leftOn(floor, reel),
    life: reelLifeText(floor, reel.reel, {
      line: lineOf(reel),
      part: moist.get(reel.part ?? '') ?? null,
      nowMs,
      zone,
    }),
  });
  return { found, listedOf, lineOf, moist };
}

/** What the list is narrowed to, and how many that are. */
function Filters(props: {
  readonly filter: ReelFilter;
  readonly count: number;
  readonly onChoose: (filter: ReelFilter) => void;
}) {
  const words = say(stockWords);
  return (
    <div class="row no-print reel-filter">
      <select
        aria-label={words.filter}
        data-testid="reels-filter"
        value={props.filter}
        onChange={(event) =>
          props.onChoose(reelFilters.find((each) => each === event.currentTarget.value) ?? 'all')
        }
      >
        {reelFilters.map((each) => (
          <option key={each} value={each}>
            {words.filters[each]}
          </option>
        ))}
      </select>
      <span class="soft grow">
        {words.found(props.count)}. {words.searchHelp}
      </span>
    </div>
  );
}

interface DoingProps {
  readonly act: ReelAct;
  readonly listed: Listed;
  /** The line whose air counts for it. */
  readonly line: string | null;
  readonly part: PartMoistureKnown | null;
  readonly onClose: () => void;
}

/** The dialog of what is done with a reel. */
function Doing({ act, listed, line, part, onClose }: DoingProps) {
  const floor = useFloor();
  const { reel, life } = listed;
  switch (act) {
    case 'count':
      return <ReelCount listed={listed} onClose={onClose} />;
    case 'split':
      return <SplitDialog reel={reel} onClose={onClose} />;
    case 'merge':
      return <MergeDialog reel={reel} onClose={onClose} />;
    case 'block':
      return <BlockDialog reel={reel} onClose={onClose} />;
    case 'air':
      return <AirDialog reel={reel} line={line} before={life} part={part} onClose={onClose} />;
    case 'pack':
      return <PackDialog reel={reel} wanted={kindListed(floor, reel.part)} onClose={onClose} />;
    case 'put':
      return null;
    default:
      return act satisfies never;
  }
}

function ReelRow({ listed, onOpen }: { readonly listed: Listed; readonly onOpen: () => void }) {
  const words = say(stockWords);
  const { reel, isBlocked, life } = listed;
  const isEmpty = isUsedUp(listed);
  return (
    <button
      type="button"
      class={`reel-row${isEmpty ? ' gone' : ''}`}
      data-testid={`reel-${reel.reel}`}
      onClick={onOpen}
    >
      <span class="names">
        <b class="code">{hasOwnId(reel.reel) ? reel.reel : '–'}</b>
        <span class="code">{reel.part ?? reel.supplierPart}</span>
      </span>
      <span class="marks">
        {isBlocked && <span class="chip stop">✕ {words.blocked}</span>}
        {life !== null && !isEmpty && (
          <span class={life.tone === null ? 'soft' : `chip ${life.tone}`} data-testid={`life-${reel.reel}`}>
            {life.text}
          </span>
        )}
      </span>
      <span class="lot soft">
        {reel.lot !== null && (
          <>
            {words.lot} <span class="code">{reel.lot}</span>
            {reel.dateCode !== null && ` · ${reel.dateCode}`}
          </>
        )}
      </span>
      <span class="where">{whereText(reel, isEmpty)}</span>
      <span class="left">
        <LeftOfReel listed={listed} />
      </span>
    </button>
  );
}

function ReelCount({ listed, onClose }: { readonly listed: Listed; readonly onClose: () => void }) {
  const app = useApp();
  const floor = useFloor();
  const { reel, parts, sd } = listed;
  const setup = floor.setups.get(floor.chosen.get(app.line.value ?? '') ?? '');
  const take = ({ quantity, sd: newSd, basis, calibration }: TakenCount) => {
    const at = reel.at ?? { line: null, slot: null };
    const run = at.line === null ? null : floor.runs.get(floor.current.get(at.line) ?? '');
    const facts = { ...at, reel: reel.reel, part: reel.part, lot: reel.lot, panels: run?.done ?? 0 };
    const text = say(countWords).saved(reelName(reel.reel), formatCount(quantity), spread(newSd));
    const label = () => {
      app.labelWanted.value = { reel: reel.reel };
    };
    app.record(
      [
        { kind: 'reel.counted', payload: { ...facts, quantity, sd: newSd, basis } },
        ...(calibration ? [{ kind: 'reel.calibrated' as const, payload: calibration }] : []),
      ],
      {
        // A count is the moment to mark what was counted, where it lies off the line.
        notice:
          reel.at === null && quantity > 0
            ? { tone: 'plain', text, act: { label: say(printWords).label, run: label } }
            : { tone: 'plain', text },
      },
    );
    onClose();
  };
  return (
    <CountDialog
      what={reelName(reel.reel)}
      part={reel.part}
      kind={kindOfReel(floor, reel)}
      pitchMm={setup?.slots.find((slot) => slot.part === reel.part)?.pitchMm ?? null}
      before={parts === null ? null : { parts, sd, basis: reel.at ? 'counted-down' : reel.basis }}
      fullReel={floor.fullReels.get(reel.part ?? '') ?? null}
      fullParts={reel.basis === 'label' ? reel.count : null}
      onCount={take}
      onClose={onClose}
    />
  );
}
