// Every reel that the log knows: where it is, how many parts it still has and how surely, its lot; counted or blocked from here.

import { useMemo, useState } from 'preact/hooks';
import { blockReasons } from '../../../../shared/floor/fits.ts';
import { placeOf } from '../../../../shared/floor/fold-places.ts';
import { hasOwnId } from '../../../../shared/floor/reel-id.ts';
import type { Reel } from '../../../../shared/floor/state.ts';
import { compareText } from '../../../../shared/log/order.ts';
import { moistureOfParts } from '../../../../shared/moisture/reel-life.ts';
import { useApp, useFloor } from '../../app.ts';
import { AirDialog } from '../../frame/AirDialog.tsx';
import { CountDialog, spread, type TakenCount } from '../../frame/CountDialog.tsx';
import { leftOn } from '../../left-on.ts';
import { useRefusal } from '../../may.ts';
import { reelName } from '../../reel-name.ts';
import { Button } from '../../ui/Button.tsx';
import { Field } from '../../ui/Field.tsx';
import { countWords } from '../../words/count.ts';
import { type ReelLifeText, reelLifeText } from '../../words/life-text.ts';
import { moistureWords } from '../../words/moisture.ts';
import { printWords } from '../../words/print.ts';
import { stockWords } from '../../words/stock.ts';
import { formatCount, say } from '../../words/words.ts';
import { BlockDialog } from './Blocks.tsx';
import { PutAway, type PutReel } from './PutAway.tsx';

/** Reels drawn at once; a search narrows the rest. */
const SHOWN = 60;

interface Listed {
  readonly reel: Reel;
  readonly parts: number | null;
  readonly sd: number;
  readonly isBlocked: boolean;
  /** Null where its parts bear any time out of the bag. */
  readonly life: ReelLifeText | null;
}

function matches(reel: Reel, query: string): boolean {
  const words = query
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  const text = [
    reel.reel,
    reel.part,
    reel.supplierPart,
    reel.lot,
    reel.dateCode,
    reel.at?.slot,
    placeOf(reel),
  ]
    .join(' ')
    .toLowerCase();
  return words.every((word) => text.includes(word));
}

interface ReelsProps {
  readonly query: string;
  readonly onQuery: (query: string) => void;
  /** The reel whose label was scanned last, null where none was. */
  readonly scanned: PutReel | null;
  /** What a label without an id said, which was scanned last; null where none was. */
  readonly fresh: Omit<PutReel, 'reel'> | null;
}

export function Reels(props: ReelsProps) {
  const app = useApp();
  const floor = useFloor();
  // A reel of the store lies open where this tablet's line is.
  const lineOf = (reel: Reel) => reel.at?.line ?? app.line.value;
  const words = say(stockWords);
  const [counting, setCounting] = useState<Listed | null>(null);
  const [blocking, setBlocking] = useState<Reel | null>(null);
  const [putting, setPutting] = useState<PutReel | null>(null);
  const [airing, setAiring] = useState<Listed | null>(null);
  const moist = useMemo(() => moistureOfParts(floor), [floor.setups.size, floor.parts.size]);
  const zone = floor.lines.get(app.line.value ?? '')?.zone ?? 'UTC';
  const nowMs = app.clock.nowMs();
  const isNew =
    props.scanned !== null && props.scanned.reel === props.query && !floor.reels.has(props.scanned.reel);
  const refusal = useRefusal('verify-reel');
  if (floor.reels.size === 0 && !isNew && props.fresh === null) return <p class="empty">{words.noReels}</p>;
  const found = [...floor.reels.values()]
    .filter((reel) => matches(reel, props.query))
    .sort((a, b) => compareText(a.part ?? '', b.part ?? '') || compareText(a.reel, b.reel));
  return (
    <section class="stack">
      <Field
        more="no-print"
        label={words.search}
        testId="reel-search"
        type="search"
        autocomplete="off"
        value={props.query}
        onInput={props.onQuery}
        help={`${words.searchHelp} ${words.found(found.length)}`}
      />
      {found.length === 0 && <p class="empty">{words.none}</p>}
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
        {found.slice(0, SHOWN).map((reel) => (
          <ReelRow
            key={reel.reel}
            listed={{
              reel,
              isBlocked: blockReasons(floor, reel).length > 0,
              ...leftOn(floor, reel),
              life: reelLifeText(floor, reel.reel, {
                line: lineOf(reel),
                part: moist.get(reel.part ?? '') ?? null,
                nowMs,
                zone,
              }),
            }}
            onAir={setAiring}
            onCount={setCounting}
            onBlock={setBlocking}
            onPut={setPutting}
          />
        ))}
      </div>
      {found.length > SHOWN && <p class="soft">{words.more(found.length - SHOWN)}</p>}
      {counting && <ReelCount listed={counting} onClose={() => setCounting(null)} />}
      {putting && (
        <PutAway
          reel={putting}
          before={floor.reels.get(putting.reel)?.place ?? ''}
          onClose={() => setPutting(null)}
        />
      )}
      {airing && (
        <AirDialog
          reel={airing.reel}
          line={lineOf(airing.reel)}
          before={airing.life}
          part={moist.get(airing.reel.part ?? '') ?? null}
          onClose={() => setAiring(null)}
        />
      )}
      {blocking && <BlockDialog reel={blocking} onClose={() => setBlocking(null)} />}
    </section>
  );
}

