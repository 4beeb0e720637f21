// A list that a person looks through and changes: search and acts, or the form that is open; what is said where nothing is on it or nothing
// is found; the rows, forty at first; and the dialog that takes one off, for a reason.

import type { ComponentChildren, VNode } from 'preact';
import type { DraftEntry } from '../../../../../shared/floor/kinds.ts';
import { useApp } from '../../../app.ts';
import { recordOwn } from '../../../frame/signed.ts';
import { Button } from '../../../ui/Button.tsx';
import { Longlist, SearchField, WhyDialog } from './shared.tsx';

interface ListPageProps<T> {
  /** What stands above the list; null where nothing does. */
  readonly help?: string | null;
  readonly search?: { readonly value: string; readonly onChange: (value: string) => void };
  readonly add: {
    readonly label: string;
    readonly testId: string;
    readonly refusal: string | null;
    readonly onPress: () => void;
  };
  /** Further ways to add. */
  readonly acts?: ComponentChildren;
  /** The form that is open, in place of search and acts; null where none is. */
  readonly form: ComponentChildren;
  /** How many there are before the search. */
  readonly count: number;
  readonly none: string;
  readonly noneHelp?: string;
  readonly found: readonly T[];
  /** What is said where the search finds none of them. */
  readonly noMatch?: ComponentChildren;
  /** What stands between search and list. */
  readonly above?: ComponentChildren;
  /** A name of the item that no other has, which its row carries as its key. */
  readonly keyOf: (item: T) => string;
  readonly draw: (item: T) => VNode;
  /** Dialogs over it. */
  readonly children?: ComponentChildren;
}

export function ListPage<T>(props: ListPageProps<T>) {
  const { search, add, form, count, found } = props;
  return (
    <div class="stack">
      {props.help && <p class="soft">{props.help}</p>}
      {form}
      {!form && (
        <div class="row">
          {search && <SearchField value={search.value} onChange={search.onChange} />}
          <Button tone="act" disabledReason={add.refusal} testId={add.testId} onPress={add.onPress}>
            {add.label}
          </Button>
          {props.acts}
        </div>
      )}
      {props.above}
      {count === 0 && (
        <p class="empty">
          {props.none}
          {props.noneHelp !== undefined && (
            <>
              <br />
              {props.noneHelp}
            </>
          )}
        </p>
      )}
      {count > 0 && found.length === 0 && <div class="empty">{props.noMatch}</div>}
      {search ? (
        <Longlist key={search.value} items={found} keyOf={props.keyOf} draw={props.draw} />
      ) : (
        found.map(props.draw)
      )}
      {props.children}
    </div>
  );
}

/** Takes something off a list for a reason: writes it down and says so. */
export function WithdrawDialog(props: {
  readonly title: string;
  readonly why: string;
  readonly choices?: readonly string[];
  readonly act: string;
  readonly caution?: string | null;
  readonly entry: (reason: string) => DraftEntry;
  /** What is said once it is done. */
  readonly done: string;
  readonly onClose: () => void;
}) {
  const app = useApp();
  const { why, entry, done, onClose, ...dialog } = props;
  return (
    <WhyDialog
      {...dialog}
      label={why}
      onClose={onClose}
      onDone={(reason) => {
        onClose();
        recordOwn(app, [entry(reason)], { notice: { tone: 'plain', text: done } });
      }}
    />
  );
}
