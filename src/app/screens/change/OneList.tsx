// One checklist by its name, whatever it is of: what a handover lists leads here, where it is answered and closed.

import type { Checklist } from '../../../../shared/floor/state.ts';
import { useFloor } from '../../app.ts';
import type { DeskRun } from '../../desk/desk.ts';
import { address } from '../../router.ts';
import { Icon } from '../../ui/Icon.tsx';
import { changeWords } from '../../words/change.ts';
import { sayText } from '../../words/shipped-steps.ts';
import { say } from '../../words/words.ts';
import { ChecklistPanel } from './ChecklistPanel.tsx';
import { templateOf } from './checklist-desk.ts';

export function OneList({ desk, list }: { readonly desk: DeskRun; readonly list: Checklist }) {
  const floor = useFloor();
  const words = say(changeWords);
  const title = templateOf(floor, list)?.title;
  const of = floor.changeovers.get(list.changeover ?? '')?.product ?? list.slot;
  const head = (
    <>
      <a class="button quiet" href={address('change')}>
        <Icon name="left" /> {words.title}
      </a>
      <h1>{[title ? sayText(title) : null, of].filter((part) => part !== null).join(' · ')}</h1>
    </>
  );
  return (
    <div class="stack other-list" data-testid="one-list">
      <ChecklistPanel list={list} desk={desk} head={head} />
    </div>
  );
}
