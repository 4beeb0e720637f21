// A checklist in hand: steps under their headings, those that can be done beside the running line first; what is not asked is
// folded away. Every answer is an entry; a reload or another tablet goes on where this one left.

import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { knownOpen, type OpenItem } from '../../../../shared/changeover/open-work.ts';
import type { StepView } from '../../../../shared/checklist/answers.ts';
import type { ChecklistStep, ChecklistTemplate, KnownFact } from '../../../../shared/floor/checklist.ts';
import { isSignedForGood } from '../../../../shared/floor/over-change.ts';
import type { Checklist } from '../../../../shared/floor/state.ts';
import { useApp, useFloor } from '../../app.ts';
import type { DeskRun } from '../../desk/desk.ts';
import { useRefusal } from '../../may.ts';
import { ActGroup } from '../../ui/ActGroup.tsx';
import { Button } from '../../ui/Button.tsx';
import { checklistWords } from '../../words/checklist.ts';
import { sayText } from '../../words/shipped-steps.ts';
import { say } from '../../words/words.ts';
import { floorWork, isPast, standingOf, templateOf } from './checklist-desk.ts';
import { SkipDialog } from './SkipDialog.tsx';
import { StepCard } from './StepCard.tsx';
import { useStepScans } from './step-scans.ts';
import './checklist.css';

interface ChecklistPanelProps {
  readonly list: Checklist;
  readonly desk: DeskRun;
  /** What stands where its title would; left out where that is enough. */
  readonly head?: ComponentChildren;
}

export function ChecklistPanel(props: ChecklistPanelProps) {
  const template = templateOf(useFloor(), props.list);
  return template ? <Steps {...props} template={template} /> : null;
}

function Steps({
  list,
  desk,
  template,
  head,
}: ChecklistPanelProps & { readonly template: ChecklistTemplate }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(checklistWords);
  const refusal = useRefusal('tick-checklist');
  const [skipping, setSkipping] = useState<string | null>(null);
  const view = standingOf(floor, list, template);
  const changeover = floor.changeovers.get(list.changeover ?? '');
  const work = changeover && !isPast(floor, list) ? floorWork(floor, changeover) : [];
  const mayTakeBack = !isSignedForGood(floor, list);
  const isHere = list.tablet === app.store.identity.tablet;
  const { checklist, line } = list;
  const write = (draft: Parameters<typeof app.write>[0][number]): Promise<boolean> =>
    app.write([draft]).then(
      () => true,
      () => false, // shown by the fault screen
    );
  const isLocked = list.closedMs !== null || !isHere;
  const onAnswer = ({ step, unit }: ChecklistStep, value: string | number) =>
    write({ kind: 'step.answered', payload: { checklist, line, step, value, unit } });
  const scans = useStepScans(desk, { line, view, mayAnswer: !isLocked && refusal === null, onAnswer });
  const title = sayText(template.title);
  const groups = groupsOf(view.steps);
  const now = groups.flatMap(({ steps }) => steps).find(({ state }) => state === 'open' || state === 'short');
  return (
    <section class="stack checklist" data-testid="checklist">
      <ActGroup reason={refusal}>
        <div class="row">
          {head ?? <h2>{title}</h2>}
          <span class="chip" role="status">
            {words.progress(String(view.done), String(view.asked))}
          </span>
          {!isHere && list.closedMs === null && (
            <>
              <span class="chip care">
                {words.elsewhere(floor.tablets.get(list.tablet)?.name ?? list.tablet)}
              </span>
              <Button
                disabledReason={refusal}
                onPress={() =>
                  write({
                    kind: 'checklist.handed',
                    payload: { checklist, line, to: app.store.identity.tablet },
                  })
                }
              >
                {words.takeOver}
              </Button>
            </>
          )}
        </div>
        {groups.map(({ group, steps }) => (
          <div key={steps[0]?.step.step} class="stepgroup">
            {group !== title && <h3>{group}</h3>}
            {steps.map((each) => (
              <StepCard
                key={each.step.step}
                list={list}
                view={each}
                mayTakeBack={mayTakeBack}
                left={leftOf(each.step.knows, work)}
                scans={scans}
                locked={isLocked}
                isNow={each === now}
                refusal={refusal}
                onAnswer={(value) => onAnswer(each.step, value)}
                onReopen={() =>
                  write({
                    kind: 'step.reopened',
                    payload: { checklist, line, step: each.step.step, reason: '' },
                  })
                }
                onSkip={() => setSkipping(each.step.step)}
              />
            ))}
          </div>
        ))}
        {list.closedMs === null && isHere && (
          <div>
            <Button
              tone={view.canClose ? 'act' : 'plain'}
              large
              testId="checklist-close"
              disabledReason={refusal ?? (view.canClose ? null : words.missing(view.missing.length))}
              onPress={() => {
                write({
                  kind: 'checklist.closed',
                  payload: { checklist, line, done: view.done, asked: view.asked, note: '' },
                });
                app.notice.value = { tone: 'go', text: words.closed };
              }}
            >
              {words.close}
            </Button>
          </div>
        )}
      </ActGroup>
      {skipping !== null && <SkipDialog list={list} step={skipping} onClose={() => setSkipping(null)} />}
    </section>
  );
}

/** The steps that are asked, under their headings, in the order of the list. */
function groupsOf(steps: readonly StepView[]) {
  const nameOf = ({ step }: StepView) => sayText(step.group);
  return [...new Set(steps.map(nameOf))].map((group) => ({
    group,
    steps: steps.filter((each) => nameOf(each) === group && each.state !== 'not-asked'),
  }));
}

/** What is open of the thing that a step asks to be known. */
function leftOf(fact: KnownFact | undefined, work: readonly OpenItem[]): readonly OpenItem[] {
  return fact === undefined ? [] : work.filter((item) => knownOpen([item])[fact] > 0);
}
