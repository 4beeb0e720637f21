// Labels for whatever has a name: slots in walking order, feeders, carts, places, badges, stations, a whole line at once.

import { useState } from 'preact/hooks';
import { timesPrinted } from '../../../../../shared/floor/fold-print.ts';
import type { DraftEntry } from '../../../../../shared/floor/kinds.ts';
import type { FloorState } from '../../../../../shared/floor/state.ts';
import type { LabelSubject } from '../../../../../shared/floor/vocabulary.ts';
import { type App, useApp, useFloor } from '../../../app.ts';
import { recordOwn } from '../../../frame/signed.ts';
import { useRefusal } from '../../../may.ts';
import { badgeDrafts, newBadge, sameAgain } from '../../../person/badges.ts';
import { FacePreview, readyLabel } from '../../../print/Face.tsx';
import { LeftOut, useSymbol } from '../../../print/LabelDialog.tsx';
import { type Named, nameLabel, namesOf, type PlantLabel, type Printing } from '../../../print/labels.ts';
import { type NamedPaper, paperInUse } from '../../../print/paper.ts';
import { printPages } from '../../../print/sheet.tsx';
import { drawSymbol } from '../../../scan/draw.ts';
import { Button } from '../../../ui/Button.tsx';
import { AreaField, Field } from '../../../ui/Field.tsx';
import { Icon } from '../../../ui/Icon.tsx';
import { printWords } from '../../../words/print.ts';
import { say } from '../../../words/words.ts';
import { Sizes } from './Sizes.tsx';
import './print.css';

type Subject = Exclude<LabelSubject, 'reel'>;
const subjects: readonly Subject[] = ['slot', 'feeder', 'cart', 'place', 'badge', 'station'];
/** Names that a label's code and the log can hold, and as many as one entry holds. */
const LONGEST = 64;
const MOST = 2000;

export function Print() {
  const [what, setWhat] = useState<Subject>('slot');
  const words = say(printWords);
  return (
    <div class="stack">
      <section class="stack card">
        <h2>{words.many.what}</h2>
        <div class="choice">
          {subjects.map((each) => (
            <button
              type="button"
              key={each}
              aria-pressed={what === each}
              data-testid={`print-${each}`}
              onClick={() => setWhat(each)}
            >
              {words.subjects[each].many}
            </button>
          ))}
        </div>
        <Many key={what} what={what} />
      </section>
      <Sizes />
    </div>
  );
}

function Many({ what }: { readonly what: Subject }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(printWords);
  // A badge opens the door: only who may give one may print it.
  const refusal = useRefusal(what === 'badge' ? 'manage-people' : 'verify-reel');
  const known = namesOf(floor, what, app.line.value);
  // A badge that is printed takes the place of the one before: nobody gets one who was not chosen.
  const [off, setOff] = useState<ReadonlySet<string>>(
    () => new Set(what === 'badge' ? known.map(({ name }) => name) : []),
  );
  const [typed, setTyped] = useState('');
  const [gone, setGone] = useState('0');
  const canType = what !== 'badge' && what !== 'station';
  const more = namesTyped(typed, known);
  const chosen = [...known.filter(({ name }) => !off.has(name)), ...more].slice(0, MOST);
  const paper = paperInUse(floor, app.preferences.value, words.sizes.first);
  const from = printingOf(app);
  const [sample] = useState(newBadge);
  const first =
    chosen[0] === undefined
      ? null
      : nameLabel(what, what === 'badge' ? { ...chosen[0], code: sample } : chosen[0], from);
  const symbol = useSymbol(first?.code ?? null);
  const ready =
    first === null || symbol === null || symbol === 'cannot' ? null : readyLabel(paper, first, symbol);
  return (
    <>
      <p class="soft">
        {known.length > 0 ? words.many.help : canType ? words.many.none : words.many.noneKnown}
      </p>
      {what === 'badge' && known.length > 0 && <p class="soft">{words.many.newBadges}</p>}
      {known.length > 0 && (
        <Names
          known={known}
          off={off}
          isPrinted={(name) => timesPrinted(floor, what, name) > 0}
          onOff={setOff}
        />
      )}
      {canType && (
        <AreaField
          label={words.many.more}
          testId="print-more"
          rows={3}
          isWhole
          value={typed}
          onInput={setTyped}
          help={words.many.moreHelp}
        />
      )}
      {ready !== null && 'face' in ready && (
        <div class="first-label">
          <FacePreview paper={paper} label={ready} />
          <LeftOut label={ready} />
        </div>
      )}
      {paper.paper === 'sheet' && (
        <Field
          label={words.many.first}
          testId="print-first"
          inputMode="numeric"
          autocomplete="off"
          value={gone}
          onInput={setGone}
        />
      )}
      <p class="soft">{words.on(paper.size)}</p>
      <div>
        <Button
          tone="act"
          large
          testId="print-many"
          disabledReason={refusal ?? (chosen.length === 0 ? words.many.choose : null)}
          onPress={() => {
            printMany(app, { what, chosen, paper, gone: Number(gone) || 0 }).catch(() => undefined); // shown by the fault screen
          }}
        >
          <Icon name="print" /> {words.many.printMany(chosen.length)}
        </Button>
      </div>
    </>
  );
}

