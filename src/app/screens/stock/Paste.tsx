// Jars of paste: where each is and until when it is good by the plant's sheet; one that is new is put in the cold.

import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Jar } from '../../../../shared/floor/fold-paste.ts';
import { type JarPhase, type JarStand, jarStand } from '../../../../shared/floor/paste.ts';
import { plantDay } from '../../../../shared/floor/plant-day.ts';
import { holdsBadge } from '../../../../shared/floor/recognise.ts';
import type { Scan } from '../../../../shared/labels/scan.ts';
import { useApp, useFloor } from '../../app.ts';
import { useRefusal } from '../../may.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { pasteWords } from '../../words/paste.ts';
import { shellWords } from '../../words/shell.ts';
import { stockWords } from '../../words/stock.ts';
import { say } from '../../words/words.ts';
import { JarDialog, StandText } from './JarDialog.tsx';
import { PasteSheet } from './PasteSheet.tsx';
import { type NamelessJar, type NewJar, readJar, readLabel } from './read-label.ts';

const order: readonly JarPhase[] = ['on', 'open', 'out', 'cold', 'empty'];

export function Paste() {
  const app = useApp();
  const floor = useFloor();
  const words = say(pasteWords);
  const mayRule = useRefusal('describe-part');
  const [open, setOpen] = useState<string | null>(null);
  const [fresh, setFresh] = useState<NewJar | NamelessJar | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const [sheet, setSheet] = useState<string | null>(null);
  const take = (scan: Scan): boolean => {
    const now = app.store.floor();
    const texts = scan.codes.map((code) => code.text);
    if (holdsBadge(now, app.line.value, texts)) return false;
    const id = readLabel(now, scan).reel ?? texts[0]?.trim() ?? '';
    const isKnown = now.jars.has(id);
    const read = isKnown ? null : readJar(now, scan);
    setOpen(isKnown ? id : null);
    setFresh(read);
    setWrong(isKnown || read !== null ? null : words.unknown(id));
    return true;
  };
  const newest = useRef(take);
  newest.current = take;
  useLayoutEffect(() => app.scans.take((scan) => newest.current(scan)), []);
  const nowMs = app.nowMs.value;
  const today = plantDay(floor, app.line.value ?? '', nowMs);
  const jars = [...floor.jars.values()]
    .map((jar) => ({ jar, stand: jarStand(floor, jar, { nowMs, today }) }))
    .filter(({ stand }) => stand.phase !== 'empty')
    .sort((a, b) => order.indexOf(a.stand.phase) - order.indexOf(b.stand.phase));
  const opened = open === null ? undefined : floor.jars.get(open);
  return (
    <section class="stack" data-testid="paste">
      <div class="row">
        <p class="soft grow">{words.help}</p>
        <Button disabledReason={mayRule} testId="paste-sheet" onPress={() => setSheet('')}>
          {words.sheet.add}
        </Button>
      </div>
      {wrong !== null && (
        <p class="chip stop" role="alert" data-testid="paste-wrong">
          ✕ {wrong}
        </p>
      )}
      {fresh?.jar === null && <Nameless jar={fresh} onPrint={() => setFresh(null)} />}
      {jars.length === 0 && <p class="empty">{words.none}</p>}
      <div class="reel-list">
        {jars.map(({ jar, stand }) => (
          <JarRow key={jar.jar} jar={jar} stand={stand} onOpen={() => setOpen(jar.jar)} />
        ))}
      </div>
      {opened && <JarDialog jar={opened} onClose={() => setOpen(null)} />}
      {fresh && fresh.jar !== null && <NewDialog jar={fresh} onClose={() => setFresh(null)} />}
      {sheet !== null && <PasteSheet paste={sheet} onClose={() => setSheet(null)} />}
    </section>
  );
}

function JarRow(props: { readonly jar: Jar; readonly stand: JarStand; readonly onOpen: () => void }) {
  const { jar, stand, onOpen } = props;
  return (
    <button type="button" class="jar-row" data-testid={`jar-${jar.jar}`} onClick={onOpen}>
      <span>
        <b class="code" translate={false}>
          {jar.jar}
        </b>{' '}
        <span class="code soft" translate={false}>
          {jar.paste} {jar.lot}
        </span>
      </span>
      <span>
        <StandText stand={stand} />
      </span>
    </button>
  );
}

/** A jar whose label has no id: it gets one of the plant's, with its lot and its date. */
function Nameless({ jar, onPrint }: { readonly jar: NamelessJar; readonly onPrint: () => void }) {
  const app = useApp();
  const refusal = useRefusal('verify-reel');
  const { paste, lot, expires, via } = jar;
  return (
    <div class="row goods-row" data-testid="jar-no-id">
      <span class="chip care grow">! {say(pasteWords).noId(paste)}</span>
      <Button
        tone="act"
        testId="jar-print"
        disabledReason={refusal}
        onPress={() => {
          onPrint();
          app.labelWanted.value = { jar: { paste, lot, expires, via } };
        }}
      >
        {say(stockWords).goodsIn.print}
      </Button>
    </div>
  );
}

function NewDialog({ jar, onClose }: { readonly jar: NewJar; readonly onClose: () => void }) {
  const app = useApp();
  const words = say(pasteWords);
  const refusal = useRefusal('verify-reel');
  return (
    <Dialog title={words.new} onClose={onClose}>
      <div class="stack">
        <p class="code" translate={false}>
          {jar.jar} · {jar.paste} {jar.lot}
        </p>
        <div class="row">
          <Button
            tone="act"
            large
            testId="jar-new"
            disabledReason={refusal}
            onPress={() => app.record([{ kind: 'jar.known', payload: jar }], { next: onClose })}
          >
            {words.newYes}
          </Button>
          <Button large onPress={onClose}>
            {say(shellWords).cancel}
          </Button>
        </div>
      </div>
    </Dialog>
  );
}
