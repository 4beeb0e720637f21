import { isEntryKind } from '../../../../shared/floor/kinds.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import type { Verdict } from '../../../../shared/floor/vocabulary.ts';
import { type Entry, entryId } from '../../../../shared/log/entry.ts';
import { VerdictShape, verdictTones } from '../../ui/Shape.tsx';
import { logWords } from '../../words/log.ts';
import { unprovenWords } from '../../words/unproven.ts';
import { sayReason } from '../../words/verdict.ts';
import { formatDay, say } from '../../words/words.ts';
import { rowFacts } from './facts.ts';
import { actorOf } from './model.ts';
import { personName, zoneOf } from './names.ts';

interface EntryRowProps {
  readonly entry: Entry;
  readonly floor: FloorState;
  readonly onShow: () => void;
}

/** What an entry's kind is called, with its act where it has one. */
export function kindName(entry: Entry): string {
  const words = say(logWords);
  if (!isEntryKind(entry.kind)) return entry.kind;
  const act = entry.payload['act'];
  const known =
    typeof act === 'string' && act in words.acts ? words.acts[act as keyof typeof words.acts] : null; // just looked up
  return known === null ? words.kinds[entry.kind] : `${words.kinds[entry.kind]} (${known})`;
}

/** Who acted, by name. */
export function actorName(entry: Entry, floor: FloorState): string {
  const actor = actorOf(entry);
  if (typeof actor === 'object') return personName(floor, actor.person);
  return say(logWords).actors[actor];
}

/** The titles of a verdict's reasons. */
export function reasonTitles(entry: Entry): readonly string[] {
  const reasons = entry.payload['reasons'];
  if (!Array.isArray(reasons)) return [];
  return reasons.map(({ code }: { code: string }) => sayReason(code)?.title ?? code);
}

/** The zone in which an entry's moment is told: its line's, else the tablet's. */
export function entryZone(entry: Entry, floor: FloorState): string {
  const line = entry.payload['line'];
  return zoneOf(floor, typeof line === 'string' ? line : null);
}

/** A chip where nothing proves the right that an entry took, and what a lead said of it. */
function RightMark({ entry, floor }: Pick<EntryRowProps, 'entry' | 'floor'>) {
  const mark = floor.unproven.get(entryId(entry));
  if (!mark) return null;
  const { stands } = say(unprovenWords);
  const is = mark.settled?.as ?? 'unproven';
  const [tone, sign] = is === 'unproven' ? ['care', '?'] : is === 'confirmed' ? ['go', '✓'] : ['stop', '✕'];
  return (
    <span class={`chip ${tone}`} data-testid={`right-${is}`}>
      {sign} {stands[is]}
    </span>
  );
}

export function EntryRow({ entry, floor, onShow }: EntryRowProps) {
  const words = say(logWords);
  const verdict = entry.payload['verdict'] as Verdict | undefined; // checked when it was written
  const zone = entryZone(entry, floor);
  return (
    <button type="button" class="entry" onClick={onShow} data-testid="entry" data-kind={entry.kind}>
      <span class="when">
        {formatDay(Date.parse(entry.at), zone)}
        <small>{actorName(entry, floor)}</small>
      </span>
      <span class="what">
        <b>{kindName(entry)}</b>
        <small>
          {rowFacts(entry, floor).map(({ name, label, text }) => (
            <span key={name} class="fact" data-fact={name}>
              <i>{label}</i> <span class="code">{text}</span>
            </span>
          ))}
        </small>
      </span>
      <span class="marks">
        {verdict && (
          <span class={`chip ${verdictTones[verdict]}`}>
            <VerdictShape verdict={verdict} size={20} /> {words.verdicts[verdict]}
          </span>
        )}
        {reasonTitles(entry).map((title) => (
          <span key={title} class="soft">
            {title}
          </span>
        ))}
        <RightMark entry={entry} floor={floor} />
        {floor.corrected.has(entryId(entry)) && <span class="chip care">{words.takenBack}</span>}
        {entry.payload['via'] === 'practice' && <span class="chip">{words.practice}</span>}
      </span>
    </button>
  );
}
