// Who says so? Badge or name, then the PIN: asked of the server where it answers, else of this tablet, and told which.
// Used for signing in and for what takes a lead.

import { useLayoutEffect, useState } from 'preact/hooks';
import { personByBadge } from '../../../shared/floor/badge.ts';
import { passkeysOf } from '../../../shared/floor/passkeys-of.ts';
import { hasPin } from '../../../shared/floor/people.ts';
import type { Person } from '../../../shared/floor/state.ts';
import { isAtLeast, type Role } from '../../../shared/floor/vocabulary.ts';
import { useApp, useFloor } from '../app.ts';
import { deviceClock } from '../device/clock.ts';
import { pageHost, passkeysHere } from '../device/passkey.ts';
import type { MadeSure } from '../person/sign-in.ts';
import type { CheckedPerson, PersonFault } from '../sync/person.ts';
import { Button } from '../ui/Button.tsx';
import { Field } from '../ui/Field.tsx';
import { Icon } from '../ui/Icon.tsx';
import { peopleWords } from '../words/people.ts';
import { shellWords } from '../words/shell.ts';
import { say } from '../words/words.ts';
import { PinPad } from './PinPad.tsx';

/** How a person was made sure of here. */
export interface Confirmed extends MadeSure {
  /** Proves the person to the server; null where it was not asked. */
  readonly session: CheckedPerson['session'];
}

interface ConfirmPersonProps {
  /** Least role of the person asked for. */
  readonly needs: Role;
  readonly onConfirmed: (person: Person, confirmed: Confirmed) => void;
  /** True where a scanned badge is enough, as for an operator's sign-in. */
  readonly badgeSuffices: boolean;
  /** True where a name picked from the list is enough for whoever has no PIN; a signature wants a badge or a PIN. */
  readonly nameSuffices?: boolean;
  /** Why this person cannot be the one; null where nothing stands against it. */
  readonly objection?: (person: Person) => string | null;
  /** The person's passkey is to stand for the PIN; absent where none may. */
  readonly onPasskey?: ((person: Person) => void) | undefined;
}

