// The label of one package: how it will look, what it gives the package, and the print. A package without an id gets one here.

import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Draft } from '../../../shared/floor/draft.ts';
import { timesPrinted } from '../../../shared/floor/fold-print.ts';
import { packageIdOf } from '../../../shared/floor/package-name.ts';
import { entryInName } from '../../../shared/floor/reel-id.ts';
import type { Reel } from '../../../shared/floor/state.ts';
import type { NoFace } from '../../../shared/labels/label-face.ts';
import { entryId } from '../../../shared/log/entry.ts';
import { type App, type LabelWanted, useApp, useFloor } from '../app.ts';
import { leftOn } from '../left-on.ts';
import { useRefusal } from '../may.ts';
import { address } from '../router.ts';
import { drawSymbol } from '../scan/draw.ts';
import type { CodeSquares } from '../scan/symbol.ts';
import { AskFeet } from '../ui/Ask.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { printWords } from '../words/print.ts';
import { formatNumber, say } from '../words/words.ts';
import { FacePreview, type ReadyLabel, readyLabel } from './Face.tsx';
import { jarLabel, type PlantLabel, type Printing, packageLabel } from './labels.ts';
import { type NamedPaper, paperInUse } from './paper.ts';
import { printPages } from './sheet.tsx';

/** What stands for the id of a package that gets its own as it is printed. */
const COMING = 'XXXXXXX-XXXX';

export function LabelDialog({
  wanted,
  onClose,
}: {
  readonly wanted: LabelWanted;
  readonly onClose: () => void;
}) {
  const app = useApp();
  const floor = useFloor();
  const words = say(printWords);
  const refusal = useRefusal('verify-reel');
  const paper = paperInUse(floor, app.preferences.value, words.sizes.first);
  const reel = 'reel' in wanted ? floor.reels.get(wanted.reel) : null;
  const jar = 'jar' in wanted ? wanted.jar : null;
  const facts =
    reel ?? ('reel' in wanted ? null : reelOf('jar' in wanted ? asReel(wanted.jar) : wanted.fresh, COMING));
  const id = facts === null ? COMING : idFor(facts);
  const times = timesPrinted(floor, 'reel', id);
  const label = useMemo(
    () => (facts === null ? null : labelOf(facts, jar, id, printingFrom(app))),
    [facts, jar, id],
  );
  const symbol = useSymbol(label?.code ?? null);
  const ready =
    symbol === null || symbol === 'cannot' || label === null ? null : readyLabel(paper, label, symbol);
  if (facts === null || label === null) return null;
  const print = () => {
    printPackage(app, facts, jar, paper).catch(() => undefined); // shown by the fault screen
    onClose();
  };
  const problem =
    symbol === 'cannot'
      ? words.dialog.cannotDraw
      : ready === null
        ? words.dialog.drawing
        : wrongWith(ready, paper);
  return (
    <Dialog title={words.dialog.title(facts.part ?? facts.supplierPart ?? id)} onClose={onClose}>
      <div class="stack" data-testid="label-dialog">
        {ready !== null && 'face' in ready && <FacePreview paper={paper} label={ready} />}
        {facts.reel !== id && <p>{words.dialog.gives(id)}</p>}
        {facts.reel === COMING && <p>{words.dialog.givesNew}</p>}
        {times > 0 && <p data-testid="label-again">{words.dialog.again(times)}</p>}
        {ready !== null && 'face' in ready && <LeftOut label={ready} />}
        <p class="soft">{words.dialog.stick}</p>
        <div class="row">
          <span class="soft grow">{words.on(paper.size)}</span>
          <a class="button quiet" href={address('plant', 'print')} onClick={onClose}>
            {words.change}
          </a>
        </div>
        <AskFeet
          testId="label-print"
          disabledReason={refusal ?? problem}
          onYes={print}
          onNo={onClose}
          no={words.none}
        >
          {words.print}
        </AskFeet>
      </div>
    </Dialog>
  );
}

/** The id that a reel has, or gets by its label. */
function idFor({ reel }: Reel): string {
  const entry = entryInName(reel);
  return entry === null ? reel : packageIdOf(entry);
}

/** A package that the log does not know yet, as it will be known. */
function reelOf(fresh: Extract<LabelWanted, { readonly fresh: unknown }>['fresh'], reel: string): Reel {
  const { part, supplierPart, lot, dateCode, quantity } = fresh;
  return { reel, part, supplierPart, lot, dateCode, count: quantity, sd: 0, basis: 'label', at: null };
}

type NamelessJar = Extract<LabelWanted, { readonly jar: unknown }>['jar'];

/** A jar as a package of its paste. */
function asReel({ paste, lot }: NamelessJar): Extract<LabelWanted, { readonly fresh: unknown }>['fresh'] {
  return { part: paste, supplierPart: null, quantity: null, lot, dateCode: null };
}

