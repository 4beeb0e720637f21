// What a lead does with other tablets: a code that lets one in, the list, shutting one out. The server checks badge and PIN
// and gives a session for it; without its answer nobody is let in or shut out.

import { useEffect, useState } from 'preact/hooks';
import type { CodeMade, Tablets } from '../../../../../shared/wire/messages.ts';
import { useApp } from '../../../app.ts';
import { deviceClock } from '../../../device/clock.ts';
import { ConfirmPerson } from '../../../frame/ConfirmPerson.tsx';
import type { Connection } from '../../../sync/connection.ts';
import type { CallFailure } from '../../../sync/http.ts';
import { AskFeet } from '../../../ui/Ask.tsx';
import { Button } from '../../../ui/Button.tsx';
import { Dialog } from '../../../ui/Dialog.tsx';
import { sayCause, serverWords } from '../../../words/server.ts';
import { formatSpan, say } from '../../../words/words.ts';
import { listTablets, makeCode, revokeTablet } from './calls.ts';
import { Qr } from './Qr.tsx';

type Tablet = Tablets['tablets'][number];

export function Lead({ connection }: { readonly connection: Connection }) {
  const words = say(serverWords);
  const [token, setToken] = useState<string | null>(null);
  const [asking, setAsking] = useState(false);
  const [wrong, setWrong] = useState<string | null>(null);
  return (
    <section class="card stack">
      <h2>{words.leadTitle}</h2>
      {wrong !== null && (
        <p class="chip stop" role="alert" data-testid="lead-wrong">
          ✕ {wrong}
        </p>
      )}
      {token !== null ? (
        <Desk
          connection={connection}
          token={token}
          onFailure={({ code }) => {
            setWrong(sayCause(words, code));
            if (code === 'person-unproven') setToken(null);
          }}
          onFine={() => setWrong(null)}
        />
      ) : asking ? (
        <>
          <p class="soft">{words.leadHelp}</p>
          <ConfirmPerson
            needs="lead"
            badgeSuffices={false}
            onConfirmed={(_, { session }) => {
              setAsking(false);
              setWrong(session === null ? words.leadOffline : null);
              setToken(session?.token ?? null);
            }}
          />
        </>
      ) : (
        <div>
          <Button testId="lead-open" onPress={() => setAsking(true)}>
            {words.leadOpen}
          </Button>
        </div>
      )}
    </section>
  );
}

interface DeskProps {
  readonly connection: Connection;
  readonly token: string;
  readonly onFailure: (failure: CallFailure) => void;
  readonly onFine: () => void;
}

function Desk({ connection, token, onFailure, onFine }: DeskProps) {
  const app = useApp();
  const words = say(serverWords);
  const [code, setCode] = useState<NewCode | null>(null);
  const [tablets, setTablets] = useState<readonly Tablet[]>([]);
  const [going, setGoing] = useState<Tablet | null>(null);

  async function look(): Promise<void> {
    const listed = await listTablets(connection, token);
    if (!listed.ok) return onFailure(listed.error);
    onFine();
    setTablets(listed.value);
  }
  useEffect(() => void look(), []);

  async function newCode(screen: boolean): Promise<void> {
    const made = await makeCode(connection, token, { screen });
    if (!made.ok) return onFailure(made.error);
    onFine();
    setCode({ ...made.value, screen });
  }

  async function shutOut(tablet: Tablet): Promise<void> {
    setGoing(null);
    const done = await revokeTablet(connection, token, tablet.tablet);
    if (!done.ok) return onFailure(done.error);
    app.notice.value = { tone: 'go', text: words.revoked(tablet.name) };
    await look();
  }

  return (
    <div class="stack">
      <div class="row">
        <Button tone="act" large testId="new-code" onPress={() => void newCode(false)}>
          {words.newCode}
        </Button>
        <Button large testId="new-screen-code" onPress={() => void newCode(true)}>
          {words.newScreenCode}
        </Button>
        <Button onPress={() => void look()}>{words.list}</Button>
      </div>
      {code && <CodeCard code={code} />}
      <h3>{words.tablets}</h3>
      <div data-testid="tablets">
        {tablets.map((tablet) => (
          <TabletRow key={tablet.tablet} tablet={tablet} onRevoke={() => setGoing(tablet)} />
        ))}
      </div>
      {going && (
        <Dialog title={words.revokeTitle(going.name)} onClose={() => setGoing(null)} tone="care">
          <p>{words.revokeHelp}</p>
          <AskFeet
            tone="stop"
            testId="revoke-yes"
            onYes={() => void shutOut(going)}
            onNo={() => setGoing(null)}
          >
            {words.revoke}
          </AskFeet>
        </Dialog>
      )}
    </div>
  );
}

/** A code, and whether it is for a wall screen. */
type NewCode = CodeMade & { readonly screen: boolean };

function CodeCard({ code }: { readonly code: NewCode }) {
  const app = useApp();
  const words = say(serverWords);
  app.nowMs.value; // its time runs out
  const leftSeconds = (code.untilMs - deviceClock.nowMs() - (app.sync.value?.clockOffMs ?? 0)) / 1000;
  if (leftSeconds <= 0) return <p class="chip care">! {words.codeOver}</p>;
  return (
    <div class="row code-card">
      <Qr text={`${location.origin}${code.path}`} />
      <div class="grow">
        <p class="made code" translate={false} data-testid="made-code">
          {code.code}
        </p>
        <p>{code.screen ? words.codeForScreen : words.codeFor}</p>
        <p class="soft">{(code.screen ? words.codeUntilScreen : words.codeUntil)(formatSpan(leftSeconds))}</p>
      </div>
    </div>
  );
}

function TabletRow({ tablet, onRevoke }: { readonly tablet: Tablet; readonly onRevoke: () => void }) {
  const app = useApp();
  const words = say(serverWords);
  const { seenMs, clockOffMs, revokedMs, name } = tablet;
  const nowMs = deviceClock.nowMs() + (app.sync.value?.clockOffMs ?? 0);
  const isOwn = tablet.tablet === app.store.identity.tablet;
  const isOff = clockOffMs !== null && Math.abs(clockOffMs) >= 30_000;
  return (
    <div class="listed" data-testid="tablet">
      <span class="grow">
        <b>{name}</b> {tablet.screen === true && <span class="chip">{words.isScreen}</span>}{' '}
        {isOwn && <span class="chip">{words.thisOne}</span>}{' '}
        {revokedMs !== null && <span class="chip stop">✕ {words.isOut}</span>}{' '}
        {isOff && <span class="chip care">! {words.clockOff(formatSpan(Math.abs(clockOffMs) / 1000))}</span>}
        <br />
        <span class="soft">
          {seenMs === null
            ? words.neverSeen
            : words.seen(formatSpan(Math.max(0, Math.round((nowMs - seenMs) / 1000))))}
        </span>
      </span>
      {revokedMs === null && (
        <Button tone="stop" testId="revoke" onPress={onRevoke}>
          {words.revoke}
        </Button>
      )}
    </div>
  );
}
