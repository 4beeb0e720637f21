// One person: name, badge, role, PIN. The first person of a plant is an engineer with a PIN, since nobody else could add the others.

import { useLayoutEffect, useState } from 'preact/hooks';
import { hasBadge, thoseWithBadge } from '../../../../shared/floor/badge.ts';
import type { DraftEntry, PayloadOf } from '../../../../shared/floor/kinds.ts';
import { addsPeople, hasAdder, isLastAdder, mayManagePeople } from '../../../../shared/floor/may.ts';
import { hasPin } from '../../../../shared/floor/people.ts';
import type { Person } from '../../../../shared/floor/state.ts';
import { type Role, roles } from '../../../../shared/floor/vocabulary.ts';
import { useApp, useFloor } from '../../app.ts';
import { newId } from '../../device/ids.ts';
import { makePin } from '../../device/pin.ts';
import { recordOwn } from '../../frame/signed.ts';
import { badgeDrafts } from '../../person/badges.ts';
import { keepPin } from '../../store/secrets.ts';
import type { Store } from '../../store/store.ts';
import { Button } from '../../ui/Button.tsx';
import { ChoiceField, Field, GroupField } from '../../ui/Field.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { plantWords } from '../../words/plant.ts';
import { shellWords } from '../../words/shell.ts';
import { say } from '../../words/words.ts';

interface PersonFormProps {
  /** Null for somebody new. */
  readonly person: Person | null;
  readonly onSaved: (person: Person) => void;
  /** Null where there is nothing to go back to. */
  readonly onCancel: (() => void) | null;
}

export function PersonForm({ person, onSaved, onCancel }: PersonFormProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(plantWords).people;
  const isFirst = !hasAdder(floor.people.values());
  const isLast = person !== null && isLastAdder(person, floor.people.values());
  const [name, setName] = useState(person?.name ?? '');
  const [badge, setBadge] = useState(person?.badge ?? '');
  const [picked, setPicked] = useState<Role>(person?.role ?? 'operator');
  const [pin, setPin] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  const role = isFirst ? 'engineer' : picked;

  // A badge scanned while this form is open is the badge in the form, as long as its writer is signed in.
  useLayoutEffect(
    () =>
      app.scans.take((scan) => {
        const code = scan.codes[0];
        if (!mayManagePeople(app.person.peek(), app.store.floor().people.values()).may) return false;
        if (code) setBadge(code.text.trim());
        return true;
      }),
    [],
  );

  function faultOf(): string | null {
    if (name.trim() === '') return words.nameMissing;
    if (badge.trim() === '' && !(person && hasBadge(person))) return words.badgeMissing;
    const other = thoseWithBadge(app.store.floor().people.values(), badge.trim()).find(
      (each) => each.person !== person?.person,
    );
    if (other) return words.badgeTaken(other.name);
    if (pin === '' && isFirst && !(person && hasPin(person))) return words.pinMissing;
    return pin !== '' && !/^\d{4,8}$/.test(pin) ? words.pinWrong : null;
  }

  async function save(): Promise<void> {
    const fault = faultOf();
    setWrong(fault);
    if (fault !== null) return;
    const payload: PayloadOf<'person.added'> = {
      person: person?.person ?? newId(),
      name: name.trim(),
      role,
    };
    if (person === null) payload.pinSet = null;
    if (pin !== '') payload.pinSet = await newPin(app.store.log, pin);
    const text = badge.trim();
    const drafts: readonly DraftEntry[] =
      text === ''
        ? [{ kind: 'person.added', payload }]
        : badgeDrafts(app.store.floor(), [{ payload, badge: text }]);
    recordOwn(app, drafts, {
      notice: { tone: 'go', text: words.saved(payload.name) },
      next: () => {
        const saved = app.store.floor().people.get(payload.person);
        if (saved) onSaved(saved);
      },
    });
  }

  return (
    <section class="card form" data-testid="person-form">
      {isFirst && (
        <div class="whole" data-testid="person-first">
          <h2>{words.firstTitle}</h2>
          <p>{words.firstHelp}</p>
        </div>
      )}
      <TextField label={words.name} testId="person-name" value={name} onInput={setName} />
      <TextField
        label={words.badge}
        help={person && hasBadge(person) ? words.badgeKept : words.badgeHelp}
        testId="person-badge"
        value={badge}
        onInput={setBadge}
      />
      <RoleField role={role} isFirst={isFirst} isLast={isLast} onPick={setPicked} />
      <Field
        label={words.pin}
        testId="person-pin"
        type="password"
        inputMode="numeric"
        autocomplete="new-password"
        value={pin}
        onInput={setPin}
        help={isFirst ? words.firstPin : words.pinHelp}
      />
      <div class="whole row">
        <Button
          tone="act"
          large
          onPress={() => void save().catch(() => undefined)} // shown by the fault screen
          testId="person-save"
        >
          {words.save}
        </Button>
        {onCancel && (
          <Button large onPress={onCancel}>
            {say(shellWords).cancel}
          </Button>
        )}
        {wrong !== null && (
          <span class="chip stop" role="alert" data-testid="person-wrong">
            ✕ {wrong}
          </span>
        )}
      </div>
    </section>
  );
}

/** A new PIN, known to this tablet before an entry names it; answers its name. */
async function newPin(log: Store['log'], pin: string): Promise<string> {
  const name = newId();
  await keepPin(log, { pin: name, check: await makePin(pin), isOwn: true });
  return name;
}

function TextField(props: {
  readonly label: string;
  readonly help?: string;
  readonly testId: string;
  readonly value: string;
  readonly onInput: (text: string) => void;
}) {
  return (
    <Field
      label={props.label}
      testId={props.testId}
      autocomplete="off"
      value={props.value}
      maxLength={80}
      onInput={props.onInput}
      help={props.help ?? null}
    />
  );
}

/** Every role to choose from; for the first person the one that it must be, for the last who may add people none below. */
function RoleField(props: {
  readonly role: Role;
  readonly isFirst: boolean;
  readonly isLast: boolean;
  readonly onPick: (role: Role) => void;
}) {
  const words = say(plantWords).people;
  const shell = say(shellWords);
  if (props.isFirst) {
    return (
      <GroupField label={words.role} isWhole>
        <p>
          <span class="chip" data-testid="person-role">
            <Icon name="check" size={18} /> {shell.roles[props.role]}
          </span>
        </p>
      </GroupField>
    );
  }
  return (
    <ChoiceField
      label={words.role}
      isWhole
      isTicked
      value={props.role}
      choices={roles.map((role) => ({
        value: role,
        text: shell.roles[role],
        testId: `role-${role}`,
        isOut: props.isLast && !addsPeople({ role }),
      }))}
      onChoose={props.onPick}
      help={props.isLast ? <span data-testid="person-last">{words.removeLast}</span> : null}
    />
  );
}
