// The passkeys of a lead or an engineer: made and removed by that person or by an engineer, made sure of by badge and PIN.

import { useState } from 'preact/hooks';
import { type HeldPasskey, passkeysOf } from '../../../../shared/floor/passkey.ts';
import type { Person } from '../../../../shared/floor/state.ts';
import { useApp, useFloor } from '../../app.ts';
import { makePasskey, passkeysHere } from '../../device/passkey.ts';
import { ConfirmPerson } from '../../frame/ConfirmPerson.tsx';
import { type Sure, useConfirmed } from '../../frame/confirmed.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Field } from '../../ui/Field.tsx';
import { passkeysWords } from '../../words/passkeys.ts';
import { shellWords } from '../../words/shell.ts';
import { say } from '../../words/words.ts';

interface PasskeysProps {
  readonly person: Person;
  readonly onClose: () => void;
}

/** What is about to be done, once it is clear who does it. */
type Doing = 'add' | HeldPasskey;

export function Passkeys({ person, onClose }: PasskeysProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(passkeysWords);
  const shell = say(shellWords);
  const [doing, setDoing] = useState<Doing | null>(null);
  const [sure, setSure] = useConfirmed();
  const { role } = person;
  const held = passkeysOf(floor.passkeys, person.person);
  const here = passkeysHere();
  if (role === 'operator') return null;

  function remove({ credential, name }: HeldPasskey, { person: by, checked }: Sure): void {
    const payload = { credential, person: person.person, role: roleOf(role), by: by.person, checked };
    app.record([{ kind: 'passkey.removed', payload }], {
      notice: { tone: 'plain', text: words.removed(name) },
      next: onClose,
    });
  }

  return (
    <Dialog title={words.title(person.name)} onClose={onClose} wide>
      <div class="stack" data-testid="passkeys">
        {doing === null && (
          <>
            <p>{words.help}</p>
            {here !== 'here' && <p class="chip care">? {words.where[here]}</p>}
            <List held={held} onRemove={setDoing} />
            {here === 'here' && (
              <Button
                tone="act"
                large
                testId="passkey-add"
                disabledReason={app.practice ? shell.notInPractice : null}
                onPress={() => setDoing('add')}
              >
                {words.add}
              </Button>
            )}
          </>
        )}
        {doing !== null && sure === null && (
          <>
            <p class="soft">{words.who(person.name)}</p>
            <ConfirmPerson
              needs="lead"
              badgeSuffices={false}
              objection={(who) =>
                who.person === person.person || who.role === 'engineer' ? null : words.notThem(person.name)
              }
              onConfirmed={(who, { checked }) => {
                const next = { person: who, checked, byPasskey: false };
                setSure(next);
                if (doing !== 'add') remove(doing, next);
              }}
            />
          </>
        )}
        {doing === 'add' && sure !== null && (
          <Make person={person} sure={sure} known={held} onMade={onClose} />
        )}
      </div>
      <div class="acts">
        <Button large onPress={onClose}>
          {doing === null ? shell.close : shell.cancel}
        </Button>
      </div>
    </Dialog>
  );
}

function roleOf(role: Person['role']): 'lead' | 'engineer' {
  return role === 'engineer' ? 'engineer' : 'lead';
}

function List(props: {
  readonly held: readonly HeldPasskey[];
  readonly onRemove: (passkey: HeldPasskey) => void;
}) {
  const floor = useFloor();
  const words = say(passkeysWords);
  if (props.held.length === 0) return <p class="soft">{words.none}</p>;
  return (
    <div>
      {props.held.map((each) => (
        <div class="listed" key={each.credential} data-testid="passkey">
          <span class="grow">
            <b>{each.name}</b>
            <br />
            <span class="soft">{words.addedBy(floor.people.get(each.by)?.name ?? each.by, each.host)}</span>
            {[!each.isProven && words.unproven, each.fell !== null && words.fell]
              .filter((told) => told !== false)
              .map((told) => (
                <p class="chip care" key={told}>
                  ! {told}
                </p>
              ))}
          </span>
          <Button
            tone="stop"
            label={words.removeOf(each.name)}
            onPress={() => props.onRemove(each)}
            testId="passkey-remove"
          >
            {words.remove}
          </Button>
        </div>
      ))}
    </div>
  );
}

/** Names it and has the browser make it: nothing is written where it does not. */
function Make(props: {
  readonly person: Person;
  readonly sure: Sure;
  readonly known: readonly HeldPasskey[];
  readonly onMade: () => void;
}) {
  const app = useApp();
  const words = say(passkeysWords);
  const [typed, setTyped] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  const { person, sure, known, onMade } = props;
  const name = typed.trim();

  async function make(): Promise<void> {
    setWrong(null);
    const made = await makePasskey(
      person,
      known.map(({ credential }) => credential),
    );
    if (!made) return setWrong(words.notMade);
    const by = { by: sure.person.person, checked: sure.checked };
    const payload = { person: person.person, role: roleOf(person.role), name, ...made, ...by };
    app.record([{ kind: 'passkey.added', payload }], {
      notice: { tone: 'go', text: words.made(name) },
      next: onMade,
    });
  }

  return (
    <>
      <Field
        label={words.name}
        help={words.nameHelp}
        testId="passkey-name"
        autocomplete="off"
        maxLength={80}
        value={typed}
        onInput={setTyped}
      />
      {wrong !== null && (
        <p class="chip stop" role="alert">
          ✕ {wrong}
        </p>
      )}
      <Button
        tone="act"
        large
        testId="passkey-make"
        disabledReason={name === '' ? words.nameMissing : null}
        onPress={() => void make()}
      >
        {words.make}
      </Button>
    </>
  );
}
