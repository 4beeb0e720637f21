// One entry whole, with its seal; and taking it back, which is a new entry that names it.

import { useState } from 'preact/hooks';
import { standOfKind } from '../../../../shared/floor/acts.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import { type Entry, entryId } from '../../../../shared/log/entry.ts';
import { useApp } from '../../app.ts';
import { useNotWhole } from '../../behind.ts';
import { lazy } from '../../frame/lazy.tsx';
import { useRefusal } from '../../may.ts';
import { mayPrint } from '../../print/record-proof.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Field } from '../../ui/Field.tsx';
import { heldWords } from '../../words/held.ts';
import { logWords } from '../../words/log.ts';
import { recordWords } from '../../words/record.ts';
import { shellWords } from '../../words/shell.ts';
import { unprovenWords } from '../../words/unproven.ts';
import { formatDay, say } from '../../words/words.ts';
import { actorName, entryZone, kindName } from './EntryRow.tsx';
import { allFacts } from './facts.ts';
import { HoldPanels } from './HoldPanels.tsx';
import { askedOfEntry } from './hold-asked.ts';
import { LabelPicture } from './LabelPicture.tsx';
import { personName, tabletName } from './names.ts';
import { SignedRow } from './SignedRow.tsx';
import { sayWhy } from './Unproven.tsx';

const RecordDialog = lazy(() => import('./RecordDialog.tsx').then((part) => part.RecordDialog));

interface EntryDialogProps {
  readonly entry: Entry;
  readonly floor: FloorState;
  readonly onClose: () => void;
}

const correctable = [
  'reel.verified',
  'reel.unloaded',
  'panels.counted',
  'panel.seen',
  'hold.cleared',
  'reel.counted',
  'reel.aired',
  'bake.approved',
];

/** True where taking the entry back would change what stands: nothing newer has been done to the same slot. */
function isNewest(floor: FloorState, entry: Entry): boolean {
  const id = entryId(entry);
  if (entry.kind === 'panels.counted') {
    for (const run of floor.runs.values()) if (run.counts.some(([of]) => of === id)) return true;
    return false;
  }
  if (entry.kind === 'panel.seen')
    return (
      [...floor.seen.values()].some((seen) => seen.entry === id) ||
      [...floor.passed.values()].some((samples) => samples.some(({ seen }) => seen === id))
    );
  // A stay is one of many that stand by their time: each can be taken out.
  if (entry.kind === 'reel.aired')
    return [...floor.exposures.values()].some(({ periods }) => periods.some((period) => period.entry === id));
  if (entry.kind === 'bake.approved')
    return [...floor.exposures.values()].some(({ periods }) =>
      periods.some((period) => period.approved?.entry === id),
    );
  for (const slot of floor.slots.values()) if (slot.entry === id) return true;
  for (const taken of floor.takenOff.values()) if (taken.entry === id) return true;
  return floor.holds.has(id);
}

/** What is known of the right that the entry took; nothing where it took none that is asked for. */
function RightRow({ entry, floor }: Pick<EntryDialogProps, 'entry' | 'floor'>) {
  const app = useApp();
  const words = say(unprovenWords);
  const stand = standOfKind(floor, entry, app.store.trust());
  if (stand === null) return null;
  const mark = floor.unproven.get(entryId(entry));
  return (
    <tr data-testid="entry-right">
      <th>{words.right}</th>
      <td class="wrap">
        {words.stands[stand]}
        {mark?.settled && ` (${personName(floor, mark.settled.by)})`}
        {stand === 'unproven' && mark && <p class="soft">{sayWhy(mark)}</p>}
        {stand === 'before-tickets' && <p class="soft">{words.before}</p>}
      </td>
    </tr>
  );
}

export function EntryDialog({ entry, floor, onClose }: EntryDialogProps) {
  const app = useApp();
  const words = say(logWords);
  const [reason, setReason] = useState('');
  const refusal = useRefusal('correct-own-entry');
  const id = entryId(entry);
  const text = (name: string) => {
    const value = entry.payload[name];
    return typeof value === 'string' ? value : null;
  };
  const wrong = isNewest(floor, entry)
    ? reason.trim() === ''
      ? words.correctWhy
      : null
    : words.cannotCorrect;
  const notWhole = useNotWhole();
  const mayHold = useRefusal('verify-reel') ?? notWhole;
  const [holding, setHolding] = useState(false);
  const asked = askedOfEntry(floor, entry);
  const [onPaper, setOnPaper] = useState(false);
  if (onPaper) return <RecordDialog entry={entry} floor={floor} onClose={onClose} />;
  if (holding && asked) return <HoldPanels asked={asked} onClose={onClose} />;
  const open = correctable.includes(entry.kind) && !floor.corrected.has(id);
  return (
    <Dialog title={kindName(entry)} onClose={onClose} wide>
      <div class="stack">
        <table class="plain">
          <tbody>
            <tr>
              <th>{words.at}</th>
              <td>{formatDay(Date.parse(entry.at), entryZone(entry, floor))}</td>
            </tr>
            <tr>
              <th>{words.who}</th>
              <td>{actorName(entry, floor)}</td>
            </tr>
            <tr>
              <th>{words.tablet}</th>
              <td>{tabletName(floor, entry.tablet)}</td>
            </tr>
            <RightRow entry={entry} floor={floor} />
            <SignedRow entry={entry} floor={floor} />
            {allFacts(entry, floor).map(({ name, label, text: said }) => (
              <tr key={name}>
                <th>{label}</th>
                <td class="wrap">{said}</td>
              </tr>
            ))}
          </tbody>
        </table>
        {(entry.kind === 'reel.verified' || entry.kind === 'picture.kept') && (
          <LabelPicture sha256={text('sha256')} of={text('of') ?? id} />
        )}
        <details>
          <summary class="button quiet">{words.proof}</summary>
          <table class="plain">
            <tbody>
              {(
                [
                  [words.exactly, entry.at],
                  [words.number, id],
                  [words.seal, entry.hash],
                  [words.prev, entry.prev],
                ] as const
              ).map(([label, exact]) => (
                <tr key={label}>
                  <th>{label}</th>
                  <td class="code wrap">{exact}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </details>
        {open && (
          <Field
            label={words.correctWhy}
            testId="correct-why"
            maxLength={200}
            value={reason}
            onInput={setReason}
          />
        )}
        <div class="row">
          {open && (
            <Button
              tone="stop"
              large
              testId="correct"
              disabledReason={refusal ?? wrong}
              onPress={() => {
                const payload = { of: id, line: text('line'), slot: text('slot'), reason: reason.trim() };
                app.record([{ kind: 'entry.corrected', payload }], {
                  notice: { tone: 'plain', text: words.corrected },
                  next: onClose,
                });
              }}
            >
              {words.correct}
            </Button>
          )}
          {asked && (
            <Button large testId="entry-panels" disabledReason={mayHold} onPress={() => setHolding(true)}>
              {say(heldWords).which}
            </Button>
          )}
          {app.practice === null && mayPrint(entry) && (
            <Button large testId="entry-record" onPress={() => setOnPaper(true)}>
              {say(recordWords).title}
            </Button>
          )}
          <Button large onPress={onClose}>
            {say(shellWords).close}
          </Button>
        </div>
      </div>
    </Dialog>
  );
}
