// This tablet's own business: name, language, theme, sound, storage, offline copy.

import { useEffect, useState } from 'preact/hooks';
import { useApp, useFloor } from '../../app.ts';
import type { Alarm } from '../../device/alarm.ts';
import { engineLacks } from '../../device/lacks.ts';
import type { Offline } from '../../device/offline.ts';
import type { QuietHours } from '../../device/quiet.ts';
import { ownSpeaker } from '../../device/speech.ts';
import { askToKeep, readStorage, roomLeft, type StorageHealth } from '../../device/storage.ts';
import type { Awake } from '../../device/wake.ts';
import { serveLines, standAt } from '../../line-in-hand.ts';
import { machineAt } from '../../panels-at.ts';
import { wishedLanguage } from '../../spoken.ts';
import { Button } from '../../ui/Button.tsx';
import { ChoiceField, Field, GroupField } from '../../ui/Field.tsx';
import { LanguageField } from '../../ui/LanguageField.tsx';
import { inLineWords } from '../../words/in-line.ts';
import { plantWords } from '../../words/plant.ts';
import { shellWords } from '../../words/shell.ts';
import { formatCount, languageOf, say } from '../../words/words.ts';
import type { Work } from '../../work.ts';
import { Hands } from './Hands.tsx';
import { PushNotes } from './PushNotes.tsx';

const MEGABYTE = 1_048_576;

export function ThisTablet({ offline, alarm, awake }: Pick<Work, 'offline' | 'alarm' | 'awake'>) {
  return (
    <div class="form card">
      <Name />
      <Line />
      <OtherLine />
      <PanelsAt />
      <Looks />
      <Hands />
      <Sound alarm={alarm} />
      <Quiet />
      <Spoken />
      <Screen awake={awake.value} />
      <Lacks />
      <PushNotes />
      <Storage />
      <OfflineCopy offline={offline} />
    </div>
  );
}

function Name() {
  const app = useApp();
  const floor = useFloor();
  const words = say(plantWords).tablet;
  const [name, setName] = useState(floor.tablets.get(app.store.identity.tablet)?.name ?? '');
  return (
    <Field label={words.name} value={name} maxLength={60} onInput={setName}>
      <Button
        onPress={() => {
          app.record([{ kind: 'tablet.named', payload: { name: name.trim() || 'tablet' } }], {
            notice: { tone: 'go', text: words.saved },
          });
        }}
      >
        {words.save}
      </Button>
    </Field>
  );
}

/** Which line it stands at, where there are several. */
function Line() {
  const app = useApp();
  const floor = useFloor();
  if (floor.lines.size <= 1) return null;
  return (
    <ChoiceField
      label={say(plantWords).tablet.line}
      value={app.line.value}
      choices={[...floor.lines.values()].map(({ line, name }) => ({ value: line, text: name }))}
      onChoose={(line) => standAt(app, line)}
    />
  );
}

/** The second line that its people answer for, where there is one. */
function OtherLine() {
  const app = useApp();
  const floor = useFloor();
  const words = say(plantWords).tablet;
  const line = app.line.value;
  if (floor.lines.size <= 1 || line === null) return null;
  const others = [...floor.lines.values()].filter((each) => each.line !== line);
  const beside = app.beside.value;
  // Somebody looks at a third line: both that it serves are told.
  const both = beside.length > 1 ? beside.join('\n') : null;
  const names = beside.map((each) => floor.lines.get(each)?.name ?? each).join(' · ');
  return (
    <ChoiceField<string | null>
      label={words.alsoServes}
      value={both ?? beside[0] ?? null}
      choices={[
        { value: null, text: words.alsoNone, testId: 'also-none' },
        ...(both === null ? [] : [{ value: both, text: names, testId: 'also-both' }]),
        ...others.map((each) => ({ value: each.line, text: each.name, testId: `also-${each.line}` })),
      ]}
      onChoose={(other) => {
        if (other === null || other !== both) serveLines(app, line, other);
      }}
      help={words.alsoHelp}
    />
  );
}

/** Whether its scans of panels count, or tell how many lie between a machine and the place of counting. */
function PanelsAt() {
  const app = useApp();
  const floor = useFloor();
  const words = say(inLineWords);
  const { preferences } = app;
  const line = app.line.value;
  const machines = floor.lines.get(line ?? '')?.machines ?? [];
  if (line === null || machines.length === 0) return null;
  const now = machineAt(app, line)?.machine ?? null;
  const choose = (panelsAt: string | null) => {
    preferences.value = { ...preferences.value, panelsAt };
  };
  return (
    <ChoiceField<string | null>
      label={words.scansHere}
      value={now}
      choices={[
        { value: null, text: words.count, testId: 'panels-at-count' },
        ...machines.map(({ machine, name }) => ({
          value: machine,
          text: words.goInto(name),
          testId: `panels-at-${machine}`,
        })),
      ]}
      onChoose={choose}
      help={words.scansHelp}
    >
      <Button
        testId="open-exit"
        onPress={() => {
          preferences.value = { ...preferences.value, panelsAt: null, exit: true };
        }}
      >
        {words.exitOpen}
      </Button>
    </ChoiceField>
  );
}

