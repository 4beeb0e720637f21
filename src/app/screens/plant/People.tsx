// Who works here. The first engineer is added by whoever sets the tablet up; from then on a lead or engineer adds people.

import { useLayoutEffect, useState } from 'preact/hooks';
import { mayDo } from '../../../../shared/setup/may.ts';
import type { Person } from '../../../../shared/setup/state.ts';
import { type Role, roles } from '../../../../shared/setup/vocabulary.ts';
import { useApp, useFloor } from '../../app.ts';
import { newId } from '../../device/ids.ts';
import { makePin } from '../../device/pin.ts';
import { AskFeet } from '../../ui/Ask.tsx';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { plantWords } from '../../words/plant.ts';
import { shellWords } from '../../words/shell.ts';
import { say } from '../../words/words.ts';

export function People() {
  const floor = useFloor();
  const words = say(plantWords).people;
  const shell = say(shellWords);
  const [editing, setEditing] = useState<Person | 'new' | null>(null);
  const [going, setGoing] = useState<Person | null>(null);
  const people = [...floor.people.values()].sort((a, b) => a.name.localeCompare(b.name));
  return (
    <div class="stack">
      {editing === null && (
        <div>
          <Button tone="act" onPress={() => setEditing('new')} testId="person-add">
            {words.add}
          </Button>
        </div>
      )}
      {editing !== null && (
        <PersonForm
          key={editing === 'new' ? 'new' : editing.person}
          person={editing === 'new' ? null : editing}
          onDone={() => setEditing(null)}
        />
      )}
      <div>
        {people.map((person) => (
          <div class="listed" key={person.person}>
            <span class="grow">
              <b>{person.name}</b> · {shell.roles[person.role]}
              <br />
              <span class="soft code">{person.badge}</span>{' '}
              <span class="soft">· {person.pin ? words.hasPin : words.noPin}</span>
            </span>
            <span class="row">
              <Button onPress={() => setEditing(person)}>{words.edit}</Button>
              <Button tone="stop" onPress={() => setGoing(person)} testId={`person-remove-${person.badge}`}>
                {words.remove}
              </Button>
            </span>
          </div>
        ))}
      </div>
      {going && <RemoveDialog person={going} onClose={() => setGoing(null)} />}
    </div>
  );
}

/** True where nobody else could add people afterwards. */
function isLastToAdd(person: Person, people: Iterable<Person>): boolean {
  return (
    mayDo('manage-people', person, true).may &&
    ![...people].some((other) => other.person !== person.person && mayDo('manage-people', other, true).may)
  );
}

/** Asks before a badge stops working: nothing here is undone by one tap. */
function RemoveDialog({ person, onClose }: { readonly person: Person; readonly onClose: () => void }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(plantWords).people;
  const remove = async () => {
    await app.write([{ kind: 'person.removed', payload: { person: person.person } }]);
    app.notice.value = { tone: 'plain', text: words.removed(person.name) };
    onClose();
  };
  return (
    <Dialog title={words.removeTitle(person.name)} onClose={onClose} tone="care">
      <p>{words.removeHelp(person.badge)}</p>
      {app.person.value?.person === person.person && <p>{words.removeSelf}</p>}
      <AskFeet
        tone="stop"
        testId="person-remove-yes"
        disabledReason={isLastToAdd(person, floor.people.values()) ? words.removeLast : null}
        onYes={() => void remove().catch(() => undefined)} // shown by the fault screen
        onNo={onClose}
      >
        {words.remove}
      </AskFeet>
    </Dialog>
  );
}

function PersonForm({ person, onDone }: { readonly person: Person | null; readonly onDone: () => void }) {
  const app = useApp();
  const words = say(plantWords).people;
  const shell = say(shellWords);
  const [name, setName] = useState(person?.name ?? '');
  const [badge, setBadge] = useState(person?.badge ?? '');
  const [role, setRole] = useState<Role>(person?.role ?? 'operator');
  const [pin, setPin] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);

  // A badge scanned while this form is open is the badge in the form.
  useLayoutEffect(
    () =>
      app.scans.take((scan) => {
        const code = scan.codes[0];
        if (code) setBadge(code.text.trim());
        return true;
      }),
    [],
  );

  async function save(): Promise<void> {
    if (name.trim() === '') return setWrong(words.nameMissing);
    if (badge.trim() === '') return setWrong(words.badgeMissing);
    const other = [...app.store.floor().people.values()].find(
      (each) => each.badge === badge.trim() && each.person !== person?.person,
    );
    if (other) return setWrong(words.badgeTaken(other.name));
    if (pin !== '' && !/^\d{4,8}$/.test(pin)) return setWrong(words.pinWrong);
    const verifier = pin === '' ? (person?.pin ?? null) : await makePin(pin);
    await app.write([
      {
        kind: 'person.added',
        payload: {
          person: person?.person ?? newId(),
          name: name.trim(),
          role,
          badge: badge.trim(),
          pin: verifier,
        },
      },
    ]);
    app.notice.value = { tone: 'go', text: words.saved(name.trim()) };
    onDone();
  }

  return (
    <section class="card form">
      <label class="field">
        <span>{words.name}</span>
        <input
          data-typing
          data-testid="person-name"
          value={name}
          maxLength={80}
          onInput={(event) => setName(event.currentTarget.value)}
        />
      </label>
      <label class="field">
        <span>{words.badge}</span>
        <input
          data-typing
          data-testid="person-badge"
          value={badge}
          maxLength={80}
          onInput={(event) => setBadge(event.currentTarget.value)}
        />
        <small>{words.badgeHelp}</small>
      </label>
      <div class="field whole">
        <span>{words.role}</span>
        <div class="choice">
          {roles.map((each) => (
            <button type="button" key={each} aria-pressed={role === each} onClick={() => setRole(each)}>
              {shell.roles[each]}
            </button>
          ))}
        </div>
      </div>
      <label class="field">
        <span>{words.pin}</span>
        <input
          data-typing
          data-testid="person-pin"
          type="password"
          inputMode="numeric"
          autocomplete="new-password"
          value={pin}
          onInput={(event) => setPin(event.currentTarget.value)}
        />
        <small>{words.pinHelp}</small>
      </label>
      <div class="whole row">
        <Button tone="act" large onPress={() => void save()} testId="person-save">
          {words.save}
        </Button>
        <Button large onPress={onDone}>
          {shell.cancel}
        </Button>
        {wrong !== null && (
          <span class="chip stop" role="alert">
            {wrong}
          </span>
        )}
      </div>
    </section>
  );
}
