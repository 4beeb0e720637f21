// The lines of the plant: each with its machines and banks, told by the first and last slot of a bank as they are written there.

import { useState } from 'preact/hooks';
import { toldSlots } from '../../../../../shared/floor/slot-ranges.ts';
import type { Line } from '../../../../../shared/floor/state.ts';
import { useFloor } from '../../../app.ts';
import { useRefusal } from '../../../may.ts';
import { Button } from '../../../ui/Button.tsx';
import { Icon } from '../../../ui/Icon.tsx';
import { lineListWords } from '../../../words/lines.ts';
import { say } from '../../../words/words.ts';
import { LineEditor } from './LineEditor.tsx';
import { LinePicture } from './LinePicture.tsx';
import { lanesTold, ownLines } from './model.ts';
import './lines.css';

export function Lines() {
  const floor = useFloor();
  const words = say(lineListWords);
  const refusal = useRefusal('define-line');
  const lines = ownLines(floor);
  const [open, setOpen] = useState<string | 'new' | null>(lines.length === 0 ? 'new' : null);
  if (open !== null && refusal === null)
    return (
      <LineEditor
        key={open}
        line={floor.lines.get(open) ?? null}
        onClose={lines.length === 0 ? null : () => setOpen(null)}
        onSaved={() => setOpen(null)}
      />
    );
  return (
    <div class="stack">
      {lines.map((line) => (
        <LineCard key={line.line} line={line} refusal={refusal} onEdit={() => setOpen(line.line)} />
      ))}
      <div>
        <Button tone="act" large testId="line-add" disabledReason={refusal} onPress={() => setOpen('new')}>
          <Icon name="line" /> {words.add}
        </Button>
      </div>
    </div>
  );
}

function LineCard(props: {
  readonly line: Line;
  readonly refusal: string | null;
  readonly onEdit: () => void;
}) {
  const { line, refusal, onEdit } = props;
  const words = say(lineListWords);
  const lanes = lanesTold(useFloor(), line.line);
  const count = line.machines
    .flatMap(({ banks }) => banks)
    .reduce((sum, { positions }) => sum + positions, 0);
  return (
    <section class="card stack" data-testid={`line-${line.line}`}>
      <div class="row">
        <div class="grow">
          <h2>{line.name}</h2>
          <p class="soft">
            {words.machines(line.machines.length)} · {words.slots(count)} · {line.zone}
          </p>
          {lanes.map((lane) => (
            <p key={lane.line} data-testid={`lane-${lane.line}`}>
              {lane.name}
            </p>
          ))}
        </div>
        <Button
          label={words.editOf(line.name)}
          testId={`line-edit-${line.line}`}
          disabledReason={refusal}
          onPress={onEdit}
        >
          {words.edit}
        </Button>
      </div>
      <LinePicture machines={line.machines} />
      {toldSlots(line).length < count && <p class="soft">{words.fromSheets}</p>}
    </section>
  );
}
