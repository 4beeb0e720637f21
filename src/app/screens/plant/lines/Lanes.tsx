// The lanes of a line's conveyor, told by their names: each is a line of its own on every screen, with the same machines.

import { Button } from '../../../ui/Button.tsx';
import { Field } from '../../../ui/Field.tsx';
import { Icon } from '../../../ui/Icon.tsx';
import { lineListWords } from '../../../words/lines.ts';
import { say } from '../../../words/words.ts';
import { type LaneForm, type LineForm, MOST_LANES, withLane, withoutLane } from './model.ts';

export function Lanes(props: {
  readonly form: LineForm;
  /** What keeps the last lane, in words; null where it may go. */
  readonly held: string | null;
  readonly onForm: (form: LineForm) => void;
}) {
  const { form, held, onForm } = props;
  const words = say(lineListWords).lanes;
  const { lanes, name } = form;
  const rows: readonly LaneForm[] = [{ lane: 1, name }, ...lanes];
  const last = rows.at(-1)?.lane ?? 1;
  const call = (lane: number, text: string) =>
    onForm(
      lane === 1
        ? { ...form, name: text }
        : { ...form, lanes: lanes.map((each) => (each.lane === lane ? { lane, name: text } : each)) },
    );
  return (
    <section class="card stack" data-testid="line-lanes">
      <h2>{words.title}</h2>
      <p class="soft">{words.help}</p>
      {lanes.length > 0 && (
        <div class="form">
          {rows.map(({ lane, name: called }) => (
            <Field
              key={lane}
              label={words.name(lane)}
              testId={`lane-name-${lane}`}
              autocomplete="off"
              maxLength={60}
              value={called}
              onInput={(text) => call(lane, text)}
            />
          ))}
        </div>
      )}
      <div class="row">
        {lanes.length + 1 < MOST_LANES && (
          <Button testId="line-add-lane" onPress={() => onForm(withLane(form, words.called))}>
            {words.add}
          </Button>
        )}
        {lanes.length > 0 && (
          <Button
            tone="quiet"
            testId="line-remove-lane"
            label={words.removeOf(last)}
            disabledReason={held}
            onPress={() => onForm(withoutLane(form, words.called))}
          >
            <Icon name="cross" /> {words.removeOf(last)}
          </Button>
        )}
      </div>
    </section>
  );
}
