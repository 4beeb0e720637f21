// A lead says what is true of what tablets disagree about: what stands on the machine, or whether a changeover was released or cancelled.

import { useEffect, useState } from 'preact/hooks';
import { changeInConflict } from '../../../../shared/floor/dropped-change.ts';
import { lineEver } from '../../../../shared/floor/lanes.ts';
import { ownIdOf } from '../../../../shared/floor/reel-id.ts';
import {
  type Changeover,
  type Conflict,
  type FloorState,
  type SlotState,
  slotKey,
} from '../../../../shared/floor/state.ts';
import { type Entry, entryId } from '../../../../shared/log/entry.ts';
import { useApp, useFloor } from '../../app.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Field } from '../../ui/Field.tsx';
import { logWords } from '../../words/log.ts';
import { shellWords } from '../../words/shell.ts';
import { traceWords } from '../../words/trace.ts';
import { formatCount, formatDay, say } from '../../words/words.ts';

/** Entries read at once, and how far back they are looked for: a disagreement is some days old at most. */
const CHUNK = 500;
const CHUNKS = 40;

/** The entries of a disagreement, by id, as far as they have been found. */
function useWriters(wanted: readonly string[]): ReadonlyMap<string, Entry> {
  const app = useApp();
  const [found, setFound] = useState<ReadonlyMap<string, Entry>>(new Map());
  useEffect(() => {
    let isOver = false;
    const read = async () => {
      const all = new Map<string, Entry>();
      let before: Entry | undefined;
      for (let chunk = 0; chunk < CHUNKS && !isOver && all.size < wanted.length; chunk++) {
        const entries = await app.store.newest(CHUNK, before);
        for (const entry of entries) if (wanted.includes(entryId(entry))) all.set(entryId(entry), entry);
        before = entries.at(-1);
        if (before === undefined) break;
      }
      if (!isOver) setFound(all);
    };
    read().catch(() => undefined); // the choices stand without names
    return () => {
      isOver = true;
    };
  }, []);
  return found;
}

/** What a lead may say is true. */
interface Option {
  /** The entry that it keeps. */
  readonly keep: string;
  readonly text: string;
  readonly testId: string;
}

/** What may stand on the slots: what either entry left there, or nothing. */
function slotOptions(floor: FloorState, conflict: Conflict, zone: string): readonly Option[] {
  const words = say(traceWords);
  const now = conflict.slots
    .map((slot) => floor.slots.get(slotKey(conflict.line, slot)))
    .filter((slot) => slot !== undefined);
  const choices = conflict.choices.length > 0 ? conflict.choices : now;
  const isOf = (choice: SlotState) => (entry: string) => choice.tapes.some((tape) => tape.entry === entry);
  const options = choices.map((choice): Option => {
    const tape = choice.tapes.at(-1);
    const parts = tape?.count == null ? null : words.keepParts(formatCount(tape.count));
    const what = [tape?.part, tape?.lot, ownIdOf(tape?.reel), parts].filter(Boolean).join(' · ');
    // A splice stands for the slot that it left.
    const keep = conflict.entries.find((entry) => entry === choice.entry || isOf(choice)(entry));
    const text = words.keep(choice.slot, what, formatDay(choice.atMs, zone));
    return { keep: keep ?? choice.entry, text, testId: 'settle-keep' };
  });
  if (conflict.kind !== 'spliced-though-unloaded') return options;
  // A splice that met an unload: the reel is there, or the slot is empty.
  const emptied = conflict.entries.find((entry) => !choices.some((choice) => isOf(choice)(entry)));
  if (emptied === undefined) return options;
  const text = words.keep(conflict.slots[0] ?? '', words.keepEmpty, formatDay(conflict.atMs, zone));
  return [...options, { keep: emptied, text, testId: 'settle-empty' }];
}

/** Whether a changeover was released or cancelled. */
function changeOptions(changeover: Changeover, zone: string): readonly Option[] {
  const { product, released, releasedMs, dropped } = changeover;
  if (released === null || releasedMs === null || dropped === null) return [];
  const kinds = say(logWords).kinds;
  const text = (kind: 'changeover.released' | 'changeover.dropped', ms: number) =>
    say(traceWords).keep(product, kinds[kind], formatDay(ms, zone));
  return [
    { keep: released, text: text('changeover.released', releasedMs), testId: 'settle-keep' },
    { keep: dropped.entry, text: text('changeover.dropped', dropped.atMs), testId: 'settle-keep' },
  ];
}

export function SettleDialog({
  conflict,
  onClose,
}: {
  readonly conflict: Conflict;
  readonly onClose: () => void;
}) {
  const app = useApp();
  const floor = useFloor();
  const words = say(traceWords);
  const [reason, setReason] = useState('');
  const zone = lineEver(floor, conflict.line)?.zone ?? 'UTC';
  const changeover = changeInConflict(floor, conflict);
  const options = changeover ? changeOptions(changeover, zone) : slotOptions(floor, conflict, zone);
  const writers = useWriters(conflict.entries);

  /** Who wrote an entry, and on which tablet. */
  function byWhom(entry: string): string {
    const tablet = entry.slice(0, entry.indexOf('/'));
    const who = writers.get(entry)?.who ?? null;
    const name = who === null ? '' : (floor.people.get(who)?.name ?? who);
    return words.keepBy(name, floor.tablets.get(tablet)?.name ?? tablet);
  }

  function settle(keep: string | null): void {
    const payload = {
      conflict: conflict.conflict,
      line: conflict.line,
      slot: conflict.slots[0] ?? null,
      keep,
      reason: reason.trim(),
      by: app.person.value?.person ?? '',
    };
    app.record([{ kind: 'conflict.settled', payload }], {
      notice: { tone: 'go', text: words.settled },
      next: onClose,
    });
  }

  const missing = reason.trim() === '' ? words.reason : null;
  return (
    <Dialog title={changeover ? words.settleChangeTitle : words.settleTitle} onClose={onClose} tone="care">
      <div class="stack">
        <p>{changeover ? words.settleChangeHelp : words.settleHelp}</p>
        <Field
          label={words.reason}
          testId="settle-reason"
          maxLength={200}
          value={reason}
          onInput={setReason}
        />
        {options.map(({ keep, text, testId }) => (
          <Button
            key={`${testId} ${keep} ${text}`}
            large
            disabledReason={missing}
            testId={testId}
            onPress={() => settle(keep)}
          >
            {text}
            <br />
            <small>{byWhom(keep)}</small>
          </Button>
        ))}
        <Button large disabledReason={missing} onPress={() => settle(null)}>
          {words.neither}
        </Button>
        <Button large tone="quiet" onPress={onClose}>
          {say(shellWords).cancel}
        </Button>
      </div>
    </Dialog>
  );
}
