// Signatures under a step: one row a role. Each is a person made sure of by badge, PIN or passkey, two are two people, and who signed may take
// it back until the run is released.

import { useState } from 'preact/hooks';
import { signaturesLeft } from '../../../../shared/checklist/answers.ts';
import type { ChecklistStep, Signature } from '../../../../shared/floor/checklist.ts';
import type { Checklist } from '../../../../shared/floor/state.ts';
import type { Role } from '../../../../shared/floor/vocabulary.ts';
import { useApp, useFloor } from '../../app.ts';
import { ConfirmPerson } from '../../frame/ConfirmPerson.tsx';
import type { Sure } from '../../frame/confirmed.ts';
import { PasskeyTold } from '../../frame/PasskeyTold.tsx';
import { recordSigned } from '../../frame/signed.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { checklistWords } from '../../words/checklist.ts';
import { shellWords } from '../../words/shell.ts';
import { formatTime, say } from '../../words/words.ts';

interface SignStepProps {
  readonly list: Checklist;
  readonly step: ChecklistStep;
  /** True where the step may be signed here and now. */
  readonly isOpen: boolean;
  /** True where a signature may still be taken back. */
  readonly mayTakeBack: boolean;
}

export function SignStep({ list, step, isOpen, mayTakeBack }: SignStepProps) {
  const floor = useFloor();
  const words = say(checklistWords);
  const shell = say(shellWords);
  const [signing, setSigning] = useState<Role | null>(null);
  const [leaving, setLeaving] = useState<Signature | null>(null);
  const answer = list.answers.get(step.step) ?? null;
  const signed = answer?.signed ?? [];
  const zone = floor.lines.get(list.line)?.zone ?? 'UTC';
  const left = signaturesLeft(step, answer);
  return (
    <div class="signatures">
      {signed.map((each) => (
        <div class="row" key={each.person} data-testid={`signed-${step.step}-${each.role}`}>
          <span class="chip go">
            ✓ {shell.roles[each.role]}: {floor.people.get(each.person)?.name ?? each.person}
          </span>
          <span class="soft">
            {formatTime(each.atMs, zone)} · {words.signedHow[each.how]}
          </span>
          {mayTakeBack && (
            <Button
              tone="quiet"
              onPress={() => setLeaving(each)}
              testId={`unsign-${step.step}-${each.role}`}
              label={words.takeBackOf(floor.people.get(each.person)?.name ?? each.person)}
            >
              {words.takeBack}
            </Button>
          )}
        </div>
      ))}
      {isOpen && left.length > 0 && (
        <div class="row">
          {[...new Set(left)].map((role) => (
            <Button
              key={role}
              tone="act"
              onPress={() => setSigning(role)}
              testId={`sign-${step.step}-${role}`}
            >
              {words.signAs(shell.roles[role])}
            </Button>
          ))}
          <span class="soft">{words.sign(left.length)}</span>
        </div>
      )}
      {signing !== null && (
        <SignDialog list={list} step={step} role={signing} onClose={() => setSigning(null)} />
      )}
      {leaving !== null && (
        <UnsignDialog list={list} step={step} signature={leaving} onClose={() => setLeaving(null)} />
      )}
    </div>
  );
}

interface SignDialogProps {
  readonly list: Checklist;
  readonly step: ChecklistStep;
  readonly onClose: () => void;
}

function SignDialog({ list, step, role, onClose }: SignDialogProps & { readonly role: Role }) {
  const app = useApp();
  const words = say(checklistWords);
  const shell = say(shellWords);
  const { checklist, line } = list;
  const hasSigned = (person: string) =>
    (app.store.floor().checklists.get(checklist)?.answers.get(step.step)?.signed ?? []).some(
      (each) => each.person === person,
    );
  const [asked, setAsked] = useState<Sure | null>(null);
  const sign = (sure: Sure, how: Signature['how']) => {
    setAsked(sure);
    const { person, checked } = sure;
    const payload = { checklist, line, step: step.step, by: person.person, role, how, checked };
    recordSigned(app, sure, [{ kind: 'step.signed', payload }], { next: onClose });
  };
  return (
    <Dialog title={words.signTitle(shell.roles[role])} onClose={onClose}>
      <div class="stack" data-testid="sign-dialog">
        <p class="soft">{role === 'operator' ? words.signByBadge : words.signByPin}</p>
        <ConfirmPerson
          needs={role}
          badgeSuffices={role === 'operator'}
          nameSuffices={false}
          objection={(person) => (hasSigned(person.person) ? words.signedAlready(person.name) : null)}
          onConfirmed={(person, { how, checked }) => {
            if (how === 'name') return; // a name alone is no signature, and is not offered
            sign({ person, checked, byPasskey: false }, how);
          }}
          onPasskey={(person) => sign({ person, checked: 'tablet', byPasskey: true }, 'passkey')}
        />
        <PasskeyTold sure={asked} />
      </div>
      <div class="acts">
        <Button large onPress={onClose}>
          {shell.cancel}
        </Button>
      </div>
    </Dialog>
  );
}

function UnsignDialog({
  list,
  step,
  signature,
  onClose,
}: SignDialogProps & { readonly signature: Signature }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(checklistWords);
  const name = floor.people.get(signature.person)?.name ?? signature.person;
  return (
    <Dialog title={words.unsignTitle} onClose={onClose} tone="care">
      <div class="stack" data-testid="unsign-dialog">
        <p>{words.unsignHelp(name)}</p>
        <ConfirmPerson
          needs={signature.role}
          badgeSuffices={signature.role === 'operator'}
          nameSuffices={false}
          objection={(person) => (person.person === signature.person ? null : words.notYours(name))}
          onConfirmed={(person, { checked }) => {
            const { checklist, line } = list;
            const payload = { checklist, line, step: step.step, by: person.person, checked };
            app.record([{ kind: 'step.unsigned', payload }], { next: onClose });
          }}
        />
      </div>
      <div class="acts">
        <Button large onPress={onClose}>
          {say(shellWords).cancel}
        </Button>
      </div>
    </Dialog>
  );
}
