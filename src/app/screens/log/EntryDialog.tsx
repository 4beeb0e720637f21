// One entry whole, with its seal; and taking it back, which is a new entry that names it.

import { useState } from 'preact/hooks';
import { type Entry, entryId } from '../../../../shared/log/entry.ts';
import type { PayloadOf } from '../../../../shared/setup/kinds.ts';
import type { FloorState } from '../../../../shared/setup/state.ts';
import type { Air, CountBasis, Role, Source, Verdict } from '../../../../shared/setup/vocabulary.ts';
import { useApp } from '../../app.ts';
import { useRefusal } from '../../may.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { visible } from '../../ui/visible.ts';
import { checklistWords } from '../../words/checklist.ts';
import { countWords } from '../../words/count.ts';
import { logWords } from '../../words/log.ts';
import { moistureWords } from '../../words/moisture.ts';
import { openWorkWords } from '../../words/open-work.ts';
import { shellWords } from '../../words/shell.ts';
import { formatDay, say } from '../../words/words.ts';
import { actorName, entryZone, kindName, reasonTitles } from './EntryRow.tsx';

interface EntryDialogProps {
  readonly entry: Entry;
  readonly floor: FloorState;
  readonly onClose: () => void;
}

const correctable = [
  ...['reel.verified', 'reel.unloaded', 'panels.counted', 'hold.cleared', 'reel.counted'],
  'reel.aired',
];

/** True where taking the entry back would change what stands: nothing newer has been done to the same slot. */
function isNewest(floor: FloorState, entry: Entry): boolean {
  const id = entryId(entry);
  if (entry.kind === 'panels.counted') {
    for (const run of floor.runs.values())
      if (run.phase !== 'ended' && run.counts.some(([of]) => of === id)) return true;
    return false;
  }
  // A stay is one of many that stand by their time: each can be taken out.
  if (entry.kind === 'reel.aired')
    return [...floor.airings.values()].some(({ stays }) => stays.some((stay) => stay.entry === id));
  for (const slot of floor.slots.values()) if (slot.entry === id) return true;
  for (const taken of floor.takenOff.values()) if (taken.entry === id) return true;
  return floor.holds.has(id);
}

/** A fact as a person reads it; what has no words of its own stands as it is kept. */
function factText(name: string, value: unknown, entry: Entry, floor: FloorState): string {
  const words = say(logWords);
  if (name === 'reasons') return reasonTitles(entry).join(' · ') || '–';
  if (name === 'act') return words.acts[value as keyof typeof words.acts] ?? String(value); // older acts stay as they are
  if (name === 'verdict') return words.verdicts[value as Verdict] ?? String(value);
  if (name === 'via') return words.sources[value as Source] ?? String(value);
  if (name === 'basis') return say(countWords).bases[value as CountBasis] ?? String(value);
  if (name === 'air') return say(moistureWords).airs[value as Air] ?? String(value);
  if (name === 'role') return say(shellWords).roles[value as Role] ?? String(value);
  if (name === 'how') return say(checklistWords).signedHow[value as 'badge'] ?? String(value); // other ways have no words
  if (name === 'left' && Array.isArray(value)) return value.map(leftText).join(' · ');
  if (name === 'by') return floor.people.get(String(value))?.name ?? String(value);
  if (Array.isArray(value) && value.every((each) => typeof each === 'string'))
    return value.map(visible).join(' · ') || '–';
  return typeof value === 'object' ? JSON.stringify(value) : visible(String(value));
}

/** One thing that was left open at a release. */
function leftText({ what, slot, part, reel }: PayloadOf<'changeover.left-open'>['left'][number]): string {
  const said = say(openWorkWords).said[what](1);
  const names = [reel ?? part, slot].filter((name) => name !== null);
  return names.length === 0 ? said : `${said}: ${names.join(', ')}`;
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
  const open = correctable.includes(entry.kind) && !floor.corrected.has(id);
  return (
    <Dialog title={kindName(entry)} onClose={onClose} wide>
      <div class="stack">
        <table class="plain">
          <tbody>
            <tr>
              <th>{words.at}</th>
              <td>
                {formatDay(Date.parse(entry.at), entryZone(entry, floor))}{' '}
                <small class="code soft">{entry.at}</small>
              </td>
            </tr>
            <tr>
              <th>{words.who}</th>
              <td>{actorName(entry, floor)}</td>
            </tr>
            <tr>
              <th>{words.tablet}</th>
              <td>
                {floor.tablets.get(entry.tablet)?.name ?? entry.tablet} <small class="code soft">{id}</small>
              </td>
            </tr>
            {Object.entries(entry.payload)
              .filter(([name, value]) => name !== 'slots' && value !== null && value !== '')
              .map(([name, value]) => (
                <tr key={name}>
                  {words.facts[name] ? <th>{words.facts[name]}</th> : <th class="code">{name}</th>}
                  <td class="code wrap">{factText(name, value, entry, floor)}</td>
                </tr>
              ))}
            <tr>
              <th>{words.seal}</th>
              <td class="code wrap">{entry.hash}</td>
            </tr>
            <tr>
              <th>{words.prev}</th>
              <td class="code wrap">{entry.prev}</td>
            </tr>
          </tbody>
        </table>
        {open && (
          <label class="field">
            <span>{words.correctWhy}</span>
            <input
              data-typing
              data-testid="correct-why"
              maxLength={200}
              value={reason}
              onInput={(event) => setReason(event.currentTarget.value)}
            />
          </label>
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
                app.write([{ kind: 'entry.corrected', payload }]).then(
                  () => {
                    app.notice.value = { tone: 'plain', text: words.corrected };
                    onClose();
                  },
                  () => undefined, // shown by the fault screen
                );
              }}
            >
              {words.correct}
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
