// Joining: a code typed, scanned, or brought by a link; the name by which a lead knows the tablet.

import { useLayoutEffect, useState } from 'preact/hooks';
import { useApp, useFloor } from '../../../app.ts';
import { goTo } from '../../../router.ts';
import type { Connection } from '../../../sync/connection.ts';
import { readEnrolCode } from '../../../sync/enrol.ts';
import { Button } from '../../../ui/Button.tsx';
import { Field } from '../../../ui/Field.tsx';
import { sayCause, serverWords } from '../../../words/server.ts';
import { say } from '../../../words/words.ts';

interface JoinProps {
  readonly connection: Connection;
  /** As a link brought it; empty where none did. */
  readonly code: string;
  /** True where the tablet was joined before. */
  readonly again: boolean;
}

export function Join({ connection, code: brought, again }: JoinProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(serverWords);
  const [code, setCode] = useState(readEnrolCode(brought) ?? brought);
  const [name, setName] = useState(floor.tablets.get(app.store.identity.tablet)?.name ?? '');
  const [joining, setJoining] = useState(false);
  const [wrong, setWrong] = useState<string | null>(null);

  useLayoutEffect(
    () =>
      app.scans.take((scan) => {
        const link = scan.codes.find(({ text }) => text.includes('#enrol='));
        const found = link && readEnrolCode(link.text);
        if (!found) return false; // a badge may sign in meanwhile
        setCode(found);
        return true;
      }),
    [],
  );

  async function join(): Promise<void> {
    const read = readEnrolCode(code);
    if (read === null) return setWrong(words.codeWrong);
    if (name.trim() === '') return setWrong(words.nameMissing);
    setWrong(null);
    setJoining(true);
    try {
      const joined = await connection.enrol(read, name.trim());
      if (!joined.ok) {
        const isTaken = joined.error.facts['screen'] === true;
        return setWrong(isTaken ? words.screenNotEmpty : sayCause(words, joined.error.code));
      }
      // What may write and what may not is known from the page's start.
      if (joined.value.screen !== app.isScreen) return location.reload();
      app.notice.value = { tone: 'go', text: words.joined(joined.value.plant) };
      goTo('plant', 'server');
    } finally {
      setJoining(false);
    }
  }

  return (
    <section class="card stack">
      <h2>{again ? words.joinAgain : words.alone}</h2>
      {!again && <p>{words.aloneHelp}</p>}
      <div class="form">
        <Field
          label={words.code}
          isCode
          testId="enrol-code"
          autocomplete="off"
          autocapitalize="characters"
          maxLength={20}
          value={code}
          onInput={setCode}
          help={words.codeHelp}
        />
        <Field label={words.name} testId="enrol-name" maxLength={60} value={name} onInput={setName} />
      </div>
      {wrong !== null && (
        <p class="chip stop" role="alert" data-testid="enrol-wrong">
          ✕ {wrong}
        </p>
      )}
      <div>
        <Button
          tone="act"
          large
          testId="enrol"
          disabledReason={joining ? words.joining : null}
          onPress={() => void join()}
        >
          {words.join}
        </Button>
      </div>
    </section>
  );
}