function labelOf(facts: Reel, jar: NamelessJar | null, id: string, from: Printing): PlantLabel {
  return jar === null ? packageLabel(facts, id, from) : jarLabel({ ...jar, jar: id }, from);
}

function printingFrom(app: App): Printing {
  const floor = app.store.floor();
  const line = app.line.value;
  return {
    floor,
    line,
    nowMs: app.clock.nowMs(),
    zone: floor.lines.get(line ?? '')?.zone ?? 'UTC',
    isPractice: app.practice !== null,
  };
}

/** The code of a label once it is drawn; null until then. */
export function useSymbol(code: string | null): CodeSquares | 'cannot' | null {
  const [drawn, setDrawn] = useState<{
    readonly code: string;
    readonly symbol: CodeSquares | 'cannot';
  } | null>(null);
  useEffect(() => {
    let isWanted = true;
    const took = (symbol: CodeSquares | 'cannot') => {
      if (isWanted && code !== null) setDrawn({ code, symbol });
    };
    if (code !== null) drawSymbol(code).then(took, () => took('cannot'));
    return () => {
      isWanted = false;
    };
  }, [code]);
  return drawn?.code === code ? drawn.symbol : null;
}

function wrongWith(ready: ReadyLabel | NoFace, paper: NamedPaper): string | null {
  return 'face' in ready
    ? null
    : say(printWords).tooSmall(formatNumber(Math.ceil(ready.needsMm)), paper.size);
}

/** What found no room. */
export function LeftOut({ label }: { readonly label: ReadyLabel }) {
  const words = say(printWords);
  const { left, cut } = label.face;
  const named = (names: readonly string[]) =>
    names.map((name) => words.lines[name as keyof typeof words.lines]).join(', '); // lines are named as the words are
  if (left.length === 0 && cut.length === 0) return null;
  return (
    <p class="soft" data-testid="label-left-out">
      {left.length > 0 && words.noRoom(named(left))} {cut.length > 0 && words.wasCut(named(cut))}
    </p>
  );
}

/** Names a package where it has no id, writes down that its label is printed, and prints it. */
async function printPackage(
  app: App,
  facts: Reel,
  jar: NamelessJar | null,
  paper: NamedPaper,
): Promise<void> {
  const from = printingFrom(app);
  const isNew = facts.reel === COMING;
  const known = isNew ? null : idFor(facts);
  const times = known === null ? 0 : timesPrinted(from.floor, 'reel', known);
  // As it is before it is named: its name is another afterwards, and what is left on it is the same.
  const before = known === null ? null : packageLabel(facts, known, from);
  const written = await app.write([
    ...(known === facts.reel ? [] : [jar === null ? namingDraft(app, facts, known) : jarDraft(jar)]),
    (ids) => ({
      kind: 'labels.printed',
      payload: {
        what: 'reel',
        line: app.line.value,
        reel: known ?? packageIdOf(ids.at(-1) ?? ''),
        names: [known ?? packageIdOf(ids.at(-1) ?? '')],
        again: times > 0 && known !== null ? [known] : [],
        size: paper.size,
      },
    }),
  ]);
  const id = known ?? packageIdOf(written[0] ? entryId(written[0]) : '');
  const label =
    before ??
    labelOf({ ...facts, reel: id }, jar, id, { ...from, floor: { ...from.floor, prints: new Map() } });
  const ready = readyLabel(paper, label, await drawSymbol(label.code));
  if ('problem' in ready) {
    app.notice.value = { tone: 'care', text: say(printWords).noFace(paper.size) };
    return;
  }
  const { xMm, yMm } = app.preferences.value.labelOffset;
  printPages(paper, { labels: [ready] }, { first: 0, offsetXMm: xMm, offsetYMm: yMm });
  app.notice.value = { tone: 'plain', text: say(printWords).sent(1) };
}

/** The entry by which a jar is known, in the cold. */
function jarDraft(jar: NamelessJar): Draft {
  return (_, own) => ({ kind: 'jar.known', payload: { ...jar, jar: packageIdOf(own) } });
}

/** The entry that names a package; `known`: its id, where the log knows it already. */
function namingDraft(app: App, facts: Reel, known: string | null): Draft {
  const { part, supplierPart, lot, dateCode, basis } = facts;
  const { parts, sd } = leftOn(app.store.floor(), facts);
  const payload = {
    was: known === null ? null : facts.reel,
    part,
    supplierPart,
    lot,
    dateCode,
    quantity: parts === null ? null : Math.max(0, Math.round(parts)),
    sd,
    basis,
    via: 'typed' as const,
  };
  return (_, own) => ({ kind: 'reel.named', payload: { ...payload, reel: known ?? packageIdOf(own) } });
}