/** Language and theme. */
function Looks() {
  const { preferences } = useApp();
  const words = say(plantWords).tablet;
  return (
    <>
      <LanguageField
        label={words.language}
        value={languageOf(preferences.value.language)}
        onChoose={(language) => {
          preferences.value = { ...preferences.value, language };
        }}
        help={words.languageHelp}
      />
      <ChoiceField
        label={words.theme}
        value={preferences.value.theme}
        choices={(['auto', 'light', 'dark'] as const).map((each) => ({
          value: each,
          text: words.themes[each],
          testId: `theme-${each}`,
        }))}
        onChoose={(theme) => {
          preferences.value = { ...preferences.value, theme };
        }}
      />
    </>
  );
}

function Sound({ alarm }: { readonly alarm: Alarm }) {
  const { preferences } = useApp();
  const words = say(plantWords).tablet;
  return (
    <ChoiceField
      label={words.sound}
      value={preferences.value.sound}
      choices={[
        { value: true, text: words.on },
        { value: false, text: words.off },
      ]}
      onChoose={(sound) => {
        preferences.value = { ...preferences.value, sound };
      }}
      help={alarm.unlocked.value ? null : say(shellWords).muted}
    >
      <Button onPress={alarm.test}>{words.test}</Button>
    </ChoiceField>
  );
}

/** When it makes no sound. */
function Quiet() {
  const { preferences } = useApp();
  const words = say(plantWords).tablet;
  const { quiet } = preferences.value;
  const set = (next: QuietHours | null) => {
    preferences.value = { ...preferences.value, quiet: next };
  };
  return (
    <>
      <ChoiceField
        label={words.quiet}
        value={quiet !== null}
        choices={[
          { value: true, text: words.on, testId: 'quiet-on' },
          { value: false, text: words.off, testId: 'quiet-off' },
        ]}
        onChoose={(isOn) => set(isOn ? { from: '22:00', to: '06:00' } : null)}
        help={words.quietHelp}
      />
      {quiet && (
        <div class="row">
          <Field
            label={words.quietFrom}
            type="time"
            value={quiet.from}
            onInput={(from) => set({ ...quiet, from })}
          />
          <Field label={words.quietTo} type="time" value={quiet.to} onInput={(to) => set({ ...quiet, to })} />
        </div>
      )}
    </>
  );
}

/** Verdicts aloud, where the tablet has a voice of its own. */
function Spoken() {
  const app = useApp();
  const speaker = ownSpeaker();
  const { preferences } = app;
  const words = say(plantWords).tablet;
  const language = wishedLanguage(app);
  const canSpeak = speaker.languages.value.has(language);
  return (
    <ChoiceField
      label={words.spoken}
      value={preferences.value.spoken}
      choices={[
        { value: true, text: words.on, testId: 'spoken-on' },
        { value: false, text: words.off, testId: 'spoken-off' },
      ]}
      onChoose={(spoken) => {
        preferences.value = { ...preferences.value, spoken };
      }}
      help={canSpeak ? words.spokenHelp : words.noVoice}
    />
  );
}

/** What the browser grants of what warnings need beside sound. */
function Screen({ awake }: { readonly awake: Awake }) {
  const words = say(plantWords).tablet;
  return (
    <GroupField label={words.beside}>
      <p>
        <span class={`chip ${awake === 'held' ? 'go' : awake === 'free' ? '' : 'care'}`}>
          {words.awake[awake]}
        </span>
      </p>
      <small>
        {'vibrate' in navigator && words.vibrates} {words.closedApp}
      </small>
    </GroupField>
  );
}

/** What this browser cannot do, each with what it means for work. */
function Lacks() {
  const words = say(plantWords).tablet.lacks;
  const lacks = engineLacks();
  return (
    <GroupField label={words.title}>
      {lacks.length === 0 ? (
        <p>{words.none}</p>
      ) : (
        <ul data-testid="lacks">
          {lacks.map((lack) => (
            <li key={lack}>{words[lack]}</li>
          ))}
        </ul>
      )}
    </GroupField>
  );
}

/** What the browser says of the log's room and of keeping it. */
function Storage() {
  const words = say(plantWords).tablet;
  const [health, setHealth] = useState<StorageHealth | null>(null);
  const refresh = () => void readStorage().then(setHealth);
  useEffect(refresh, []);
  const room = health ? roomLeft(health) : null;
  const kept = health?.kept === true ? 'yes' : health?.kept === false ? 'no' : 'unknown';
  return (
    <GroupField label={words.storage}>
      <p>
        <span class={`chip ${kept === 'yes' ? 'go' : 'care'}`}>
          {kept === 'yes' ? '✓' : '!'} {words.kept[kept]}
        </span>
      </p>
      {health?.usedBytes != null && room !== null && (
        <small>{words.room(formatCount(health.usedBytes / MEGABYTE), formatCount(room / MEGABYTE))}</small>
      )}
      {kept !== 'yes' && <Button onPress={() => void askToKeep().then(refresh)}>{words.askKeep}</Button>}
    </GroupField>
  );
}

function OfflineCopy({ offline }: { readonly offline: Offline }) {
  const app = useApp();
  useFloor(); // the count of entries follows the log
  const words = say(plantWords).tablet;
  const shell = say(shellWords);
  const isReady = offline.state.value === 'ready';
  return (
    <GroupField label={words.offline}>
      <p>
        <span class={`chip ${isReady ? 'go' : 'care'}`}>
          {isReady ? `✓ ${shell.offlineReady}` : shell.gettingReady}
        </span>
      </p>
      <small>
        {words.version} {app.version} · {words.entries(formatCount(app.store.count()))}
        <br />
        {words.id}{' '}
        <span class="code" data-raw>
          {app.store.identity.tablet}
        </span>
      </small>
    </GroupField>
  );
}
