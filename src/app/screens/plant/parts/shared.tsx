// What the three lists have in common: the search that a scan fills, long lists shown bit by bit, and a dialog that asks why.

import type { VNode } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { useApp } from '../../../app.ts';
import { LongRows } from '../../../long-rows.tsx';
import { AskFeet } from '../../../ui/Ask.tsx';
import { Button } from '../../../ui/Button.tsx';
import { Dialog } from '../../../ui/Dialog.tsx';
import { Field } from '../../../ui/Field.tsx';
import { Icon } from '../../../ui/Icon.tsx';
import { partsWords } from '../../../words/parts.ts';
import { formatCount, say } from '../../../words/words.ts';
import { readScan, type ScannedThing } from './model.ts';

/** Becomes the taker of scans while the list is open; badges go on to sign people in. */
export function useScans(take: (thing: ScannedThing) => void): void {
  const app = useApp();
  const newest = useRef(take);
  newest.current = take;
  useLayoutEffect(
    () =>
      app.scans.take((scan) => {
        const thing = readScan(app.store.floor(), app.line.value, scan);
        if (!thing) return false;
        newest.current(thing);
        return true;
      }),
    [],
  );
}

export function SearchField(props: { readonly value: string; readonly onChange: (value: string) => void }) {
  const words = say(partsWords);
  return (
    <div class="search field grow">
      <Icon name="search" size={22} />
      <input
        data-typing
        data-testid="search"
        type="search"
        autocomplete="off"
        aria-label={words.search}
        placeholder={words.search}
        value={props.value}
        onInput={(event) => props.onChange(event.currentTarget.value)}
      />
      {props.value !== '' && (
        <Button tone="quiet" label={words.clear} onPress={() => props.onChange('')}>
          <Icon name="cross" size={20} />
        </Button>
      )}
    </div>
  );
}

const PAGE = 40;

/** A long list, forty at first. */
export function Longlist<T>(props: {
  readonly items: readonly T[];
  readonly keyOf: (item: T) => string;
  readonly draw: (item: T) => VNode;
}) {
  const words = say(partsWords);
  const [wanted, setWanted] = useState(PAGE);
  const left = props.items.length - wanted;
  return (
    <div>
      <LongRows items={props.items.slice(0, wanted)} keyOf={props.keyOf} draw={props.draw} />
      {left > 0 && (
        <div class="more">
          <Button onPress={() => setWanted(wanted + PAGE * 3)}>{words.more(formatCount(left))}</Button>
        </div>
      )}
    </div>
  );
}

/** Asks why; an answer is needed. */
export function WhyDialog(props: {
  readonly title: string;
  readonly label: string;
  readonly choices?: readonly string[];
  readonly act: string;
  /** What to know before it is done; null where nothing. */
  readonly caution?: string | null;
  readonly onClose: () => void;
  readonly onDone: (reason: string) => void;
}) {
  const [reason, setReason] = useState('');
  return (
    <Dialog title={props.title} onClose={props.onClose} tone={props.caution ? 'care' : 'plain'}>
      <div class="stack">
        {props.caution && (
          <p class="caution" data-testid="why-caution">
            <Icon name="warn" size={22} /> {props.caution}
          </p>
        )}
        {props.choices && (
          <div class="choice">
            {props.choices.map((choice) => (
              <button
                type="button"
                key={choice}
                aria-pressed={reason === choice}
                onClick={() => setReason(choice)}
              >
                {choice}
              </button>
            ))}
          </div>
        )}
        <Field label={props.label} testId="why" maxLength={200} value={reason} onInput={setReason} />
      </div>
      <AskFeet
        testId="why-done"
        disabledReason={reason.trim() === '' ? props.label : null}
        onYes={() => props.onDone(reason.trim())}
        onNo={props.onClose}
      >
        {props.act}
      </AskFeet>
    </Dialog>
  );
}
