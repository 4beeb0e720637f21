// Who works here. The first person is an engineer, added by whoever sets the tablet up; from then on a lead or engineer adds people.
// After each person the page says what comes next.

import { useState } from 'preact/hooks';
import { hasBadge } from '../../../../shared/floor/badge.ts';
import { hasAdder, isLastAdder } from '../../../../shared/floor/may.ts';
import { passkeysOf } from '../../../../shared/floor/passkeys-of.ts';
import { hasPin } from '../../../../shared/floor/people.ts';
import type { Person } from '../../../../shared/floor/state.ts';
import { useApp, useFloor } from '../../app.ts';
import { recordOwn } from '../../frame/signed.ts';
import { address } from '../../router.ts';
import { AskFeet } from '../../ui/Ask.tsx';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { passkeysWords } from '../../words/passkeys.ts';
import { plantWords } from '../../words/plant.ts';
import { shellWords } from '../../words/shell.ts';
import { say } from '../../words/words.ts';
import { Passkeys } from './Passkeys.tsx';
import { PersonForm } from './PersonForm.tsx';

/** Names a row to whoever looks for it: by the badge of before there were marks, else by the name. */
const tagOf = ({ badge, name }: Person) => (badge === '' ? name : badge);

interface PeopleProps {
  /** The first engineer stands on the list: nobody is signed in yet. */
  readonly onFirst: () => void;
}

export function People({ onFirst }: PeopleProps) {
  const floor = useFloor();
  const words = say(plantWords).people;
  const keyWords = say(passkeysWords);
  const shell = say(shellWords);
  const [editing, setEditing] = useState<Person | 'new' | null>(null);
  const [going, setGoing] = useState<Person | null>(null);
  const [keysOf, setKeysOf] = useState<Person | null>(null);
  const [saved, setSaved] = useState<Person | null>(null);
  const people = [...floor.people.values()].sort((a, b) => a.name.localeCompare(b.name));
  const isFirst = !hasAdder(people);
  const passkeys = ({ person }: Person) => keyWords.open(passkeysOf(floor.passkeys, person).length);
  const edit = (person: Person | 'new') => {
    setSaved(null);
    setEditing(person);
  };
  return (
    <div class="stack">
      {editing === null && !isFirst && (
        <WhatNext saved={saved} isAlone={people.length === 1} onAdd={() => edit('new')} />
      )}
      {(editing !== null || isFirst) && (
        <PersonForm
          key={editing === null || editing === 'new' ? 'new' : editing.person}
          person={editing === 'new' ? null : editing}
          onSaved={(person) => {
            setEditing(null);
            setSaved(person);
            if (isFirst) onFirst();
          }}
          onCancel={editing === null ? null : () => setEditing(null)}
        />
      )}
      <div>
        {people.map((person) => (
          <div class="listed" key={person.person} data-testid={`listed-${tagOf(person)}`}>
            <span class="grow">
              <b>{person.name}</b> · {shell.roles[person.role]}
              <br />
              <span class="soft">{hasBadge(person) ? words.hasBadge : words.noBadge}</span>{' '}
              <span class="soft">· {hasPin(person) ? words.hasPin : words.noPin}</span>
              {person.stays !== undefined && (
                <>
                  <br />
                  <span class="chip care" data-testid={`stays-${tagOf(person)}`}>
                    ! {words.stays[person.stays]}
                  </span>
                </>
              )}
            </span>
            <span class="row">
              {person.role !== 'operator' && (
                <Button
                  label={keyWords.openOf(passkeys(person), person.name)}
                  onPress={() => setKeysOf(person)}
                  testId={`person-passkeys-${tagOf(person)}`}
                >
                  {passkeys(person)}
                </Button>
              )}
              <Button onPress={() => edit(person)} label={words.editOf(person.name)}>
                {words.edit}
              </Button>
              <Button
                tone="stop"
                label={words.removeOf(person.name)}
                onPress={() => setGoing(person)}
                testId={`person-remove-${tagOf(person)}`}
              >
                {words.remove}
              </Button>
            </span>
          </div>
        ))}
      </div>
      {keysOf && <Passkeys person={keysOf} onClose={() => setKeysOf(null)} />}
      {going && <RemoveDialog person={going} onClose={() => setGoing(null)} />}
    </div>
  );
}

/** The next person, or the next thing: nobody is left on a page that leads nowhere. */
function WhatNext(props: {
  readonly saved: Person | null;
  readonly isAlone: boolean;
  readonly onAdd: () => void;
}) {
  const floor = useFloor();
  const words = say(plantWords).people;
  const leadsOn = props.saved !== null || props.isAlone;
  return (
    <section class={leadsOn ? 'card stack' : 'stack'} data-testid="people-next">
      {leadsOn && (
        <div>
          <h2>{props.saved ? words.savedNext(props.saved.name) : words.aloneNext}</h2>
          <p class="soft">{words.nextHelp}</p>
        </div>
      )}
      <div class="row">
        <Button tone="act" large={leadsOn} onPress={props.onAdd} testId="person-add">
          {leadsOn ? words.addNext : words.add}
        </Button>
        {leadsOn && floor.setups.size === 0 && (
          <a class="button large" href={address('plant', 'sheet')} data-testid="next-sheet">
            {words.nextSheet}
          </a>
        )}
        {leadsOn && (
          <a class="button large" href={address('line')} data-testid="next-line">
            {words.nextLine}
          </a>
        )}
      </div>
    </section>
  );
}

/** Asks before a badge stops working: nothing here is undone by one tap. */
function RemoveDialog({ person, onClose }: { readonly person: Person; readonly onClose: () => void }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(plantWords).people;
  const remove = () =>
    recordOwn(app, [{ kind: 'person.removed', payload: { person: person.person } }], {
      notice: { tone: 'plain', text: words.removed(person.name) },
      next: onClose,
    });
  return (
    <Dialog title={words.removeTitle(person.name)} onClose={onClose} tone="care">
      <p>{words.removeHelp(person.name)}</p>
      {app.person.value?.person === person.person && <p>{words.removeSelf}</p>}
      <AskFeet
        tone="stop"
        testId="person-remove-yes"
        disabledReason={isLastAdder(person, floor.people.values()) ? words.removeLast : null}
        onYes={remove}
        onNo={onClose}
      >
        {words.remove}
      </AskFeet>
    </Dialog>
  );
}
