// This tablet's own business: name, language, theme, sound, storage, offline copy.

import { useEffect, useState } from 'preact/hooks';
import { useApp, useFloor } from '../../app.ts';
import type { Alarm } from '../../device/alarm.ts';
import type { Offline } from '../../device/offline.ts';
import { askToKeep, readStorage, roomLeft, type StorageHealth } from '../../device/storage.ts';
import { machineAt } from '../../panels-at.ts';
import { Button } from '../../ui/Button.tsx';
import { inLineWords } from '../../words/in-line.ts';
import { plantWords } from '../../words/plant.ts';
import { shellWords } from '../../words/shell.ts';
import { formatCount, languageNames, languages, say } from '../../words/words.ts';

const MEGABYTE = 1_048_576;

interface ThisTabletProps {
  readonly offline: Offline;
  readonly alarm: Alarm;
}

export function ThisTablet({ offline, alarm }: ThisTabletProps) {
  return (
    <div class="form card">
      <Name />
      <Line />
      <PanelsAt />
      <Looks />
      <Sound alarm={alarm} />
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
    <label class="field">
      <span>{words.name}</span>
      <input
        data-typing
        value={name}
        maxLength={60}
        onInput={(event) => setName(event.currentTarget.value)}
      />
      <Button
        onPress={() => {
          app.record([{ kind: 'tablet.named', payload: { name: name.trim() || 'tablet' } }], {
            notice: { tone: 'go', text: words.saved },
          });
        }}
      >
        {words.save}
      </Button>
    </label>
  );
}

/** Which line it stands at, where there are several. */
function Line() {
  const app = useApp();
  const floor = useFloor();
  const { preferences } = app;
  if (floor.lines.size <= 1) return null;
  return (
    <div class="field">
      <span>{say(plantWords).tablet.line}</span>
      <div class="choice">
        {[...floor.lines.values()].map((line) => (
          <button
            type="button"
            key={line.line}
            aria-pressed={app.line.value === line.line}
            onClick={() => {
              preferences.value = { ...preferences.value, line: line.line };
            }}
          >
            {line.name}
          </button>
        ))}
      </div>
    </div>
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
    <div class="field">
      <span>{words.scansHere}</span>
      <div class="choice">
        <button
          type="button"
          aria-pressed={now === null}
          data-testid="panels-at-count"
          onClick={() => choose(null)}
        >
          {words.count}
        </button>
        {machines.map(({ machine, name }) => (
          <button
            type="button"
            key={machine}
            aria-pressed={now === machine}
            data-testid={`panels-at-${machine}`}
            onClick={() => choose(machine)}
          >
            {words.goInto(name)}
          </button>
        ))}
      </div>
      <small>{words.scansHelp}</small>
    </div>
  );
}

/** Language and theme. */
function Looks() {
  const { preferences } = useApp();
  const words = say(plantWords).tablet;
  return (
    <>
      <div class="field">
        <span>{words.language}</span>
        <div class="choice">
          {languages.map((each) => (
            <button
              type="button"
              key={each}
              lang={each}
              data-testid={`language-${each}`}
              aria-pressed={preferences.value.language === each}
              onClick={() => {
                preferences.value = { ...preferences.value, language: each };
              }}
            >
              {languageNames[each]}
            </button>
          ))}
        </div>
      </div>
      <div class="field">
        <span>{words.theme}</span>
        <div class="choice">
          {(['auto', 'light', 'dark'] as const).map((each) => (
            <button
              type="button"
              key={each}
              data-testid={`theme-${each}`}
              aria-pressed={preferences.value.theme === each}
              onClick={() => {
                preferences.value = { ...preferences.value, theme: each };
              }}
            >
              {words.themes[each]}
            </button>
          ))}
        </div>
      </div>
    </>
  );
}

function Sound({ alarm }: { readonly alarm: Alarm }) {
  const { preferences } = useApp();
  const words = say(plantWords).tablet;
  return (
    <div class="field">
      <span>{words.sound}</span>
      <div class="choice">
        {[true, false].map((each) => (
          <button
            type="button"
            key={String(each)}
            aria-pressed={preferences.value.sound === each}
            onClick={() => {
              preferences.value = { ...preferences.value, sound: each };
            }}
          >
            {each ? words.on : words.off}
          </button>
        ))}
        <Button onPress={() => alarm.call('due')}>{words.test}</Button>
      </div>
      {!alarm.unlocked.value && <small>{say(shellWords).muted}</small>}
    </div>
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
    <div class="field">
      <span>{words.storage}</span>
      <p>
        <span class={`chip ${kept === 'yes' ? 'go' : 'care'}`}>
          {kept === 'yes' ? '✓' : '!'} {words.kept[kept]}
        </span>
      </p>
      {health?.usedBytes != null && room !== null && (
        <small>{words.room(formatCount(health.usedBytes / MEGABYTE), formatCount(room / MEGABYTE))}</small>
      )}
      {kept !== 'yes' && <Button onPress={() => void askToKeep().then(refresh)}>{words.askKeep}</Button>}
    </div>
  );
}

function OfflineCopy({ offline }: { readonly offline: Offline }) {
  const app = useApp();
  useFloor(); // the count of entries follows the log
  const words = say(plantWords).tablet;
  const shell = say(shellWords);
  const isReady = offline.state.value === 'ready';
  return (
    <div class="field">
      <span>{words.offline}</span>
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
    </div>
  );
}
