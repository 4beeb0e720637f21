// A checklist that belongs to no changeover: a splice, the start of a shift. One is in hand at a time on a line.

import { type ChecklistPurpose, checklistPurposes } from '../../../../shared/floor/checklist.ts';
import { useApp, useFloor } from '../../app.ts';
import type { DeskRun } from '../../desk/desk.ts';
import { newId } from '../../device/ids.ts';
import { useRefusal } from '../../may.ts';
import { address } from '../../router.ts';
import { Button } from '../../ui/Button.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { changeWords } from '../../words/change.ts';
import { checklistWords } from '../../words/checklist.ts';
import { sayText } from '../../words/shipped-steps.ts';
import { say } from '../../words/words.ts';
import { ChecklistPanel } from './ChecklistPanel.tsx';
import { templateFor, templateOf } from './checklist-desk.ts';

interface OtherListProps {
  readonly desk: DeskRun;
  readonly line: string;
  readonly purpose: string;
  /** The slot that a splice is on. */
  readonly slot: string | null;
}

const nothingChanges = {
  sideChanges: false,
  stencilChanges: false,
  productChanges: false,
  programChanges: false,
};

export function OtherList({ desk, line, purpose, slot }: OtherListProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(checklistWords);
  const refusal = useRefusal('tick-checklist');
  const known: ChecklistPurpose = checklistPurposes.find((each) => each === purpose) ?? 'shift-start';
  const template = templateFor(floor, known);
  if (!template) return null;
  const open = [...floor.checklists.values()].find(
    (list) =>
      list.line === line &&
      list.changeover === null &&
      list.slot === slot &&
      list.closedMs === null &&
      templateOf(floor, list)?.purpose === known,
  );
  const head = (
    <>
      <a class="button quiet" href={address('change')}>
        <Icon name="left" /> {say(changeWords).title}
      </a>
      <h1>
        {sayText(template.title)}
        {slot !== null && ` · ${slot}`}
      </h1>
    </>
  );
  return (
    <div class="stack other-list">
      {!open && <header class="row">{head}</header>}
      {open ? (
        <ChecklistPanel list={open} desk={desk} head={head} />
      ) : (
        <div>
          <Button
            tone="act"
            large
            disabledReason={refusal}
            testId="list-open"
            onPress={() => {
              const payload = {
                checklist: newId(),
                template: template.template,
                version: template.version,
                line,
                changeover: null,
                slot,
                facts: nothingChanges,
              };
              app.record([{ kind: 'checklist.opened', payload }]);
            }}
          >
            {words.open}
          </Button>
        </div>
      )}
    </div>
  );
}
