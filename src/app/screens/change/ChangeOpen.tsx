// A changeover in hand: where it stands, its feeders, its checklist, and the release.

import { useState } from 'preact/hooks';
import { lastGoodPanelMs } from '../../../../shared/changeover/times.ts';
import type { Changeover } from '../../../../shared/floor/state.ts';
import { useApp, useFloor } from '../../app.ts';
import type { DeskRun } from '../../desk/desk.ts';
import { newId } from '../../device/ids.ts';
import { StoodChoice, useStood } from '../../frame/StoodChoice.tsx';
import { useRefusal } from '../../may.ts';
import { AskFeet } from '../../ui/Ask.tsx';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { Tabs } from '../../ui/Tabs.tsx';
import { changeWords } from '../../words/change.ts';
import { checklistWords } from '../../words/checklist.ts';
import { formatCount, formatSpan, say } from '../../words/words.ts';
import { ChecklistPanel } from './ChecklistPanel.tsx';
import { changeFacts, checklistOf, standingOf, templateFor, templateOf } from './checklist-desk.ts';
import { FeederList } from './FeederList.tsx';
import { FirstPanel } from './FirstPanel.tsx';
import { KitPanel } from './KitPanel.tsx';
import { planChange } from './model.ts';
import { ReleaseDialog } from './ReleaseDialog.tsx';
import { TimesPanel } from './TimesPanel.tsx';

type Tab = 'feeders' | 'kit' | 'checklist' | 'first' | 'times';

/** While the line runs, what can be done beside it comes first; once it stands, the moves. The first is the one that opens. */
const tabsRunning: readonly [Tab, ...Tab[]] = ['kit', 'checklist', 'feeders', 'first', 'times'];
const tabsStanding: readonly [Tab, ...Tab[]] = ['feeders', 'checklist', 'first', 'kit', 'times'];

/** What a dialog asks. */
type Asked = 'last' | 'drop' | 'release';

interface ChangeOpenProps {
  readonly changeover: Changeover;
  readonly desk: DeskRun;
}

export function ChangeOpen({ changeover, desk }: ChangeOpenProps) {
  const floor = useFloor();
  const [chosenTab, setTab] = useState<{ readonly tab: Tab; readonly isStanding: boolean } | null>(null);
  const [asking, setAsking] = useState<Asked | null>(null);
  const isStanding = lastGoodPanelMs(floor, changeover) !== null;
  const tabs = isStanding ? tabsStanding : tabsRunning;
  // What was chosen beside the running line does not hide the moves once it stands.
  const tab = (chosenTab?.isStanding === isStanding ? chosenTab.tab : null) ?? tabs[0];
  const setup = floor.setups.get(changeover.setup);
  const plan = setup ? planChange(floor, changeover.line, setup) : null;
  const movesLeft = plan?.fits ? plan.steps.steps.length : null;
  const list = checklistOf(floor, changeover);
  const template = list ? templateOf(floor, list) : null;
  const isListDone = list !== null && template !== null && standingOf(floor, list, template).canClose;
  const choose = (next: Tab) => setTab({ tab: next, isStanding });
  const close = () => setAsking(null);
  return (
    <div class="stack">
      <Head changeover={changeover} isReady={movesLeft === 0 && isListDone} onAsk={setAsking} />
      <Tabs pages={tabs} shown={tab} nameOf={(each) => tabName(each, isStanding, movesLeft)} onShow={choose}>
        {tab === 'times' && <TimesPanel changeover={changeover} />}
        {tab === 'kit' && (
          <KitPanel changeover={changeover} isStanding={isStanding} onChecklist={() => choose('checklist')} />
        )}
        {tab === 'first' && <FirstPanel changeover={changeover} />}
        {tab === 'feeders' && (
          <FeederList
            changeover={changeover}
            isStanding={isStanding}
            onChecklist={isListDone ? null : () => choose('checklist')}
          />
        )}
        {tab === 'checklist' &&
          (list ? <ChecklistPanel list={list} desk={desk} /> : <OpenChecklist changeover={changeover} />)}
      </Tabs>
      {asking === 'last' && <LastPanelDialog changeover={changeover} onClose={close} />}
      {asking === 'release' && <ReleaseDialog changeover={changeover} onClose={close} />}
      {asking === 'drop' && <DropDialog changeover={changeover} onClose={close} />}
    </div>
  );
}

function tabName(tab: Tab, isStanding: boolean, movesLeft: number | null): string {
  const words = say(changeWords);
  if (tab !== 'feeders') return words.tabs[tab];
  const name = isStanding ? words.tabs[tab] : words.tabWaits;
  return movesLeft !== null && movesLeft > 0 ? `${name} · ${formatCount(movesLeft)}` : name;
}

