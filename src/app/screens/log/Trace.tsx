// Quality's question: which panels carry a lot, what is on a panel. Answered by the server where it is reached, since it keeps an
// index of the plant's whole log; else from the log on this tablet.

import { useEffect, useLayoutEffect, useState } from 'preact/hooks';
import { personByBadge } from '../../../../shared/floor/badge.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import { type PanelRun, type TracedPlace, tracePanel, tracePlaces } from '../../../../shared/trace/ask.ts';
import { partsAsked } from '../../../../shared/trace/material.ts';
import { PASTE_SLOT } from '../../../../shared/trace/pasted.ts';
import type { Guess } from '../../../../shared/trace/stretches.ts';
import { useApp, useFloor } from '../../app.ts';
import {
  askServer,
  type FoundPlaces,
  traceKinds as kinds,
  questionOf,
  type Traced,
  type TraceKind,
} from '../../ask-trace.ts';
import { useNotWhole } from '../../behind.ts';
import { letOut } from '../../let-out.ts';
import { useRefusal } from '../../may.ts';
import { place } from '../../router.ts';
import { Button } from '../../ui/Button.tsx';
import { Field, SelectField } from '../../ui/Field.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { heldWords } from '../../words/held.ts';
import { packWords } from '../../words/packs.ts';
import { pasteWords } from '../../words/paste.ts';
import { shellWords } from '../../words/shell.ts';
import { traceWords } from '../../words/trace.ts';
import { formatCount, formatDay, say } from '../../words/words.ts';
import { HoldPanels } from './HoldPanels.tsx';
import { askedByName, askedFrom, type HoldAsked } from './hold-asked.ts';
import { PictureToOpen } from './LabelPicture.tsx';
import { lineName, personName, runName, zoneOf } from './names.ts';
import { ReelParts } from './ReelParts.tsx';
import { readIndex } from './read-index.ts';
import { placesToCsv } from './trace-csv.ts';

export function Trace() {
  const app = useApp();
  const floor = useFloor();
  const words = say(traceWords);
  const notWhole = useNotWhole();
  // A warning links here with what it asks for.
  const [, asked, askedText = '', cause = '', of = ''] = place.value.rest;
  const [kind, setKind] = useState<TraceKind>(kinds.find((each) => each === asked) ?? 'lot');
  const [text, setText] = useState(askedText);
  const [read, setRead] = useState<number | null>(null);
  const [found, setFound] = useState<Traced | null>(null);
  useLayoutEffect(
    () =>
      app.scans.take((scan) => {
        const code = scan.codes[0]?.text.trim();
        if (code === undefined) return false;
        if (personByBadge(app.store.floor().people, code)) return false; // a badge signs in, here as anywhere
        setText(code);
        setKind((before) => (before === 'person' ? 'lot' : before));
        return true;
      }),
    [],
  );

  useEffect(() => {
    if (askedText !== '') ask().catch(() => undefined); // a person may ask again
  }, []);

  async function ask(): Promise<void> {
    const wanted = text.trim();
    if (wanted === '') return;
    setFound((await askServer(app, kind, wanted)) ?? (await askTablet(wanted)));
  }

  async function askTablet(wanted: string): Promise<Traced | null> {
    if (notWhole !== null) {
      app.notice.value = { tone: 'care', text: notWhole };
      return null;
    }
    const index = await readIndex(app, setRead);
    setRead(null);
    const common = { text: wanted, by: 'tablet' } as const;
    return kind === 'panel'
      ? { ...common, kind, runs: tracePanel(index, wanted)?.runs ?? [] }
      : {
          ...common,
          kind: 'places',
          of: kind,
          places: tracePlaces(index, questionOf(kind, wanted)),
          parts: partsAsked(index.state, questionOf(kind, wanted)),
          more: false,
        };
  }

  return (
    <div class="stack">
      <p class="soft">{words.help}</p>
      <div class="filters">
        <div class="choice">
          {kinds.map((each) => (
            <button
              type="button"
              key={each}
              aria-pressed={kind === each}
              data-testid={`trace-${each}`}
              onClick={() => {
                // A person's id means nothing as a lot, nor a lot as a person.
                if ((each === 'person') !== (kind === 'person')) setText('');
                setKind(each);
              }}
            >
              {words.kinds[each]}
            </button>
          ))}
        </div>
        {kind === 'person' ? (
          <ChoosePerson who={text} onChoose={setText} />
        ) : (
          <Field label={words.text} testId="trace-text" value={text} onInput={setText} />
        )}
        <Button tone="act" onPress={() => void ask()} testId="trace-ask">
          <Icon name="search" size={22} /> {words.ask}
        </Button>
      </div>
      {read !== null && (
        <p class="chip" role="status">
          {words.reading(formatCount(read))}
        </p>
      )}
      {/* The answer stands below what was asked: a reader of the screen is told that it came. */}
      <p class="hidden" role="status">
        {found === null ? '' : answered(found, floor)}
      </p>
      {found?.kind === 'places' && (
        <Places
          found={found}
          from={found.text === askedText ? { cause, of, reel: found.of === 'reel' ? askedText : null } : null}
        />
      )}
      {found?.kind === 'panel' && <Panel text={found.text} runs={found.runs} />}
    </div>
  );
}

