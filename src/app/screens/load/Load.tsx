// The line being made ready: how far it is, where to go next, the map of its slots, what waits for a lead, the sweep.

import { useComputed } from '@preact/signals';
import { useState } from 'preact/hooks';
import { type SlotProgress, setupProgress } from '../../../../shared/floor/progress.ts';
import { entryId } from '../../../../shared/log/entry.ts';
import { useApp, useFloor } from '../../app.ts';
import type { DeskRun } from '../../desk/desk.ts';
import { newId } from '../../device/ids.ts';
import { ClearDialog } from '../../frame/PeopleDialogs.tsx';
import { useRefusal } from '../../may.ts';
import { address, goTo, place } from '../../router.ts';
import { Button } from '../../ui/Button.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { changeWords } from '../../words/change.ts';
import { lineWords } from '../../words/line.ts';
import { loadWords } from '../../words/load.ts';
import { sayReason } from '../../words/verdict.ts';
import { formatCount, say } from '../../words/words.ts';
import { mapBanks, sweepMissing } from './model.ts';
import { SlotDialog } from './SlotDialog.tsx';
import { Legend, SlotMap } from './SlotMap.tsx';

export function Load({ desk }: { readonly desk: DeskRun }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(loadWords);
  // A link from elsewhere may name the slot to open.
  const [shown, setShown] = useState<string | null>(() => place.value.rest[0] ?? null);
  const [clearing, setClearing] = useState<string | null>(null);
  const refusal = useRefusal('verify-reel');
  const chosen = useComputed(() => desk.desk.value.slot);
  const line = floor.lines.get(app.line.value ?? '');
  if (!line) return <NoSetup />;
  const progress = setupProgress(floor, line.line);
  if (progress.setup === null) return <NoSetup />;
  const sweep = floor.sweeps.get(line.line) ?? null;
  const sweeping = sweep !== null && sweep.endedMs === null;
  const holds = [...floor.holds.values()].filter((hold) => hold.facts.line === line.line);
  const share = progress.slots.length === 0 ? 0 : progress.verified / progress.slots.length;
  return (
    <div class="stack">
      <div class="load-head">
        <div class="figure">
          <b data-testid="load-progress">
            {words.of(formatCount(progress.verified), formatCount(progress.slots.length))}
          </b>
          <div class="progressbar">
            <i style={{ width: `${share * 100}%` }} />
          </div>
        </div>
        {progress.next ? <NextCard next={progress.next} /> : <p class="chip go">✓ {words.allDone}</p>}
      </div>
      {holds.length > 0 && (
        <section class="card stack" data-testid="holds">
          <h2>{words.holds}</h2>
          {holds.map((hold) => (
            <div class="row" key={hold.entry}>
              <span class="chip care">
                ? <span class="code">{[hold.facts.cart, hold.facts.slot].filter(Boolean).join(' → ')}</span>
              </span>
              <span class="grow">
                <span class="code">{hold.facts.part ?? hold.facts.supplierPart}</span> ·{' '}
                {hold.reasons.map((reason) => sayReason(reason.code)?.title ?? reason.code).join(', ')}
              </span>
              <Button
                onPress={() => setClearing(hold.entry)}
                label={`${words.decide} ${hold.facts.slot ?? hold.facts.part ?? ''}`.trim()}
              >
                {words.decide}
              </Button>
            </div>
          ))}
        </section>
      )}
      <SlotMap
        banks={mapBanks(line, progress, sweep)}
        next={progress.next?.slot ?? null}
        chosen={chosen}
        onChoose={setShown}
      />
      <Legend />
      <div class="row">
        {!sweeping && (
          <Button
            testId="sweep-start"
            disabledReason={refusal}
            onPress={() => {
              app.record([{ kind: 'sweep.started', payload: { line: line.line, sweep: newId() } }]);
              desk.desk.value = { ...desk.desk.peek(), mode: 'sweep' };
            }}
          >
            <Icon name="search" /> {words.sweep}
          </Button>
        )}
        {sweeping && <SweepBar line={line.line} desk={desk} />}
        <a class="button" href={address('plant', 'setups')}>
          {words.choose}
        </a>
        <a class="button" href={address('change', 'list', 'shift-start')}>
          {say(changeWords).shiftStart}
        </a>
      </div>
      <p class="caution">
        <Icon name="warn" />
        {words.caution}
      </p>
      {shown !== null && <SlotDialog slot={shown} desk={desk} onClose={() => setShown(null)} />}
      {clearing !== null && <ClearDialog entry={clearing} onClose={() => setClearing(null)} />}
    </div>
  );
}