function ReelRow(props: {
  readonly listed: Listed;
  readonly onCount: (listed: Listed) => void;
  readonly onBlock: (reel: Reel) => void;
  readonly onPut: (reel: PutReel) => void;
  readonly onAir: (listed: Listed) => void;
}) {
  const app = useApp();
  const words = say(stockWords);
  const { reel, parts, sd, isBlocked, life } = props.listed;
  const verify = useRefusal('verify-reel');
  const block = useRefusal('block-material');
  const isEmpty = parts !== null && Math.round(parts) === 0;
  return (
    <div class={`reel-row${isEmpty ? ' gone' : ''}`} data-testid={`reel-${reel.reel}`}>
      <div class="names">
        <b class="code">{hasOwnId(reel.reel) ? reel.reel : '–'}</b>
        <span class="code">{reel.part ?? reel.supplierPart}</span>
        {isBlocked && <span class="chip stop">✕ {words.blocked}</span>}
      </div>
      <span class="soft">
        {reel.lot !== null && (
          <>
            {words.lot} <span class="code">{reel.lot}</span>
            {reel.dateCode !== null && ` · ${reel.dateCode}`}
          </>
        )}
        {life !== null && !isEmpty && (
          <>
            <br />
            <span class={life.tone === null ? '' : `chip ${life.tone}`} data-testid={`life-${reel.reel}`}>
              {life.text}
            </span>
          </>
        )}
      </span>
      <span class="where">
        {reel.at ? words.onSlot(reel.at.slot) : isEmpty ? '' : (placeOf(reel) ?? words.offLine)}
      </span>
      <span class="left">
        {parts === null ? (
          words.unknown
        ) : isEmpty ? (
          words.empty
        ) : (
          <>
            <b>{formatCount(parts)}</b>
            {sd > 0 && <span class="soft"> ± {spread(sd)}</span>}
            <br />
            <small class="soft">{say(countWords).bases[reel.at ? 'counted-down' : reel.basis]}</small>
          </>
        )}
      </span>
      <span class="acts no-print">
        <Button
          onPress={() => props.onCount(props.listed)}
          disabledReason={verify}
          testId={`count-${reel.reel}`}
        >
          {words.recount}
        </Button>
        {!isEmpty && (
          <Button
            onPress={() => {
              app.labelWanted.value = { reel: reel.reel };
            }}
            disabledReason={verify}
            testId={`mark-${reel.reel}`}
          >
            {say(printWords).label}
          </Button>
        )}
        {reel.at === null && !isEmpty && hasOwnId(reel.reel) && (
          <Button
            onPress={() => props.onPut(putOf(reel))}
            disabledReason={verify}
            testId={`put-${reel.reel}`}
          >
            {words.put}
          </Button>
        )}
        {life !== null && !isEmpty && hasOwnId(reel.reel) && (
          <Button
            onPress={() => props.onAir(props.listed)}
            disabledReason={verify}
            testId={`air-${reel.reel}`}
          >
            {say(moistureWords).open}
          </Button>
        )}
        {!isBlocked && (
          <Button
            tone="stop"
            onPress={() => props.onBlock(reel)}
            disabledReason={block}
            testId={`block-${reel.reel}`}
          >
            {words.block}
          </Button>
        )}
      </span>
    </div>
  );
}

function putOf({ reel, part, supplierPart, lot, dateCode, count }: Reel): PutReel {
  return { reel, part, supplierPart, lot, dateCode, quantity: count };
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
      pitchMm={setup?.slots.find((slot) => slot.part === reel.part)?.pitchMm ?? null}
      before={parts === null ? null : { parts, sd, basis: reel.at ? 'counted-down' : reel.basis }}
      fullReel={floor.fullReels.get(reel.part ?? '') ?? null}
      fullParts={reel.basis === 'label' ? reel.count : null}
      onCount={take}
      onClose={onClose}
    />
  );
}