export function ConfirmPerson(props: ConfirmPersonProps) {
  const { needs, onConfirmed, badgeSuffices, nameSuffices = true, objection, onPasskey } = props;
  const app = useApp();
  const floor = useFloor();
  const words = say(peopleWords);
  const shell = say(shellWords);
  const [chosen, setChosen] = useState<{ person: Person; badge: string | null } | null>(null);
  const [asking, setAsking] = useState(false);
  const [wrong, setWrong] = useState<string | null>(null);
  const people = [...floor.people.values()]
    .filter((person) => isAtLeast(person.role, needs))
    .sort((a, b) => a.name.localeCompare(b.name));

  const mayUsePasskey = ({ person }: Person) =>
    onPasskey !== undefined &&
    passkeysHere() === 'here' &&
    passkeysOf(floor.passkeys, person, pageHost()).length > 0;

  /** `badge`: what the one that was scanned says; null for a name picked from the list. */
  function choose(person: Person, badge: string | null): void {
    const byBadge = badge !== null;
    const against = objection?.(person) ?? null;
    setWrong(against);
    if (against !== null) return;
    if (badgeSuffices && (byBadge || (!hasPin(person) && nameSuffices)))
      onConfirmed(person, { how: byBadge ? 'badge' : 'name', checked: 'tablet', session: null });
    else if (!hasPin(person) && !mayUsePasskey(person))
      setWrong(badgeSuffices ? words.badgeNeeded(person.name) : words.noPin(person.name));
    else setChosen({ person, badge });
  }

  function takeBadge(text: string): void {
    const person = personByBadge(app.store.floor().people, text.trim());
    if (!person) setWrong(words.badgeUnknown);
    else if (!isAtLeast(person.role, needs)) setWrong(words.needsRole(shell.roles[needs]));
    else choose(person, text.trim());
  }

  useLayoutEffect(
    () =>
      app.scans.take((scan) => {
        for (const code of scan.codes) takeBadge(code.text);
        return true;
      }),
    [],
  );

  async function enter(pin: string): Promise<void> {
    if (!chosen || asking) return;
    if (!globalThis.crypto?.subtle) return setWrong(words.pinUnsafe);
    const { person, badge } = chosen;
    setWrong(null);
    setAsking(true);
    try {
      const { checkPerson } = await import('./who.ts');
      const claim = {
        badge,
        person: person.person,
        pin,
        stays: badgeSuffices,
      };
      const found = await checkPerson(app, claim);
      if (!found.ok) return setWrong(sayFault(found.error, person));
      const { checkedOffline, session, role } = found.value;
      if (!isAtLeast(role, needs)) return setWrong(words.needsRole(shell.roles[needs]));
      onConfirmed(person, {
        how: badge === null ? 'pin' : 'badge-and-pin',
        checked: checkedOffline ? 'tablet' : 'server',
        session,
      });
    } finally {
      setAsking(false);
    }
  }

  if (chosen) {
    return (
      <div class="stack">
        {onPasskey && mayUsePasskey(chosen.person) && (
          <Button large testId="use-passkey" onPress={() => onPasskey(chosen.person)}>
            <Icon name="check" size={20} /> {words.withPasskey}
          </Button>
        )}
        <h3>{words.pinTitle(chosen.person.name)}</h3>
        <PinPad
          label={words.pinTitle(chosen.person.name)}
          onEnter={(digits) => void enter(digits)}
          wrong={wrong}
        />
        {asking && <p role="status">{words.asking}</p>}
      </div>
    );
  }
  if (!badgeSuffices) return <BadgeForm wrong={wrong} onEnter={takeBadge} />;
  return (
    <div class="stack">
      {people.length === 0 && <p>{words.nobody}</p>}
      {wrong !== null && <Wrong text={wrong} />}
      <div class="evenly">
        {people.map((person) => (
          <Button key={person.person} onPress={() => choose(person, null)} testId={`person-${person.person}`}>
            {person.name}
            <span class="why">{shell.roles[person.role]}</span>
          </Button>
        ))}
      </div>
    </div>
  );
}

/** Why the person cannot be made sure of. */
function sayFault({ code, triesLeft, untilMs }: PersonFault, person: Person): string {
  const words = say(peopleWords);
  switch (code) {
    case 'pin-wrong':
      return triesLeft === null ? words.pinWrong : words.pinLeft(triesLeft);
    case 'locked':
      return words.pinLocked(Math.max(1, Math.ceil(((untilMs ?? 0) - deviceClock.nowMs()) / 60_000)));
    case 'pin-not-set':
      return words.noPin(person.name);
    case 'not-seen-here':
      return words.notSeenHere(person.name);
    case 'pin-not-here':
      return words.pinNotHere(person.name);
    case 'seen-too-long-ago':
      return words.seenTooLongAgo(person.name);
    default:
      return words.badgeUnknown;
  }
}

function Wrong({ text }: { readonly text: string }) {
  return (
    <p class="chip stop" role="alert">
      ✕ {text}
    </p>
  );
}

interface BadgeFormProps {
  readonly wrong: string | null;
  readonly onEnter: (badge: string) => void;
}

/** A badge by scan or by hand. */
function BadgeForm({ wrong, onEnter }: BadgeFormProps) {
  const words = say(peopleWords);
  const [badge, setBadge] = useState('');
  return (
    <div class="stack">
      <Field
        label={words.scanBadge}
        testId="badge"
        autocomplete="off"
        value={badge}
        onInput={setBadge}
        help={words.badgeHelp}
      />
      {wrong !== null && <Wrong text={wrong} />}
      <Button tone="act" testId="badge-enter" onPress={() => onEnter(badge)}>
        {words.enter}
      </Button>
    </div>
  );
}
