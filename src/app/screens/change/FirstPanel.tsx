// The first panel: critical parts and values to measure, parts with a way round to look at. Each answer is an entry; the release
// counts what is still open.

import { useState } from 'preact/hooks';
import { otherChecks, type PanelCheck, panelChecks } from '../../../../shared/changeover/first-panel.ts';
import type { Changeover } from '../../../../shared/floor/state.ts';
import { useApp, useFloor } from '../../app.ts';
import { useRefusal } from '../../may.ts';
import { Button } from '../../ui/Button.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { verdictTones } from '../../ui/Shape.tsx';
import { firstPanelWords } from '../../words/first-panel.ts';
import { formatCount, formatFigure, say } from '../../words/words.ts';
import { MeasureDialog } from './MeasureDialog.tsx';

const marks = { open: '○', accepted: '✓', held: '?', refused: '✕' } as const;
const tones = { open: '', ...verdictTones } as const;

export function FirstPanel({ changeover }: { readonly changeover: Changeover }) {
  const floor = useFloor();
  const words = say(firstPanelWords);
  const [measuring, setMeasuring] = useState<PanelCheck | null>(null);
  const setup = floor.setups.get(changeover.setup);
  if (!setup) return null;
  const checks = panelChecks(setup, changeover);
  const groups = [
    { title: words.critical, checks: checks.filter((each) => each.isCritical || each.hasValue) },
    { title: words.orientation, checks: checks.filter((each) => !each.isCritical && !each.hasValue) },
  ];
  const others = otherChecks(setup, changeover);
  return (
    <section class="stack" data-testid="first-panel">
      <p>{checks.length === 0 ? words.none : words.intro}</p>
      <p class="caution">
        <Icon name="warn" />
        {words.caution}
      </p>
      {groups
        .filter((group) => group.checks.length > 0)
        .map((group) => {
          const open = group.checks.filter((each) => each.state !== 'accepted').length;
          return (
            <div key={group.title}>
              <div class="row">
                <h2>{group.title}</h2>
                <span class={`chip ${open === 0 ? 'go' : ''}`}>
                  {open === 0 ? `✓ ${words.all}` : words.left(open)}
                </span>
              </div>
              {group.checks.map((check) => (
                <CheckRow
                  key={check.wanted.slot}
                  check={check}
                  changeover={changeover}
                  onMeasure={() => setMeasuring(check)}
                />
              ))}
            </div>
          );
        })}
      {others.length > 0 && (
        <SelectField
          more="other-part"
          label={words.other}
          testId="measure-other"
          value=""
          onChoose={(text) => setMeasuring(others.find((each) => each.wanted.slot === text) ?? null)}
        >
          <option value="">…</option>
          {others.map(({ wanted }) => (
            <option key={wanted.slot} value={wanted.slot}>
              {wanted.slot} · {wanted.part}
            </option>
          ))}
        </SelectField>
      )}
      {measuring !== null && (
        <MeasureDialog check={measuring} changeover={changeover} onClose={() => setMeasuring(null)} />
      )}
    </section>
  );
}

interface CheckRowProps {
  readonly check: PanelCheck;
  readonly changeover: Changeover;
  readonly onMeasure: () => void;
}

function CheckRow({ check, changeover, onMeasure }: CheckRowProps) {
  const app = useApp();
  const words = say(firstPanelWords);
  const refusal = useRefusal('tick-checklist');
  const { wanted, measured, looked, state } = check;
  const look = (right: boolean) => {
    const payload = {
      changeover: changeover.changeover,
      line: changeover.line,
      setup: changeover.setup,
      slot: wanted.slot,
      part: wanted.part,
      right,
      note: '',
    };
    app.record([{ kind: 'panel.looked', payload }]);
  };
  return (
    <div class="listed" data-testid={`check-${wanted.slot}`} data-state={state}>
      <span class="grow checked-part">
        <span>
          <b class="code" translate={false}>
            {wanted.part}
          </b>{' '}
          <span class="code soft" translate={false}>
            {wanted.slot}
          </span>
        </span>
        <span class="soft">
          {[
            check.isCritical ? words.marks.critical : '',
            words.marks.perPanel(formatCount(wanted.perPanel)),
            wanted.note ?? '',
          ]
            .filter((text) => text !== '')
            .join(' · ')}
        </span>
        {wanted.polarity !== undefined && <span>↻ {wanted.polarity}</span>}
        {measured !== null && (
          <span>
            {words.result(formatFigure(measured.quantity), formatFigure(measured.uncertainty), measured.unit)}
            {' · '}
            {words.limits(formatFigure(measured.least), formatFigure(measured.most), measured.unit)}
          </span>
        )}
      </span>
      <span class={`chip ${tones[state]}`}>
        {marks[state]} {words.states[state]}
      </span>
      {(check.isCritical || check.hasValue) && (
        <Button disabledReason={refusal} onPress={onMeasure} testId={`measure-${wanted.slot}`}>
          {measured === null ? words.measure : words.again}
        </Button>
      )}
      {looked === null ? (
        <>
          <Button disabledReason={refusal} onPress={() => look(true)} testId={`right-${wanted.slot}`}>
            ✓ {words.right}
          </Button>
          <Button disabledReason={refusal} onPress={() => look(false)} testId={`wrong-${wanted.slot}`}>
            ✕ {words.wrong}
          </Button>
        </>
      ) : (
        <Button tone="quiet" disabledReason={refusal} onPress={() => look(!looked.right)}>
          {looked.right ? `✕ ${words.wrong}` : `✓ ${words.right}`}
        </Button>
      )}
    </div>
  );
}
