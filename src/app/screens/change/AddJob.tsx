// One more job for the list: product side, panels, pace, due time.

import { useState } from 'preact/hooks';
import { momentInZone } from '../../../../shared/forecast/calendar.ts';
import { useFloor } from '../../app.ts';
import { newId } from '../../device/ids.ts';
import { useRefusal } from '../../may.ts';
import { Button } from '../../ui/Button.tsx';
import { Field, SelectField } from '../../ui/Field.tsx';
import { orderWords } from '../../words/order.ts';
import { shellWords } from '../../words/shell.ts';
import { say } from '../../words/words.ts';
import { readFigure } from './model.ts';
import type { ListedJob } from './order-model.ts';

interface AddJobProps {
  readonly line: string;
  readonly onAdd: (job: ListedJob) => void;
}

export function AddJob({ line, onAdd }: AddJobProps) {
  const floor = useFloor();
  const words = say(orderWords);
  const shell = say(shellWords);
  const refusal = useRefusal('choose-setup');
  const setups = [...floor.setups.values()].filter((setup) => setup.line === line);
  const [setup, setSetup] = useState(setups[0]?.setup ?? '');
  const last = [...floor.runs.values()].filter((run) => run.line === line).at(-1);
  const [panels, setPanels] = useState(String(last?.panelsWanted ?? 500));
  const [seconds, setSeconds] = useState(String(last?.panelSeconds ?? 30));
  const [due, setDue] = useState('');
  const panelCount = readFigure(panels);
  const panelSeconds = readFigure(seconds);
  const isWrong = !((panelCount ?? 0) > 0 && (panelSeconds ?? 0) > 0 && setup !== '');
  return (
    <section class="card stack">
      <div class="form">
        <SelectField label={words.setup} testId="job-setup" value={setup} onChoose={setSetup}>
          {setups.map((each) => (
            <option key={each.setup} value={each.setup}>
              {each.product} · {shell.side[each.side]} · {shell.revision(each.revision)}
            </option>
          ))}
        </SelectField>
        <Field
          label={words.panels}
          testId="job-panels"
          inputMode="numeric"
          value={panels}
          onInput={setPanels}
        />
        <Field
          label={words.seconds}
          testId="job-seconds"
          inputMode="decimal"
          value={seconds}
          onInput={setSeconds}
        />
        <Field
          label={words.due}
          testId="job-due"
          type="datetime-local"
          value={due}
          onInput={setDue}
          help={words.dueHelp}
        />
      </div>
      <div>
        <Button
          large
          testId="job-add"
          disabledReason={refusal ?? (isWrong ? words.wrong : null)}
          onPress={() => {
            // As the plant's clock shows it, whatever zone the tablet is set to.
            const dueMs = momentInZone(due, floor.lines.get(line)?.zone ?? 'UTC');
            onAdd({
              id: newId(),
              setup,
              panels: Math.round(panelCount ?? 0),
              panelSeconds: panelSeconds ?? 0,
              dueMs,
              isHeld: false,
            });
          }}
        >
          {words.add}
        </Button>
      </div>
    </section>
  );
}
