// What takes a lead, in one order everywhere: what it is about, then badge and PIN or passkey, then the reason, then the act. Whoever was made sure
// of is forgotten when the tablet is left alone; what was typed stays.

import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { Person } from '../../../shared/floor/state.ts';
import { Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { Field } from '../ui/Field.tsx';
import { peopleWords } from '../words/people.ts';
import { shellWords } from '../words/shell.ts';
import { say } from '../words/words.ts';
import { ConfirmPerson } from './ConfirmPerson.tsx';
import { type Sure, useConfirmed } from './confirmed.ts';
import { PasskeyTold } from './PasskeyTold.tsx';

export interface LeadDecidesProps {
  readonly title: string;
  readonly tone: 'plain' | 'care' | 'stop';
  /** What the lead decides on. */
  readonly children?: ComponentChildren;
  /** What the reason is asked with; null where none is wanted. */
  readonly why: string | null;
  /** The act, as its button says it. */
  readonly act: string;
  /** Test ids are `<testId>-reason` and `<testId>-yes`. */
  readonly testId: string;
  /** True where a passkey may stand for the PIN: `onDecide` writes by `signed.ts`. */
  readonly mayPasskey?: boolean;
  /** Why this person cannot be the one; null where nothing stands against it. */
  readonly objection?: (person: Person) => string | null;
  readonly onDecide: (lead: Sure, reason: string) => void;
  readonly onClose: () => void;
}

export function LeadDecides(props: LeadDecidesProps) {
  const { why, act, testId, onDecide, onClose } = props;
  const [lead, setLead] = useConfirmed();
  const [typed, setTyped] = useState('');
  const reason = typed.trim();
  // What the decision is about may have changed since the person was made sure of.
  const against = lead === null ? null : (props.objection?.(lead.person) ?? null);
  return (
    <Dialog title={props.title} onClose={onClose} tone={props.tone}>
      <div class="stack">
        {props.children}
        {lead === null && (
          <>
            {why !== null && <p class="soft">{say(peopleWords).clearHelp}</p>}
            <ConfirmPerson
              needs="lead"
              badgeSuffices={false}
              {...(props.objection && { objection: props.objection })}
              onConfirmed={(person, { checked }) => setLead({ person, checked, byPasskey: false })}
              onPasskey={
                props.mayPasskey
                  ? (person) => setLead({ person, checked: 'tablet', byPasskey: true })
                  : undefined
              }
            />
          </>
        )}
        {lead !== null && why !== null && (
          <Field label={why} testId={`${testId}-reason`} maxLength={200} value={typed} onInput={setTyped} />
        )}
        <PasskeyTold sure={lead} />
        {lead !== null && (
          <Button
            tone="act"
            large
            testId={`${testId}-yes`}
            disabledReason={against ?? (reason === '' ? why : null)}
            onPress={() => onDecide(lead, reason)}
          >
            {act}
          </Button>
        )}
        <Button large onPress={onClose}>
          {say(shellWords).cancel}
        </Button>
      </div>
    </Dialog>
  );
}
