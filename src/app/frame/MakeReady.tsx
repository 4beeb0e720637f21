// A second feeder is made ready for a slot: what is wanted of it next, and what came of the last scan.

import { useLayoutEffect, useMemo, useState } from 'preact/hooks';
import { slotKey } from '../../../shared/floor/state.ts';
import { useApp, useFloor } from '../app.ts';
import { useRefusal } from '../may.ts';
import { Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { Field } from '../ui/Field.tsx';
import { dockWords } from '../words/dock.ts';
import { packWords } from '../words/packs.ts';
import { shellWords } from '../words/shell.ts';
import { verdictWords } from '../words/verdict.ts';
import { say } from '../words/words.ts';
import { labelSoFar, labelTold } from './label-so-far.ts';
import { QuestionDialog } from './QuestionDialog.tsx';
import { createReadyDesk, type ReadyDesk, type ReadyTold } from './ready-desk.ts';
import { reasonFacts } from './reason-facts.ts';

interface MakeReadyProps {
  readonly line: string;
  readonly slot: string;
  readonly onDone: () => void;
}

function readyText(told: ReadyTold): string {
  const words = say(packWords).feeder;
  if (told.tell === 'unread' || told.tell === 'unknown-code') return words.unread;
  if (told.tell === 'sign-in') return say(shellWords).signInFirst;
  if (!('reason' in told)) return labelTold(told);
  const { reason } = told;
  const of = reason && say(verdictWords).reasons[reason.code];
  if (told.tell === 'held') return words.readyHeld(of?.title ?? '');
  return words.readyRefused(reason && of ? `${of.title}. ${of.say(reasonFacts(reason))} ${of.act}` : '');
}

/** Takes the scans of a feeder and of its reel. */
export function MakeReady({ line, slot, onDone }: MakeReadyProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(packWords).feeder;
  const setup = floor.chosen.get(line) ?? '';
  const desk = useMemo(
    () =>
      createReadyDesk(app, {
        line,
        setup,
        slot,
        onReady: (feeder) => {
          app.notice.value = { tone: 'plain', text: say(packWords).feeder.readyDone(feeder, slot) };
          onDone();
        },
      }),
    [],
  );
  useLayoutEffect(() => app.scans.take(desk.take), []);
  const [feeder, told, inHand] = [desk.feeder.value, desk.told.value, desk.desk.value];
  if (inHand.question !== null) return <QuestionDialog desk={desk.answers} question={inHand.question} />;
  const isOn = feeder !== null && floor.slots.get(slotKey(line, slot))?.feeder === feeder;
  return (
    <Dialog title={words.readyTitle(slot)} onClose={onDone}>
      <div class="stack" data-testid="ready-dialog">
        <p class="soft">{words.readyHelp}</p>
        {feeder !== null && <p class="chip code">✓ {feeder}</p>}
        <p>
          <b data-testid="ready-wants">
            {labelSoFar(inHand) ?? words.readyWants[feeder === null ? 'feeder' : 'reel']}
          </b>
        </p>
        {feeder === null && <FeederTyped desk={desk} />}
        {inHand.partial !== null && (
          <div>
            <Button large testId="ready-enough" onPress={desk.enough}>
              {say(dockWords).enough}
            </Button>
          </div>
        )}
        {isOn && <p class="chip care">{words.isOn(feeder, slot)}</p>}
        {told !== null && (
          <p
            class={`chip ${told.tell === 'refused' ? 'stop' : 'care'}`}
            role="status"
            data-testid="ready-told"
          >
            {readyText(told)}
          </p>
        )}
        <div class="acts">
          <Button large onPress={onDone}>
            {say(shellWords).cancel}
          </Button>
        </div>
      </div>
    </Dialog>
  );
}

/** The feeder's code where it cannot be scanned. */
function FeederTyped({ desk }: { readonly desk: Pick<ReadyDesk, 'use'> }) {
  const words = say(packWords).feeder;
  const refusal = useRefusal('verify-reel');
  const [typed, setTyped] = useState('');
  const name = typed.trim();
  return (
    <div class="row">
      <Field
        label={words.code}
        testId="ready-feeder"
        maxLength={24}
        autocomplete="off"
        value={typed}
        onInput={setTyped}
      />
      <Button
        large
        testId="ready-use"
        disabledReason={refusal ?? (name === '' ? words.readyWants.feeder : null)}
        onPress={() => desk.use(name)}
      >
        {words.use}
      </Button>
    </div>
  );
}
