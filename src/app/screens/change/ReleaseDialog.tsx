// The release: a lead with badge and PIN. All that is open or wrong is said by name; then it takes a reason, and the log keeps both.

import { isWrong } from '../../../../shared/changeover/open-work.ts';
import type { Changeover } from '../../../../shared/floor/state.ts';
import { useApp, useFloor } from '../../app.ts';
import type { Sure } from '../../frame/confirmed.ts';
import { LeadDecides } from '../../frame/LeadDecides.tsx';
import { recordSigned } from '../../frame/signed.ts';
import { fromHereTo } from '../../router.ts';
import { changeWords } from '../../words/change.ts';
import { openWorkWords } from '../../words/open-work.ts';
import { say } from '../../words/words.ts';
import { changeWork, checklistOf, templateOf } from './checklist-desk.ts';
import { OpenList } from './OpenList.tsx';

export function ReleaseDialog({
  changeover,
  onClose,
}: {
  readonly changeover: Changeover;
  readonly onClose: () => void;
}) {
  const app = useApp();
  const floor = useFloor();
  const words = say(changeWords);
  const opens = say(openWorkWords);
  const list = checklistOf(floor, changeover);
  const template = list ? templateOf(floor, list) : null;
  const open = changeWork(floor, changeover);
  const groups = [
    { title: opens.isWrong, items: open.filter(isWrong), testId: 'release-wrong' },
    { title: opens.isOpen, items: open.filter((item) => !isWrong(item)), testId: 'release-open' },
  ].filter(({ items }) => items.length > 0);
  const release = (lead: Sure, reason: string) => {
    const { changeover: name, line } = changeover;
    const by = lead.person.person;
    const payload = { changeover: name, line, by, reason, checked: lead.checked };
    const left = open.map((item) => ({ ...item }));
    recordSigned(
      app,
      lead,
      [
        ...(left.length > 0
          ? [{ kind: 'changeover.left-open' as const, payload: { changeover: name, line, by, left } }]
          : []),
        { kind: 'changeover.released', payload },
      ],
      {
        notice: { tone: 'go', text: words.released },
        next: fromHereTo('line'),
      },
    );
  };
  return (
    <LeadDecides
      title={words.releaseTitle}
      tone={open.length > 0 ? 'care' : 'plain'}
      why={open.length > 0 ? words.releaseReason : null}
      act={words.release}
      testId="release"
      mayPasskey
      onDecide={release}
      onClose={onClose}
    >
      {groups.map(({ title, items, testId }) => (
        <section key={testId} data-testid={testId}>
          <h3>{title}</h3>
          <OpenList items={items} template={template} />
        </section>
      ))}
      {open.length === 0 && <p class="chip go">✓ {opens.nothing}</p>}
    </LeadDecides>
  );
}