interface NamesProps {
  readonly known: readonly Named[];
  readonly off: ReadonlySet<string>;
  readonly isPrinted: (name: string) => boolean;
  readonly onOff: (off: ReadonlySet<string>) => void;
}

function Names({ known, off, isPrinted, onOff }: NamesProps) {
  const words = say(printWords).many;
  const turn = (name: string) => {
    const next = new Set(off);
    if (!next.delete(name)) next.add(name);
    onOff(next);
  };
  return (
    <>
      <div class="row">
        <Button testId="print-all" onPress={() => onOff(new Set())}>
          {words.all}
        </Button>
        <Button testId="print-none" onPress={() => onOff(new Set(known.map(({ name }) => name)))}>
          {words.noneOf}
        </Button>
      </div>
      <div class="choice name-list" data-testid="print-names">
        {known.map(({ name, code, about }) => (
          <button type="button" key={name} aria-pressed={!off.has(name)} onClick={() => turn(name)}>
            <span class="code">{about !== '' && name !== code ? about : code}</span>
            {isPrinted(name) && <small class="soft">{words.printed}</small>}
          </button>
        ))}
      </div>
    </>
  );
}

/** Names typed in, each once, without those known already. */
function namesTyped(typed: string, known: readonly Named[]): readonly Named[] {
  const there = new Set(known.map(({ code }) => code));
  const names = typed.split('\n').map((line) => line.trim().slice(0, LONGEST));
  return [...new Set(names)]
    .filter((name) => name !== '' && !there.has(name))
    .map((name) => ({ name, code: name, about: '' }));
}

function printingOf(app: App): Printing {
  const floor = app.store.floor();
  return {
    floor,
    line: app.line.value,
    nowMs: app.clock.nowMs(),
    zone: floor.lines.get(app.line.value ?? '')?.zone ?? 'UTC',
    isPractice: app.practice !== null,
  };
}

interface ManyAsked {
  readonly what: Subject;
  readonly chosen: readonly Named[];
  readonly paper: NamedPaper;
  readonly gone: number;
}

/** Draws all, writes down that they are printed, prints them. Nothing is written where one has no room. */
async function printMany(app: App, { what, chosen: asked, paper, gone }: ManyAsked): Promise<void> {
  const words = say(printWords);
  const from = printingOf(app);
  const chosen = what === 'badge' ? asked.map((named) => ({ ...named, code: newBadge() })) : asked;
  const labels: readonly PlantLabel[] = chosen.map((named) => nameLabel(what, named, from));
  const symbols = await Promise.all(labels.map(({ code }) => drawSymbol(code))).catch(() => null);
  const ready = symbols?.flatMap((symbol, at) => {
    const label = labels[at];
    return label === undefined ? [] : [readyLabel(paper, label, symbol)];
  });
  const whole = ready?.flatMap((each) => ('face' in each ? [each] : []));
  if (ready === undefined || whole === undefined || whole.length < ready.length) {
    const text = ready === undefined ? words.dialog.cannotDraw : words.noFace(paper.size);
    app.notice.value = { tone: 'care', text };
    return;
  }
  const names = labels.map(({ name }) => name);
  const again = names.filter((name) => timesPrinted(from.floor, what, name) > 0);
  const payload = { what, line: app.line.value, reel: null, names, again, size: paper.size };
  const drafts: readonly DraftEntry[] = [
    ...(what === 'badge' ? issued(from.floor, chosen) : []),
    { kind: 'labels.printed', payload },
  ];
  recordOwn(app, drafts, {
    notice: { tone: 'plain', text: words.sent(names.length) },
    next: () => {
      const { xMm, yMm } = app.preferences.value.labelOffset;
      printPages(paper, { labels: whole }, { first: gone, offsetXMm: xMm, offsetYMm: yMm });
    },
  });
}

/** The entries that give people the badges about to be printed. */
function issued(floor: FloorState, chosen: readonly Named[]): readonly DraftEntry[] {
  const given = chosen.flatMap(({ name, code }) => {
    const person = floor.people.get(name);
    return person ? [{ payload: sameAgain(person), badge: code }] : [];
  });
  return badgeDrafts(floor, given);
}
