// Starting a run: which setup, how many panels, the nominal pace until the line's own is seen.

import { useState } from 'preact/hooks';
import { setupProgress } from '../../../../shared/floor/progress.ts';
import { lineCalendar } from '../../../../shared/forecast/line-calendar.ts';
import { beginsShort, lastRunLike } from '../../../../shared/outlook/begin.ts';
import { useApp, useFloor } from '../../app.ts';
import { newId } from '../../device/ids.ts';
import { LookAlikes } from '../../frame/LookAlikes.tsx';
import { useRefusal } from '../../may.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Field } from '../../ui/Field.tsx';
import { lineWords } from '../../words/line.ts';
import { runWords } from '../../words/run.ts';
import { shellWords } from '../../words/shell.ts';
import { say } from '../../words/words.ts';
import { BeginsShort } from './BeginsShort.tsx';

export function StartDialog({ line, onClose }: { readonly line: string; readonly onClose: () => void }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(runWords);
  const shell = say(shellWords);
  const setup = floor.setups.get(floor.chosen.get(line) ?? '');
  const last = lastRunLike(floor, line);
  const [panels, setPanels] = useState(String(last?.panelsWanted ?? 500));
  const [seconds, setSeconds] = useState(String(last?.panelSeconds ?? 30));
  const refusal = useRefusal('start-run');
  const [prefix, setPrefix] = useState(last?.panelPrefix ?? '');
  if (!setup) return null;
  const progress = setupProgress(floor, line);
  const missing = progress.slots.length - progress.verified;
  const wrongPanels = !(Number.isInteger(Number(panels)) && Number(panels) > 0);
  const wrongSeconds = !(Number(seconds.replace(',', '.')) > 0);
  const planned = { panelsWanted: Number(panels), panelSeconds: Number(seconds.replace(',', '.')) };

  async function start(): Promise<void> {
    if (!setup) return;
    const run = newId();
    const nowMs = app.clock.nowMs();
    const calendar = lineCalendar(floor, line, nowMs);
    const short = beginsShort(floor, line, { nowMs, calendar, planned }).map(({ slot }) => slot);
    await app.write([
      {
        kind: 'run.started',
        payload: {
          run,
          line,
          setup: setup.setup,
          product: setup.product,
          ...planned,
          panelSd: 0,
          panelPrefix: prefix.trim() === '' ? null : prefix.trim(),
        },
      },
      ...(short.length > 0 ? [{ kind: 'run.began-short' as const, payload: { run, line, short } }] : []),
    ]);
    onClose();
  }

  return (
    <Dialog title={words.startTitle} onClose={onClose}>
      <div class="stack">
        <p>
          <b>{setup.product}</b> · {shell.side[setup.side]} · {shell.revision(setup.revision)}
        </p>
        {missing > 0 && (
          <p class="chip care" data-testid="start-not-right">
            {words.notRight(missing)}
          </p>
        )}
        {!wrongPanels && !wrongSeconds && <BeginsShort line={line} planned={planned} />}
        <LookAlikes setup={setup.setup} />
        <Field
          label={say(lineWords).panelsWanted}
          testId="panels-wanted"
          inputMode="numeric"
          value={panels}
          isWrong={wrongPanels}
          onInput={setPanels}
          wrong={wrongPanels ? words.wrongNumber : null}
        />
        <Field
          label={say(lineWords).panelSeconds}
          testId="panel-seconds"
          inputMode="decimal"
          value={seconds}
          isWrong={wrongSeconds}
          onInput={setSeconds}
          help={wrongSeconds ? words.wrongNumber : words.panelSecondsHelp}
        />
        <Field label={words.panelPrefix} value={prefix} onInput={setPrefix} help={words.panelPrefixHelp} />
        <div class="row">
          <Button
            tone="act"
            large
            testId="run-start-yes"
            disabledReason={wrongPanels || wrongSeconds ? words.wrongNumber : refusal}
            onPress={() => void start()}
          >
            {missing > 0 ? words.startAnyway : say(lineWords).start}
          </Button>
          <Button large onPress={onClose}>
            {shell.cancel}
          </Button>
        </div>
      </div>
    </Dialog>
  );
}