/** From what to what, since when, and the act that ends this stretch of it. */
function Head(props: {
  readonly changeover: Changeover;
  /** Nothing is left to do but to release it. */
  readonly isReady: boolean;
  readonly onAsk: (asked: Asked) => void;
}) {
  const app = useApp();
  const floor = useFloor();
  const words = say(changeWords);
  const refusal = useRefusal('verify-reel');
  const leadRefusal = useRefusal('choose-setup');
  const { changeover, onAsk } = props;
  const from = floor.setups.get(changeover.from ?? '');
  const sinceMs = lastGoodPanelMs(floor, changeover);
  return (
    <header class="change-head" data-testid="changeover">
      <div class="grow">
        <h1>{from ? words.fromTo(from.product, changeover.product) : changeover.product}</h1>
        <p class={`chip ${sinceMs === null ? 'go' : 'care'}`}>
          <Icon name={sinceMs === null ? 'play' : 'pause'} size={18} />
          {sinceMs === null
            ? words.preparing
            : `${words.standing} ${words.since(formatSpan(Math.max(0, (app.nowMs.value - sinceMs) / 1000)))}`}
        </p>
      </div>
      {sinceMs === null ? (
        <Button
          key="last"
          tone="act"
          large
          disabledReason={refusal}
          onPress={() => onAsk('last')}
          testId="last-panel"
        >
          {words.lastPanel}
        </Button>
      ) : (
        <Button
          key="release"
          tone={props.isReady ? 'act' : 'plain'}
          large
          disabledReason={leadRefusal}
          onPress={() => onAsk('release')}
          testId="release"
        >
          {words.release}
        </Button>
      )}
      <Button tone="quiet" disabledReason={leadRefusal} onPress={() => onAsk('drop')}>
        {words.drop}
      </Button>
    </header>
  );
}

/** Opens the checklist of a changeover that has none yet. */
function OpenChecklist({ changeover }: { readonly changeover: Changeover }) {
  const app = useApp();
  const floor = useFloor();
  const refusal = useRefusal('verify-reel');
  return (
    <div>
      <Button
        tone="act"
        large
        disabledReason={refusal}
        testId="checklist-open"
        onPress={() => {
          const template = templateFor(floor, 'changeover');
          if (!template) return;
          const facts = changeFacts(floor, changeover.from, changeover.setup);
          const { template: name, version } = template;
          const payload = {
            checklist: newId(),
            template: name,
            version,
            line: changeover.line,
            facts,
            changeover: changeover.changeover,
            slot: null,
          };
          app.record([{ kind: 'checklist.opened', payload }]);
        }}
      >
        {say(checklistWords).open}
      </Button>
    </div>
  );
}

interface AskProps {
  readonly changeover: Changeover;
  readonly onClose: () => void;
}

function DropDialog({ changeover, onClose }: AskProps) {
  const app = useApp();
  const words = say(changeWords);
  return (
    <Dialog title={words.dropTitle} onClose={onClose}>
      <p>{words.dropText}</p>
      <AskFeet
        tone="stop"
        onYes={() => {
          const payload = { changeover: changeover.changeover, line: changeover.line, reason: '' };
          app.record([{ kind: 'changeover.dropped', payload }], { next: onClose });
        }}
        onNo={onClose}
        no={words.dropNot}
      >
        {words.drop}
      </AskFeet>
    </Dialog>
  );
}

/** The last good panel: the run ends and the line is set up for the next product, in one write. */
function LastPanelDialog({ changeover, onClose }: AskProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(changeWords);
  const { line, setup } = changeover;
  const run = floor.runs.get(floor.current.get(line) ?? '');
  const stood = useStood(line);
  return (
    <Dialog title={words.lastPanelTitle} onClose={onClose}>
      <div class="stack">
        <p>{words.lastPanelText(formatCount(run?.done ?? 0), formatCount(run?.panelsWanted ?? 0))}</p>
        <StoodChoice line={line} stood={stood} />
      </div>
      <AskFeet
        testId="last-panel-yes"
        onYes={() => {
          app.record(
            [
              ...(run
                ? [
                    {
                      kind: 'run.ended' as const,
                      payload: { run: run.run, line, panels: run.done, note: '', ...stood.fact },
                    },
                  ]
                : []),
              { kind: 'setup.chosen', payload: { line, setup } },
            ],
            { next: onClose },
          );
        }}
        onNo={onClose}
      >
        {words.lastPanel}
      </AskFeet>
    </Dialog>
  );
}
