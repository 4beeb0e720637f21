// Who says so? Badge or name, then the PIN. Used for signing in and for what takes a lead.

import { useEffect, useState } from 'preact/hooks';
import { personByBadge } from '../../../shared/setup/people.ts';
import type { Person } from '../../../shared/setup/state.ts';
import { isAtLeast, type Role } from '../../../shared/setup/vocabulary.ts';
import { useApp, useFloor } from '../app.ts';
import { isPin } from '../device/pin.ts';
import { afterWrong, lockedMinutes, noTries, type Tries, triesLeft } from '../device/tries.ts';
import { keep, readKept } from '../store/preferences.ts';
import { Button } from '../ui/Button.tsx';
import { peopleWords } from '../words/people.ts';
import { shellWords } from '../words/shell.ts';
import { say } from '../words/words.ts';
import { PinPad } from './PinPad.tsx';

interface ConfirmPersonProps {
  /** Least role of the person asked for. */
  readonly needs: Role;
  readonly onConfirmed: (person: Person, how: 'badge' | 'pin' | 'badge-and-pin') => void;
  /** True where a scanned badge is enough, as for an operator's sign-in. */
  readonly badgeSuffices: boolean;
}

export function ConfirmPerson({ needs, onConfirmed, badgeSuffices }: ConfirmPersonProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(peopleWords);
  const shell = say(shellWords);
  const [chosen, setChosen] = useState<{ person: Person; byBadge: boolean } | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const [badge, setBadge] = useState('');
  const people = [...floor.people.values()]
    .filter((person) => isAtLeast(person.role, needs))
    .sort((a, b) => a.name.localeCompare(b.name));

  function choose(person: Person, byBadge: boolean): void {
    setWrong(null);
    if (badgeSuffices && (byBadge || person.pin === null)) onConfirmed(person, byBadge ? 'badge' : 'pin');
    else if (person.pin === null) setWrong(words.noPin(person.name));
    else setChosen({ person, byBadge });
  }

  function takeBadge(text: string): void {
    const person = personByBadge(app.store.floor().people, text.trim());
    if (!person) setWrong(words.badgeUnknown);
    else if (!isAtLeast(person.role, needs)) setWrong(words.needsRole(shell.roles[needs]));
    else choose(person, true);
  }

  useEffect(
    () =>
      app.scans.take((scan) => {
        for (const code of scan.codes) takeBadge(code.text);
        return true;
      }),
    [],
  );

  async function enter(digits: string): Promise<void> {
    const person = chosen?.person;
    if (!person?.pin) return;
    const key = `tries-${person.person}`;
    const tries = (await readKept<Tries>(app.store.cache, key)) ?? noTries;
    const minutes = lockedMinutes(tries, app.clock.nowMs());
    if (minutes > 0) return setWrong(words.pinLocked(minutes));
    if (await isPin(digits, person.pin)) {
      await keep(app.store.cache, key, noTries);
      return onConfirmed(person, chosen?.byBadge ? 'badge-and-pin' : 'pin');
    }
    const next = afterWrong(tries, app.clock.nowMs());
    await keep(app.store.cache, key, next);
    const locked = lockedMinutes(next, app.clock.nowMs());
    setWrong(locked > 0 ? words.pinLocked(locked) : words.pinLeft(triesLeft(next)));
  }

  if (chosen) {
    return (
      <div class="stack">
        <h3>{words.pinTitle(chosen.person.name)}</h3>
        <PinPad onEnter={(digits) => void enter(digits)} wrong={wrong} />
      </div>
    );
  }
  if (!badgeSuffices) {
    return (
      <div class="stack">
        <label class="field">
          <span>{words.scanBadge}</span>
          <input
            data-typing
            data-testid="badge"
            autocomplete="off"
            value={badge}
            onInput={(event) => setBadge(event.currentTarget.value)}
          />
          <small>{words.badgeHelp}</small>
        </label>
        {wrong !== null && (
          <p class="wrong" role="alert">
            {wrong}
          </p>
        )}
        <Button tone="act" testId="badge-enter" onPress={() => takeBadge(badge)}>
          {words.enter}
        </Button>
      </div>
    );
  }
  return (
    <div class="stack">
      {people.length === 0 && <p>{words.nobody}</p>}
      <div class="choice">
        {people.map((person) => (
          <Button
            key={person.person}
            onPress={() => choose(person, false)}
            testId={`person-${person.person}`}
          >
            {person.name}
            <span class="why">{shell.roles[person.role]}</span>
          </Button>
        ))}
      </div>
    </div>
  );
}
