// One field that finds a reel, a part, a lot, a panel, a slot, a feeder, a person, a product or an entry, by typing or by scan, and leads there. A
// scan that is made here is sought and loads nothing.

import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { Thing } from '../../../../shared/search/floor-things.ts';
import { goneThings, type ThingKind, thingKinds } from '../../../../shared/search/floor-things.ts';
import { findTexts, type HitsOfKind, indexTexts } from '../../../../shared/search/index-of-texts.ts';
import { useApp, useFloor } from '../../app.ts';
import { useNotWhole } from '../../behind.ts';
import { afterPaint } from '../../device/after-paint.ts';
import { takeLine } from '../../line-in-hand.ts';
import { goBack, place } from '../../router.ts';
import { Button } from '../../ui/Button.tsx';
import { useEscape } from '../../ui/escape.ts';
import { Field } from '../../ui/Field.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { searchWords } from '../../words/search.ts';
import { shellWords } from '../../words/shell.ts';
import { formatCount, formatDay, say } from '../../words/words.ts';
import { AtServer } from './AtServer.tsx';
import { askedByScan } from './asked.ts';
import { type Ready, startReading } from './reading.ts';
import { type Behind, type Told, tell } from './told.ts';
import './search.css';

/** Finds of a kind shown at first, and after a tap on the rest. */
const SHOWN = 8;
const SHOWN_MORE = 60;

/** What was sought last: whoever comes back from a find sees its neighbours again. */
let lastText = '';

export function Search() {
  const app = useApp();
  const floor = useFloor();
  const words = say(searchWords);
  const [text, setText] = useState(() => place.value.rest[0] ?? lastText);
  const [others, setOthers] = useState<readonly string[]>([]);
  const [ready, setReady] = useState<Ready | null>(null);
  const [more, setMore] = useState<ThingKind | null>(null);
  const head = useRef<HTMLDivElement>(null);
  const list = useRef<HTMLDivElement>(null);
  const ask = (next: string, beside: readonly string[] = []) => {
    lastText = next;
    setText(next);
    setOthers(beside);
    setMore(null);
  };
  useLayoutEffect(
    () =>
      app.scans.take((scan) => {
        const asked = askedByScan(app.store.floor(), app.line.peek(), scan);
        if (asked) ask(asked.text, asked.others);
        return true; // whatever it was: nothing is loaded from here
      }),
    [app],
  );
  useEffect(() => {
    let stop = () => {};
    let isOver = false;
    afterPaint(() => {
      if (!isOver) stop = startReading(app, setReady);
    });
    return () => {
      isOver = true;
      stop();
    };
  }, [app]);
  useEffect(() => {
    const field = head.current?.querySelector('input');
    field?.focus({ preventScroll: true });
    field?.select();
  }, []);
  useEscape(goBack, 'dialog[open], .camera-overlay');
  const found = useMemo(
    () =>
      findTexts([...(ready?.indexes ?? []), indexTexts(goneThings(app.store.floor(), text))], text, {
        most: more === null ? SHOWN : SHOWN_MORE,
        order: thingKinds,
      }),
    [ready, text, more],
  );
  const zone = floor.lines.get(app.line.value ?? '')?.zone ?? 'UTC';
  const behind: Behind = { floor, entries: ready?.entries ?? new Map(), zone };
  const isAsked = text.trim() !== '';
  return (
    <search class="stack search">
      <div class="search-head" ref={head}>
        <form
          onSubmit={(event) => {
            event.preventDefault();
            list.current?.querySelector<HTMLElement>('a')?.focus();
          }}
        >
          <Field
            label={words.field}
            testId="search-text"
            type="search"
            autocomplete="off"
            autocapitalize="off"
            spellcheck={false}
            value={text}
            onInput={(next) => ask(next)}
            help={words.help}
          />
        </form>
        <Button large tone="quiet" onPress={goBack} testId="search-close">
          {say(shellWords).close}
        </Button>
      </div>
      {others.length > 0 && (
        <div class="row" data-testid="search-others">
          <span class="soft">{words.onLabel}</span>
          {others.map((other) => (
            <Button key={other} onPress={() => ask(other, others)}>
              <span class="code" translate={false}>
                {other}
              </span>
            </Button>
          ))}
        </div>
      )}
      {isAsked && ready && found.length === 0 && (
        <p class="empty" role="status" data-testid="search-none">
          {words.nothing(text.trim())}
        </p>
      )}
      <div class="stack finds" ref={list} data-testid="search-finds">
        {isAsked &&
          found.map((group) => (
            <Group
              key={group.kind}
              group={
                more === null || more === group.kind
                  ? group
                  : { ...group, first: group.first.slice(0, SHOWN) }
              }
              behind={behind}
              onMore={() => setMore(group.kind)}
            />
          ))}
      </div>
      {isAsked && <AtServer text={text.trim()} />}
      <Coverage ready={ready} zone={zone} />
    </search>
  );
}

interface GroupProps {
  readonly group: HitsOfKind<ThingKind, Thing>;
  readonly behind: Behind;
  readonly onMore: () => void;
}

/** The finds of one kind. */
function Group({ group, behind, onMore }: GroupProps) {
  const words = say(searchWords);
  const rest = group.count - group.first.length;
  return (
    <section data-testid={`found-${group.kind}`}>
      <h2>
        {words.kinds[group.kind]} <small class="soft">{formatCount(group.count)}</small>
      </h2>
      {group.alike.length > 0 && (
        <p class="caution">
          <Icon name="warn" /> {words.alike(group.alike.join(' · '))}
        </p>
      )}
      {group.first.map(({ thing }) => {
        const told = tell(thing, behind);
        return told && <Row key={JSON.stringify(thing)} told={told} />;
      })}
      {rest > 0 && (
        <Button tone="quiet" onPress={onMore}>
          {words.more(formatCount(rest))}
        </Button>
      )}
    </section>
  );
}

function Row({ told }: { readonly told: Told }) {
  const app = useApp();
  const { line } = told;
  return (
    <a
      class="find-row"
      href={told.href}
      data-testid="find"
      onClick={() => {
        if (line !== null && line !== app.line.value) takeLine(app, line);
      }}
    >
      <b class={told.isCode ? 'code' : ''} translate={told.isCode ? false : undefined}>
        {told.name}
      </b>
      <span class="facts">
        {told.facts.map((fact) => (
          <span key={fact}>{fact}</span>
        ))}
      </span>
      <span class="marks">
        {told.marks.map(({ tone, sign, text }) => (
          <span key={text} class={`chip ${tone}`}>
            {sign} {text}
          </span>
        ))}
      </span>
    </a>
  );
}

/** How far back the log is searched, so that nobody takes silence for an answer. */
function Coverage({ ready, zone }: { readonly ready: Ready | null; readonly zone: string }) {
  const words = say(searchWords);
  const notWhole = useNotWhole();
  if (ready === null || ready.isReading)
    return (
      <p class="soft" role="status">
        {words.reading(formatCount(ready?.entries.size ?? 0))}
      </p>
    );
  if (notWhole !== null) return <p class="soft">{notWhole}</p>;
  return (
    <p class="soft" data-testid="search-coverage">
      {ready.isWhole || ready.oldest === null
        ? words.searchedAll(formatCount(ready.entries.size))
        : words.searchedSince(formatDay(Date.parse(ready.oldest.at), zone))}
    </p>
  );
}
