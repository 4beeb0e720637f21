// From the last panel of one product to the release of the next: what can be made ready while the line runs, what must wait until
// it stands, and what is still open.

import { useApp, useFloor } from '../../app.ts';
import type { DeskRun } from '../../desk/desk.ts';
import { address, place } from '../../router.ts';
import { Icon } from '../../ui/Icon.tsx';
import { changeWords } from '../../words/change.ts';
import { orderWords } from '../../words/order.ts';
import { say } from '../../words/words.ts';
import { ChangeOpen } from './ChangeOpen.tsx';
import { ChooseNext } from './ChooseNext.tsx';
import { DockByScan } from './DockCart.tsx';
import { NothingYet } from './NothingYet.tsx';
import { OneList } from './OneList.tsx';
import { Order } from './Order.tsx';
import { OtherList } from './OtherList.tsx';
import './change.css';

export function Change({ desk }: { readonly desk: DeskRun }) {
  const line = useApp().line.value;
  if (line === null) return <NothingYet />;
  return (
    <>
      <DockByScan key={line} line={line} />
      <ChangePage line={line} desk={desk} />
    </>
  );
}

function ChangePage({ line, desk }: { readonly line: string; readonly desk: DeskRun }) {
  const floor = useFloor();
  const words = say(changeWords);
  const setup = floor.setups.get(floor.chosen.get(line) ?? '');
  const [page, purpose, slot] = place.value.rest;
  if (page === 'list')
    return <OtherList desk={desk} line={line} purpose={purpose ?? ''} slot={slot ?? null} />;
  const list = page === 'checklist' ? floor.checklists.get(purpose ?? '') : undefined;
  if (list?.line === line) return <OneList key={list.checklist} desk={desk} list={list} />;
  if (page === 'order') return <Order key={line} line={line} />;
  const changeover = floor.changeovers.get(floor.changing.get(line) ?? '');
  if (changeover) return <ChangeOpen key={changeover.changeover} changeover={changeover} desk={desk} />;
  return (
    <div class="stack">
      <div class="row">
        <Icon name="change" size={32} />
        <div class="grow">
          <h1>{words.none}</h1>
          <p class="soft">{setup ? words.running(setup.product) : words.nothing}</p>
        </div>
      </div>
      <p>{words.noneHelp}</p>
      <ChooseNext line={line} />
      <div class="row">
        <a class="button large" href={address('change', 'order')} data-testid="order-open">
          {say(orderWords).open}
        </a>
        <a class="button large" href={address('change', 'list', 'shift-start')}>
          {words.shiftStart}
        </a>
        <a class="button large" href={address('change', 'list', 'splice')}>
          {words.splice}
        </a>
      </div>
    </div>
  );
}
