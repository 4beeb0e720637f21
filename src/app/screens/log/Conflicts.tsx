// What tablets that were apart disagree about: a lead looks at the machine and says what is true.

import { useEffect, useState } from 'preact/hooks';
import { lineEver } from '../../../../shared/floor/lanes.ts';
import { ownIdOf } from '../../../../shared/floor/reel-id.ts';
import { type Conflict, type SlotState, slotKey } from '../../../../shared/floor/state.ts';
import { type Entry, entryId } from '../../../../shared/log/entry.ts';
import { useApp, useFloor } from '../../app.ts';
import { useRefusal } from '../../may.ts';
import { ActGroup } from '../../ui/ActGroup.tsx';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Field } from '../../ui/Field.tsx';
import { shellWords } from '../../words/shell.ts';
import { traceWords } from '../../words/trace.ts';
import { formatCount, formatDay, say } from '../../words/words.ts';

export function Conflicts() {
  const floor = useFloor();
  const words = say(traceWords);
  const refusal = useRefusal('settle-conflict');
  const [shown, setShown] = useState<Conflict | null>(null);
  const conflicts = [...floor.conflicts.values()].sort((a, b) => b.atMs - a.atMs);
  if (conflicts.length === 0) return <p class="empty">✓ {words.noConflicts}</p>;
  return (
    <div data-testid="conflicts">
      <ActGroup reason={refusal}>
        {conflicts.map((conflict) => (
          <div class="traced row" key={conflict.conflict}>
            <span class="grow">
              <b>{words.conflictKinds[conflict.kind](conflict.slots.join(', '))}</b>
              <br />
              <span class="soft">
                {formatDay(conflict.atMs, lineEver(floor, conflict.line)?.zone ?? 'UTC')}
              </span>
            </span>
            <Button disabledReason={refusal} onPress={() => setShown(conflict)} testId="settle">
              {words.settle}
            </Button>
          </div>
        ))}
      </ActGroup>
      {shown && <SettleDialog conflict={shown} onClose={() => setShown(null)} />}
    </div>
  );
}

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

function SettleDialog({ conflict, onClose }: { readonly conflict: Conflict; readonly onClose: () => void }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(traceWords);
  const [reason, setReason] = useState('');
  const zone = lineEver(floor, conflict.line)?.zone ?? 'UTC';
  const now = conflict.slots
    .map((slot) => floor.slots.get(slotKey(conflict.line, slot)))
    .filter((slot) => slot !== undefined);
  const choices = conflict.choices.length > 0 ? conflict.choices : now;
  const writers = useWriters(conflict.entries);
  // A splice that met an unload: the reel is there, or the slot is empty.
  const emptied =
    conflict.kind === 'spliced-though-unloaded'
      ? conflict.entries.find(
          (entry) => !choices.some((each) => each.tapes.some((tape) => tape.entry === entry)),
        )
      : undefined;

  /** Who wrote an entry, and on which tablet. */
  function byWhom(entry: string): string {
    const tablet = entry.slice(0, entry.indexOf('/'));
    const who = writers.get(entry)?.who ?? null;
    const name = who === null ? '' : (floor.people.get(who)?.name ?? who);
    return words.keepBy(name, floor.tablets.get(tablet)?.name ?? tablet);
  }

  /** The entry that a choice keeps: a splice stands for the slot that it left. */
  const keptBy = (choice: SlotState) =>
    conflict.entries.find(
      (entry) => entry === choice.entry || choice.tapes.some((tape) => tape.entry === entry),
    ) ?? choice.entry;

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
    <Dialog title={words.settleTitle} onClose={onClose} tone="care">
      <div class="stack">
        <p>{words.settleHelp}</p>
        <Field
          label={words.reason}
          testId="settle-reason"
          maxLength={200}
          value={reason}
          onInput={setReason}
        />
        {choices.map((choice) => {
          const tape = choice.tapes.at(-1);
          const parts = tape?.count == null ? null : words.keepParts(formatCount(tape.count));
          const what = [tape?.part, tape?.lot, ownIdOf(tape?.reel), parts].filter(Boolean).join(' · ');
          const kept = keptBy(choice);
          return (
            <Button
              key={choice.entry}
              large
              disabledReason={missing}
              testId="settle-keep"
              onPress={() => settle(kept)}
            >
              {words.keep(choice.slot, what, formatDay(choice.atMs, zone))}
              <br />
              <small>{byWhom(kept)}</small>
            </Button>
          );
        })}
        {emptied !== undefined && (
          <Button large disabledReason={missing} testId="settle-empty" onPress={() => settle(emptied)}>
            {words.keep(conflict.slots[0] ?? '', words.keepEmpty, formatDay(conflict.atMs, zone))}
            <br />
            <small>{byWhom(emptied)}</small>
          </Button>
        )}
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