function ChoosePerson(props: { readonly who: string; readonly onChoose: (who: string) => void }) {
  const floor = useFloor();
  const words = say(traceWords);
  return (
    <SelectField label={words.kinds.person} testId="trace-who" value={props.who} onChoose={props.onChoose}>
      <option value="">{words.choosePerson}</option>
      {[...floor.people.values()].map((person) => (
        <option key={person.person} value={person.person}>
          {person.name}
        </option>
      ))}
    </SelectField>
  );
}

/** Where the material was, with what can be done about it. */
function Places({
  found,
  from,
}: {
  readonly found: FoundPlaces;
  /** What led here, where something did. */
  readonly from: Parameters<typeof askedFrom>[1] | null;
}) {
  const app = useApp();
  const floor = useFloor();
  const words = say(traceWords);
  const refusal = useRefusal('export-log');
  const mayHold = useRefusal('verify-reel');
  const notWhole = useNotWhole();
  const [holding, setHolding] = useState<HoldAsked | null>(null);
  const { text, of, places } = found;
  const saidText = floor.people.get(text)?.name ?? text;
  return (
    <>
      {found.parts !== null && <ReelParts {...found.parts} />}
      {places.length === 0 ? (
        <p class="empty">{words.nothing(saidText)}</p>
      ) : (
        <div data-testid="trace-places">
          {places.map((place) => (
            <Place key={`${place.entry}${place.run}${place.slot}`} place={place} />
          ))}
          {found.more && <p class="caution">{words.more(formatCount(places.length))}</p>}
          <p class="soft">
            {words.why} {words.by[found.by]}
          </p>
          <Guessed of={places} />
          <div class="row">
            <Button
              disabledReason={refusal}
              onPress={() =>
                letOut(
                  app,
                  `trace-${saidText}.csv`,
                  new Blob([placesToCsv(places, floor)], { type: 'text/csv' }),
                )
              }
            >
              <Icon name="save" size={20} /> {words.save}
            </Button>
            {(of === 'lot' || of === 'reel' || of === 'part') && (
              <Button
                testId="trace-hold"
                disabledReason={mayHold ?? notWhole}
                onPress={() => setHolding((from && askedFrom(floor, from)) ?? askedByName({ [of]: text }))}
              >
                {say(heldWords).hold}
              </Button>
            )}
          </div>
        </div>
      )}
      {holding && <HoldPanels asked={holding} onClose={() => setHolding(null)} />}
    </>
  );
}

/** That an answer came, and to what: another one is told anew. */
function answered(found: Traced, floor: FloorState): string {
  const words = say(traceWords);
  const isPerson = found.kind === 'places' && found.of === 'person';
  const asked = isPerson ? (floor.people.get(found.text)?.name ?? found.text) : found.text;
  const isNone = found.kind === 'places' && found.places.length === 0;
  return isNone ? words.nothing(asked) : `${asked}: ${words.by[found.by]}`;
}

