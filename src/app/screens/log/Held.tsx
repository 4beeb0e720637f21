// Panels that are held since wrong material may be on them, until a lead signs each or all.

import { useState } from 'preact/hooks';
import { type Containment, isHeld, stillHeld } from '../../../../shared/floor/fold-contain.ts';
import { numberAt } from '../../../../shared/trace/order.ts';
import { useApp, useFloor } from '../../app.ts';
import { ConfirmPerson } from '../../frame/ConfirmPerson.tsx';
import { useConfirmed } from '../../frame/confirmed.ts';
import { PasskeyTold } from '../../frame/PasskeyTold.tsx';
import { recordSigned } from '../../frame/signed.ts';
import { letOut } from '../../let-out.ts';
import { useRefusal } from '../../may.ts';
import { ActGroup } from '../../ui/ActGroup.tsx';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Field } from '../../ui/Field.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { VerdictShape } from '../../ui/Shape.tsx';
import { heldWords } from '../../words/held.ts';
import { shellWords } from '../../words/shell.ts';
import { formatCount, formatDay, say } from '../../words/words.ts';
import { heldCsv, heldList } from './held-model.ts';
import { personName, runName, zoneOf } from './names.ts';

export function Held() {
  const floor = useFloor();
  const words = say(heldWords);
  const refusal = useRefusal('clear-hold');
  const [signing, setSigning] = useState<string | null>(null);
  const list = heldList(floor);
  const shown = signing === null ? undefined : floor.contained.get(signing);
  if (list.length === 0) return <p class="empty">✓ {words.none}</p>;
  return (
    <div data-testid="held">
      <ActGroup reason={list.some(isHeld) ? refusal : null}>
        {list.map((each) => (
          <HeldPanels key={each.containment} held={each} onSign={() => setSigning(each.containment)} />
        ))}
      </ActGroup>
      {shown && <SignDialog held={shown} onClose={() => setSigning(null)} />}
    </div>
  );
}

function HeldPanels({ held, onSign }: { readonly held: Containment; readonly onSign: () => void }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(heldWords);
  const refusal = useRefusal('clear-hold');
  const zone = zoneOf(floor, held.line);
  const still = stillHeld(held);
  const what = [held.reel, held.lot, held.part].filter((each) => each !== null).join(' · ');
  return (
    <article class="traced" data-testid="held-panels">
      <p>
        <VerdictShape verdict={isHeld(held) ? 'held' : 'accepted'} size={24} />{' '}
        <b>{words.causes[held.cause]}</b> · <span class="code">{what}</span> · {formatDay(held.atMs, zone)}
      </p>
      <p>{held.reason}</p>
      {held.runs.map(({ run, slot, possible }) => {
        const counted = floor.runs.get(run);
        const number = (place: number) => formatCount(counted ? numberAt(counted, place) : place);
        return (
          <p key={`${run}${slot}${possible.first}`}>
            {counted ? runName(floor, run) : run} · <span class="code">{slot}</span> ·{' '}
            <b>{words.span(number(possible.first), number(possible.last))}</b>
          </p>
        );
      })}
      <p>{held.held.size === 0 ? words.noCodes : words.still(still.length, held.held.size)}</p>
      {held.signed && (
        <p>{words.signed(personName(floor, held.signed.by), formatDay(held.signed.atMs, zone))}</p>
      )}
      {held.held.size > 0 && (
        <details>
          <summary>{words.codes(held.held.size)}</summary>
          <p class="code wrap">{[...held.held.keys()].join(' ')}</p>
        </details>
      )}
      <div class="row">
        {isHeld(held) && (
          <Button tone="act" testId="held-sign" disabledReason={refusal} onPress={onSign}>
            {words.sign}
          </Button>
        )}
        {held.held.size > 0 && (
          <Button
            onPress={() =>
              letOut(app, 'held-panels.csv', new Blob([heldCsv(held, floor)], { type: 'text/csv' }))
            }
          >
            <Icon name="save" size={20} /> {words.save}
          </Button>
        )}
      </div>
    </article>
  );
}

function SignDialog({ held, onClose }: { readonly held: Containment; readonly onClose: () => void }) {
  const app = useApp();
  const words = say(heldWords);
  const [sure, setSure] = useConfirmed();
  const [reason, setReason] = useState('');
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const missing = reason.trim() === '' ? words.signWhy : null;

  function sign(codes: readonly string[] | null): void {
    if (!sure) return;
    const { containment, line } = held;
    const by = { reason: reason.trim(), by: sure.person.person, checked: sure.checked };
    const payload = { containment, line, codes: codes === null ? null : [...codes], ...by };
    recordSigned(app, sure, [{ kind: 'containment.signed', payload }], {
      notice: { tone: 'go', text: words.signDone },
      next: onClose,
    });
  }

  return (
    <Dialog title={words.signTitle} onClose={onClose} tone="care" wide>
      <div class="stack" data-testid="sign-held">
        {!sure && (
          <ConfirmPerson
            needs="lead"
            badgeSuffices={false}
            onConfirmed={(person, { checked }) => setSure({ person, checked, byPasskey: false })}
            onPasskey={(person) => setSure({ person, checked: 'tablet', byPasskey: true })}
          />
        )}
        {sure && (
          <>
            <p class="soft">{words.signHelp}</p>
            <PasskeyTold sure={sure} />
            <Field
              label={words.signWhy}
              testId="sign-reason"
              maxLength={200}
              value={reason}
              onInput={setReason}
            />
            <div class="choice held-codes">
              {stillHeld(held).map((code) => (
                <button
                  type="button"
                  key={code}
                  class="code"
                  aria-pressed={chosen.includes(code)}
                  onClick={() =>
                    setChosen(
                      chosen.includes(code) ? chosen.filter((each) => each !== code) : [...chosen, code],
                    )
                  }
                >
                  {code}
                </button>
              ))}
            </div>
            {chosen.length > 0 && (
              <Button
                tone="act"
                large
                testId="sign-some"
                disabledReason={missing}
                onPress={() => sign(chosen)}
              >
                {words.sign} ({formatCount(chosen.length)})
              </Button>
            )}
            <Button
              tone={chosen.length > 0 ? 'plain' : 'act'}
              large
              testId="sign-all"
              disabledReason={missing}
              onPress={() => sign(null)}
            >
              {words.signAll}
            </Button>
          </>
        )}
        <Button large onPress={onClose}>
          {say(shellWords).cancel}
        </Button>
      </div>
    </Dialog>
  );
}
