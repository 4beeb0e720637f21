// One jar of paste: what comes next for it. One that is out of time is held for a lead. Before paste goes onto a stencil with paste on it, it is asked
// whether that came off: the log cannot know, and either lot may be printed where it did not.

import { useState } from 'preact/hooks';
import type { Jar } from '../../../../shared/floor/fold-paste.ts';
import type { DraftEntry } from '../../../../shared/floor/kinds.ts';
import type { JarSays } from '../../../../shared/floor/kinds-paste.ts';
import { type JarPhase, type JarStand, jarStand } from '../../../../shared/floor/paste.ts';
import { plantDay } from '../../../../shared/floor/plant-day.ts';
import { formatMoment } from '../../../../shared/kit/moment.ts';
import { useApp, useFloor } from '../../app.ts';
import { LeadDecides } from '../../frame/LeadDecides.tsx';
import { useRefusal } from '../../may.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { pasteWords } from '../../words/paste.ts';
import { shellWords } from '../../words/shell.ts';
import { formatDay, say } from '../../words/words.ts';
import { chosenDrafts, type JarStep, jarAt, stepDraft } from './jar-drafts.ts';

/** Where a jar is, what is wrong with it, and until when it is good. */
export function StandText({ stand }: { readonly stand: JarStand }) {
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

/** What may come next, by where it is. Paste on a stencil comes off before its jar is used up: else nobody would know until when it was there. */
const nextOf: Readonly<Record<JarPhase, readonly JarSays[]>> = {
  cold: ['out', 'empty'],
  out: ['opened', 'cold', 'empty'],
  open: ['on', 'cold', 'empty'],
  on: ['off'],
  empty: [],
};

interface JarDialogProps {
  readonly jar: Jar;
  readonly onClose: () => void;
}

export function JarDialog({ jar, onClose }: JarDialogProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(pasteWords);
  const [held, setHeld] = useState<JarStep | null>(null);
  const [isAsked, setAsked] = useState(false);
  const nowMs = app.nowMs.value;
  const line = app.line.value;
  const stand = jarStand(floor, jar, { nowMs, today: plantDay(floor, line ?? '', nowMs) });
  const at = jarAt(floor, jar, stand.line ?? line);
  const { others, isThere } = at;
  const now = () => formatMoment(app.clock.nowMs());
  const facts = { jar: jar.jar, line, lot: jar.lot, reasons: [...stand.faults] };
  const choose = (step: JarStep) => {
    // What is out of time is kept off the stencil, and not opened while it is cold.
    const isKept = (step.says === 'on' || step.says === 'opened') && stand.faults.length > 0;
    const kept: DraftEntry | null = isKept ? { kind: 'jar.held', payload: facts } : null;
    const next = isKept ? () => setHeld(step) : onClose;
    app.record(chosenDrafts(at, step, { held: kept, from: now() }), { next });
  };
  const press = (says: JarSays) => {
    if (says === 'on' && others.length > 0) setAsked(true);
    else choose({ says });
  };
  if (held !== null)
    return (
      <LeadDecides
        title={words.held(jar.jar)}
        tone="stop"
        why={words.why}
        act={words.let}
        testId="jar-let"
        onClose={onClose}
        onDecide={(lead, reason) => {
          const payload = { ...facts, reason, by: lead.person.person };
          app.record([{ kind: 'jar.let', payload }, stepDraft(at, held, now())], { next: onClose });
        }}
      >
        <p>
          <StandText stand={stand} />
        </p>
        <p class="soft">{words.heldHelp}</p>
      </LeadDecides>
    );
  const there = others.map((each) => each.jar).join(', ');
  return (
    <Dialog title={jar.jar} onClose={onClose}>
      <div class="stack" data-testid="jar-dialog">
        <p class="code" translate={false}>
          {jar.paste} {jar.lot}
        </p>
        <p>
          <StandText stand={stand} />
        </p>
        {stand.phase === 'on' && isThere && others.length > 0 && <p class="soft">{words.liesWith(there)}</p>}
        {isAsked ? (
          <OnTop
            there={there}
            onTop={() => choose({ says: 'on', there: 'stays' })}
            onCleared={() => choose({ says: 'on', there: 'came-off' })}
            onClose={onClose}
          />
        ) : (
          <NextSteps phase={stand.phase} onPress={press} onClose={onClose} />
        )}
      </div>
    </Dialog>
  );
}

/** Whether the paste that is on the stencil came off. */
function OnTop(props: {
  readonly there: string;
  readonly onTop: () => void;
  readonly onCleared: () => void;
  readonly onClose: () => void;
}) {
  const words = say(pasteWords);
  return (
    <>
      <p>{words.isThere(props.there)}</p>
      <div class="row">
        <Button tone="act" large testId="jar-cleared" onPress={props.onCleared}>
          {words.cleared}
        </Button>
        <Button large testId="jar-on-top" onPress={props.onTop}>
          {words.onTop}
        </Button>
        <Button large tone="quiet" onPress={props.onClose}>
          {say(shellWords).cancel}
        </Button>
      </div>
    </>
  );
}

function NextSteps(props: {
  readonly phase: JarPhase;
  readonly onPress: (says: JarSays) => void;
  readonly onClose: () => void;
}) {
  const line = useApp().line.value;
  const words = say(pasteWords);
  const refusal = useRefusal('verify-reel');
  return (
    <div class="row">
      {nextOf[props.phase].map((says, at) => (
        <Button
          key={says}
          large
          tone={at === 0 ? 'act' : 'plain'}
          testId={`jar-${says}`}
          disabledReason={refusal ?? (says === 'on' && line === null ? words.line : null)}
          onPress={() => props.onPress(says)}
        >
          {words.says[says]}
        </Button>
      ))}
      <Button large tone="quiet" onPress={props.onClose}>
        {say(shellWords).close}
      </Button>
    </div>
  );
}