function Place({ place }: { readonly place: TracedPlace }) {
  const floor = useFloor();
  const words = say(traceWords);
  const zone = zoneOf(floor, place.line);
  const run = floor.runs.has(place.run)
    ? runName(floor, place.run)
    : [place.product, lineName(floor, place.line), formatDay(Date.parse(place.at), zone)].join(' · ');
  const span = (panels: { first: number; last: number }) =>
    [formatCount(panels.first), formatCount(panels.last)] as const;
  return (
    <article class="traced">
      <b>{run}</b>
      <p>
        <span class="code">{words.onSlot(place.slot, place.feeder ?? '')}</span> ·{' '}
        <span class="code">{place.part}</span> · <span class="code">{place.lot ?? words.noLot}</span>
        {place.reel !== null && (
          <>
            {' '}
            · <span class="code">{place.reel}</span>
          </>
        )}{' '}
        ·{' '}
        {words.putOn(
          formatDay(Date.parse(place.at), zone),
          place.who === null ? null : personName(floor, place.who),
        )}
      </p>
      <p>
        {place.possible === null ? (
          words.none
        ) : (
          <>
            {place.sure !== null && <b>{words.sure(...span(place.sure))}</b>}
            {(place.sure === null ||
              place.sure.first !== place.possible.first ||
              place.sure.last !== place.possible.last) && (
              <span class="soft">
                {place.sure !== null && ' · '}
                {words.possible(...span(place.possible))}
              </span>
            )}
          </>
        )}
        {place.mixed && (
          <span class="soft" data-testid="trace-mixed">
            {' '}
            · {place.slot === PASTE_SLOT ? say(pasteWords).mixed : say(packWords).mixed}
          </span>
        )}
        {place.goesOn && (
          <>
            {' '}
            <span class="chip go">{words.goesOn}</span>
          </>
        )}
      </p>
      <ReelParts madeOf={place.madeOf ?? []} wentInto={[]} />
      <PictureToOpen of={place.entry} />
      {place.serials.length > 0 && (
        <details>
          <summary>{words.serials(place.serials.length)}</summary>
          <p class="code wrap">{place.serials.join(' ')}</p>
        </details>
      )}
    </article>
  );
}

function Panel({ text, runs }: { readonly text: string; readonly runs: readonly PanelRun[] }) {
  const words = say(traceWords);
  if (runs.length === 0) return <p class="empty">{words.nothing(text)}</p>;
  return (
    <div data-testid="trace-panel">
      {runs.length > 1 && <p>{words.builtTimes(runs.length)}</p>}
      {runs.map((run) => (
        <OneRun key={run.run} run={run} />
      ))}
      <p class="soft">{words.why}</p>
      <Guessed of={runs} />
    </div>
  );
}

/** What a panel got in one run. */
function OneRun({ run }: { readonly run: PanelRun }) {
  const floor = useFloor();
  const words = say(traceWords);
  const side = run.side === null ? [] : [say(shellWords).side[run.side]];
  const when = floor.runs.get(run.run)?.startedMs;
  const day = when === undefined ? [] : [formatDay(when, zoneOf(floor, run.line))];
  return (
    <section>
      <h2>{words.panelTitle(run.serial ?? String(run.panel), run.product)}</h2>
      <p>{[...side, lineName(floor, run.line), ...day].join(' · ')}</p>
      <table class="plain">
        <tbody>
          {run.slots.map((slot) => (
            <tr key={slot.slot}>
              <th class="code">{slot.slot}</th>
              <td class="code">{slot.part}</td>
              <td class="code">
                {slot.lots.length > 1 && `${words.either} `}
                {slot.lots.map((each) => each.lot ?? words.noLot).join(' / ')}
                {slot.lots.every((each) => !each.sure) && ` ${words.notSure}`}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** What the answer rests on that nobody has entered. */
function Guessed({ of }: { readonly of: readonly { readonly guessed: readonly Guess[] }[] }) {
  const words = say(traceWords);
  const guessed = [...new Set(of.flatMap((each) => each.guessed))].sort();
  if (guessed.length === 0) return null;
  return <p class="caution">{guessed.map((each) => words.guessed[each]).join(' ')}</p>;
}