function NextCard({ next }: { readonly next: SlotProgress }) {
  const words = say(loadWords);
  const { wanted } = next;
  return (
    <div class="next-card" data-testid="next-slot">
      <div>
        <small>{words.next}</small>
        <span class="slot code">{next.slot}</span>
      </div>
      <div>
        <span class="part code">{wanted.part}</span>
        <small>
          {[
            wanted.tapeWidthMm === null ? '' : words.tape(String(wanted.tapeWidthMm)),
            wanted.pitchMm === null ? '' : words.pitch(String(wanted.pitchMm)),
            words.perPanel(String(wanted.perPanel)),
            wanted.turn === undefined ? '' : words.inTurn(wanted.turn),
            wanted.alternates.length === 0 ? '' : words.alternates(wanted.alternates.join(', ')),
          ]
            .filter((text) => text !== '')
            .join(' · ')}
        </small>
      </div>
    </div>
  );
}

function SweepBar({ line, desk }: { readonly line: string; readonly desk: DeskRun }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(loadWords);
  const isSweeping = useComputed(() => desk.desk.value.mode === 'sweep').value;
  const sweep = floor.sweeps.get(line);
  if (!sweep) return null;
  const progress = setupProgress(floor, line);
  const missing = sweepMissing(progress, sweep);
  const all = progress.slots.filter((each) => each.loaded !== null).length;
  return (
    <>
      <span class="chip" data-testid="sweep-progress">
        ◉ {words.sweepRunning(formatCount(all - missing.length), formatCount(all))}
      </span>
      {missing.length > 0 && (
        <span class="chip care code">
          {missing.slice(0, 3).join(' · ')}
          {missing.length > 3 ? '…' : ''}
        </span>
      )}
      {/* After a reload, or begun on another tablet: scans here are no part of the sweep until a person says so. */}
      {!isSweeping && (
        <Button
          tone="act"
          testId="sweep-resume"
          onPress={() => {
            desk.desk.value = { ...desk.desk.peek(), mode: 'sweep' };
          }}
        >
          <Icon name="search" /> {words.sweepResume}
        </Button>
      )}
      <Button
        testId="sweep-end"
        onPress={async () => {
          const [entry] = await app.write([
            {
              kind: 'sweep.ended',
              payload: { line, sweep: sweep.sweep, seen: all - missing.length, missing: [...missing] },
            },
          ]);
          desk.desk.value = { ...desk.desk.peek(), mode: 'work' };
          app.notice.value =
            missing.length === 0
              ? { tone: 'go', text: words.sweepAll }
              : {
                  tone: 'care',
                  text: `${words.sweepMissing(missing.length)}: ${missing.slice(0, 6).join(', ')}${missing.length > 6 ? '…' : ''}`,
                  act: { label: say(loadWords).list, run: () => goTo('log', entry ? entryId(entry) : '') },
                };
        }}
      >
        {words.sweepEnd}
      </Button>
    </>
  );
}

function NoSetup() {
  const words = say(lineWords).noSetup;
  return (
    <div class="empty">
      <Icon name="load" size={56} />
      <h2>{words.title}</h2>
      <p>{words.help}</p>
      <div class="row">
        <a class="button act large" href={address('plant', 'setups')}>
          {words.choose}
        </a>
        <a class="button large" href={address('plant', 'sheet')}>
          {words.bring}
        </a>
      </div>
    </div>
  );
}
