// Messages while the app is closed: what they promise and what they need, offered where all of that is there and said where it is not.

import { useEffect, useState } from 'preact/hooks';
import {
  type PushInfo,
  pushInfoSchema,
  pushSubscribedSchema,
} from '../../../../shared/wire/messages-push.ts';
import { useApp } from '../../app.ts';
import { askForPush, endPush, isPushDenied, keepPushSentences, takesPush } from '../../device/push.ts';
import { ConfirmPerson } from '../../frame/ConfirmPerson.tsx';
import { wishedLanguage } from '../../spoken.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { GroupField } from '../../ui/Field.tsx';
import { pushWords } from '../../words/push.ts';
import { say } from '../../words/words.ts';

/** How it stands: `null` while the server is asked. */
type Standing = PushInfo | 'no-server' | null;

/** Keeps the sentences for the service worker as the page has them now. */
function keepSentences(): void {
  const { first, warning, blocked, stood } = say(pushWords);
  const [line, slot] = ['{line}', '{slot}'];
  const sentences = {
    first,
    warning: warning(line, slot),
    blocked: blocked(line, slot),
    stood: stood(line),
  };
  void keepPushSentences(sentences).catch(() => undefined); // the message then names what it is about
}

export function PushNotes() {
  const app = useApp();
  const words = say(pushWords);
  const [standing, setStanding] = useState<Standing>(null);
  const [asking, setAsking] = useState(false);
  const [wrong, setWrong] = useState<string | null>(null);
  const connection = app.connection.value;
  const phase = app.sync.value?.phase ?? null;
  const language = wishedLanguage(app);

  async function look(): Promise<void> {
    const caller = await connection?.caller();
    const info = await caller?.call('/api/push', pushInfoSchema);
    setStanding(info?.ok ? info.value : 'no-server');
  }
  useEffect(() => {
    if (takesPush()) void look();
  }, [connection, phase]);
  useEffect(() => {
    if (takesPush()) keepSentences();
  }, [language]);

  async function turnOn(key: string, person: string): Promise<void> {
    const place = await askForPush(key);
    const caller = await connection?.caller();
    if (!place || !caller) return setWrong(isPushDenied() ? words.denied : words.wrong);
    const { timeZone } = Intl.DateTimeFormat().resolvedOptions();
    const json = { ...place, zone: timeZone, quiet: app.preferences.peek().quiet };
    const kept = await caller.call('/api/push/subscribe', pushSubscribedSchema, { json, person });
    if (!kept.ok || !kept.value.kept) await endPush();
    setWrong(kept.ok && kept.value.kept ? null : words.wrong);
    await look();
  }

  async function turnOff(): Promise<void> {
    const caller = await connection?.caller();
    await endPush();
    await caller?.open('/api/push/forget', { method: 'POST', json: {} });
    await look();
  }

  const why = whyNot(standing);
  const info = standing === 'no-server' ? null : standing;
  const key = info?.key ?? null;
  return (
    <GroupField label={words.title}>
      <small>
        {words.promise} {words.way}
      </small>
      {why !== null ? (
        <p data-testid="push-not">{words[why]}</p>
      ) : (
        info !== null &&
        key !== null && <Turn on={info.on} onOn={() => setAsking(true)} onOff={() => void turnOff()} />
      )}
      {wrong !== null && (
        <p class="chip stop" role="alert" data-testid="push-wrong">
          ✕ {wrong}
        </p>
      )}
      {asking && key !== null && (
        <AskLead
          onClose={() => setAsking(false)}
          onSession={(person) => void turnOn(key, person)}
          onOffline={() => setWrong(words.noServer)}
        />
      )}
    </GroupField>
  );
}

/** What is missing, where something is. */
function whyNot(standing: Standing): 'noBrowser' | 'noServer' | 'off' | 'unreached' | 'denied' | null {
  if (!takesPush()) return 'noBrowser';
  if (standing === null) return null;
  if (standing === 'no-server') return 'noServer';
  if (standing.key === null) return 'off';
  if (standing.reaches === false) return 'unreached';
  return isPushDenied() ? 'denied' : null;
}

/** Whether messages come here, and the button that turns them on or off. */
function Turn(props: { readonly on: boolean; readonly onOn: () => void; readonly onOff: () => void }) {
  const words = say(pushWords);
  const { on, onOn, onOff } = props;
  return (
    <>
      <p>
        <span class={`chip ${on ? 'go' : ''}`} data-testid="push-standing" data-on={on}>
          {on ? `✓ ${words.isOn}` : words.isOff}
        </span>
      </p>
      <Button testId={on ? 'push-off' : 'push-on'} onPress={on ? onOff : onOn}>
        {on ? words.turnOff : words.turnOn}
      </Button>
    </>
  );
}

function AskLead(props: {
  readonly onClose: () => void;
  /** `person`: what proves the lead to the server. */
  readonly onSession: (person: string) => void;
  readonly onOffline: () => void;
}) {
  const { onClose, onSession, onOffline } = props;
  return (
    <Dialog title={say(pushWords).turnOn} onClose={onClose}>
      <ConfirmPerson
        needs="lead"
        badgeSuffices={false}
        onConfirmed={(_, { session }) => {
          onClose();
          if (session) onSession(session.token);
          else onOffline();
        }}
      />
    </Dialog>
  );
}
