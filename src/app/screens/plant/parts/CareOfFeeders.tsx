// Care of feeders: after how many placements each type is due, and which feeders are due or set aside.

import { useState } from 'preact/hooks';
import { isCareDue } from '../../../../../shared/floor/fold-feeders.ts';
import type { FloorState } from '../../../../../shared/floor/state.ts';
import { useApp, useFloor } from '../../../app.ts';
import { Cared, FeederFacts } from '../../../frame/FeederDialog.tsx';
import { useRefusal } from '../../../may.ts';
import { Button } from '../../../ui/Button.tsx';
import { Field } from '../../../ui/Field.tsx';
import { packWords } from '../../../words/packs.ts';
import { say } from '../../../words/words.ts';

/** Feeders that are due or set aside, by name. */
function toSeeTo(floor: FloorState): readonly string[] {
  const known = new Set([
    ...floor.feeders.keys(),
    ...floor.setAside.keys(),
    ...floor.work.keys(),
    ...[...floor.slots.values()].flatMap(({ feeder }) => feeder ?? []),
  ]);
  return [...known]
    .filter((feeder) => floor.setAside.has(feeder) || isCareDue(floor, feeder))
    .sort((a, b) => a.localeCompare(b, 'en', { numeric: true }));
}

export function CareOfFeeders() {
  const floor = useFloor();
  const words = say(packWords).feeder;
  const feeders = toSeeTo(floor);
  return (
    <section class="stack" data-testid="feeder-care-list">
      <h2>{words.careTitle}</h2>
      <Figures />
      <h3>{words.careList}</h3>
      {feeders.length === 0 && <p class="empty">{words.careNone}</p>}
      {feeders.map((feeder) => {
        const on = [...floor.slots.values()].find((slot) => slot.feeder === feeder) ?? null;
        return (
          <div class="card stack" key={feeder} data-testid={`care-${feeder}`}>
            <b class="code">{feeder}</b>
            {on !== null && <p class="soft">{words.isOn(feeder, on.slot)}</p>}
            <FeederFacts feeder={feeder} loaded={on} />
            <div>
              <Cared feeder={feeder} />
            </div>
          </div>
        );
      })}
    </section>
  );
}

/** The plant's figures: one for each type of feeder, one for every other. */
function Figures() {
  const app = useApp();
  const floor = useFloor();
  const words = say(packWords).feeder;
  const refusal = useRefusal('define-line');
  const types = ['', ...floor.feederTypes.keys()];
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const textOf = (type: string) => typed[type] ?? String(floor.careRules.get(type) ?? '');
  const isRight = (text: string) => text.trim() === '' || /^[1-9]\d{0,8}$/.test(text.trim());
  const changed = types.filter((type) => textOf(type).trim() !== String(floor.careRules.get(type) ?? ''));
  const isWrong = types.some((type) => !isRight(textOf(type)));
  return (
    <div class="card form">
      <p class="soft">{words.careHelp}</p>
      {types.map((type) => (
        <Field
          key={type}
          label={type === '' ? words.careEvery : type}
          testId={type === '' ? 'care-every' : `care-type-${type}`}
          inputMode="numeric"
          autocomplete="off"
          value={textOf(type)}
          isWrong={!isRight(textOf(type))}
          onInput={(text) => setTyped({ ...typed, [type]: text })}
        />
      ))}
      <Button
        large
        testId="care-save"
        disabledReason={refusal ?? (isWrong || changed.length === 0 ? words.careWrong : null)}
        onPress={() => {
          app.record(
            changed.map((type) => {
              const text = textOf(type).trim();
              const placements = text === '' ? null : Number(text);
              return {
                kind: 'feeder.care-ruled' as const,
                payload: { type: type === '' ? null : type, placements },
              };
            }),
            { notice: { tone: 'plain', text: words.careSaved } },
          );
          setTyped({});
        }}
      >
        {words.careSave}
      </Button>
    </div>
  );
}
