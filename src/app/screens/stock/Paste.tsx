// Jars of paste: where each is, until when it is good by the plant's sheet, and what comes next for it. One that is out of time is held for a lead.

import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Jar } from '../../../../shared/floor/fold-paste.ts';
import type { DraftEntry } from '../../../../shared/floor/kinds.ts';
import type { JarSays } from '../../../../shared/floor/kinds-paste.ts';
import { type JarPhase, type JarStand, jarStand } from '../../../../shared/floor/paste.ts';
import { plantDay } from '../../../../shared/floor/plant-day.ts';
import { holdsBadge } from '../../../../shared/floor/recognise.ts';
import { formatMoment } from '../../../../shared/kit/moment.ts';
import type { Scan } from '../../../../shared/labels/scan.ts';
import { useApp, useFloor } from '../../app.ts';
import { LeadDecides } from '../../frame/LeadDecides.tsx';
import { useRefusal } from '../../may.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { pasteWords } from '../../words/paste.ts';
import { shellWords } from '../../words/shell.ts';
import { formatDay, say } from '../../words/words.ts';
import { PasteSheet } from './PasteSheet.tsx';
import { type NewJar, newJar, readLabel } from './read-label.ts';

const order: readonly JarPhase[] = ['on', 'open', 'out', 'cold', 'empty'];

export function Paste() {
  const app = useApp();
  const floor = useFloor();
  const words = say(pasteWords);
  const mayRule = useRefusal('describe-part');
  const [open, setOpen] = useState<string | null>(null);
  const [fresh, setFresh] = useState<NewJar | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const [sheet, setSheet] = useState<string | null>(null);
  const take = (scan: Scan): boolean => {
    const now = app.store.floor();
    const texts = scan.codes.map((code) => code.text);
    if (holdsBadge(now, app.line.value, texts)) return false;
    const text = texts[0]?.trim() ?? '';
    const id = readLabel(now, scan).reel ?? text;
    const known = now.jars.has(id);
    const made = known ? null : newJar(now, scan);
    setOpen(known ? id : null);
    setFresh(made);
    setWrong(known || made !== null ? null : words.unknown(text));
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
      {jars.length === 0 && <p class="empty">{words.none}</p>}
      <div class="reel-list">
        {jars.map(({ jar, stand }) => (
          <JarRow key={jar.jar} jar={jar} stand={stand} onOpen={() => setOpen(jar.jar)} />
        ))}
      </div>
      {opened && <JarDialog jar={opened} onClose={() => setOpen(null)} />}
      {fresh && <NewDialog jar={fresh} onClose={() => setFresh(null)} />}
      {sheet !== null && <PasteSheet paste={sheet} onClose={() => setSheet(null)} />}
    </section>
  );
}

/** Where a jar is, what is wrong with it, and until when it is good. */
function StandText({ stand }: { readonly stand: JarStand }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(pasteWords);
  const zone = floor.lines.get(app.line.value ?? '')?.zone ?? 'UTC';
  const { phase, line, faults, thawedMs, goodUntilMs, isRuled } = stand;
  const where = line === null ? words.phases[phase] : words.onLine(floor.lines.get(line)?.name ?? line);
  return (
    <>
      <span>{where}</span>{' '}
      {thawedMs !== null && <span class="soft">{words.thawed(formatDay(thawedMs, zone))}</span>}{' '}
      {goodUntilMs !== null && <span class="soft">{words.goodUntil(formatDay(goodUntilMs, zone))}</span>}{' '}
      {!isRuled && <span class="chip care">! {words.noSheet}</span>}
      {faults.map((fault) => (
        <span key={fault} class={`chip ${fault === 'too-cold' ? 'care' : 'stop'}`}>
          {fault === 'too-cold' ? '!' : '✕'} {words.faults[fault]}
        </span>
      ))}
    </>
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

/** What may come next, by where it is. */
const nextOf: Readonly<Record<JarPhase, readonly JarSays[]>> = {
  cold: ['out', 'empty'],
  out: ['opened', 'cold', 'empty'],
  open: ['on', 'cold', 'empty'],
  on: ['off', 'empty'],
  empty: [],
};

function JarDialog({ jar, onClose }: { readonly jar: Jar; readonly onClose: () => void }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(pasteWords);
  const refusal = useRefusal('verify-reel');
  const [held, setHeld] = useState(false);
  const nowMs = app.nowMs.value;
  const line = app.line.value;
  const stand = jarStand(floor, jar, { nowMs, today: plantDay(floor, line ?? '', nowMs) });
  const told = (says: JarSays): DraftEntry => ({
    kind: 'jar.told',
    payload: {
      jar: jar.jar,
      says,
      from: formatMoment(app.clock.nowMs()),
      line: says === 'on' || says === 'off' ? (stand.line ?? line) : null,
      lot: jar.lot,
      via: 'typed',
    },
  });
  const facts = { jar: jar.jar, line, lot: jar.lot, reasons: [...stand.faults] };
  const press = (says: JarSays) => {
    // What is out of time is kept off the stencil, and not opened while it is cold.
    if ((says === 'on' || says === 'opened') && stand.faults.length > 0) {
      app.record([{ kind: 'jar.held', payload: facts }], { next: () => setHeld(true) });
      return;
    }
    app.record([told(says)], { next: onClose });
  };
  if (held)
    return (
      <LeadDecides
        title={words.held(jar.jar)}
        tone="stop"
        why={words.why}
        act={words.let}
        testId="jar-let"
        onClose={onClose}
        onDecide={(lead, reason) =>
          app.record(
            [
              { kind: 'jar.let', payload: { ...facts, reason, by: lead.person.person } },
              told(stand.phase === 'out' || stand.phase === 'cold' ? 'opened' : 'on'),
            ],
            { next: onClose },
          )
        }
      >
        <p>
          <StandText stand={stand} />
        </p>
        <p class="soft">{words.heldHelp}</p>
      </LeadDecides>
    );
  return (
    <Dialog title={jar.jar} onClose={onClose}>
      <div class="stack" data-testid="jar-dialog">
        <p class="code" translate={false}>
          {jar.paste} {jar.lot}
        </p>
        <p>
          <StandText stand={stand} />
        </p>
        <div class="row">
          {nextOf[stand.phase].map((says, at) => (
            <Button
              key={says}
              large
              tone={at === 0 ? 'act' : 'plain'}
              testId={`jar-${says}`}
              disabledReason={refusal ?? (says === 'on' && line === null ? words.line : null)}
              onPress={() => press(says)}
            >
              {words.says[says]}
            </Button>
          ))}
          <Button large tone="quiet" onPress={onClose}>
            {say(shellWords).close}
          </Button>
        </div>
      </div>
    </Dialog>
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
