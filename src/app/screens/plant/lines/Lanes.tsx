// The lanes of a line's conveyor, told by their names: each is a line of its own on every screen, with the same machines.

import { Button } from '../../../ui/Button.tsx';
import { Field } from '../../../ui/Field.tsx';
import { Icon } from '../../../ui/Icon.tsx';
import { lineListWords } from '../../../words/lines.ts';
import { say } from '../../../words/words.ts';
import { type LineForm, MOST_LANES, withLane, withoutLane } from './model.ts';

export function Lanes(props: {
  readonly form: LineForm;
  /** What keeps the last lane, in words; null where it may go. */
  readonly held: string | null;
  readonly onForm: (form: LineForm) => void;
}) {
  const { form, held, onForm } = props;
  const words = say(lineListWords).lanes;
  const { lanes, name } = form;
  const put = (next: readonly string[]) => onForm({ ...form, lanes: next });
  return (
    <section class="card stack" data-testid="line-lanes">
      <h2>{words.title}</h2>
      <p class="soft">{words.help}</p>
      {lanes.length > 0 && (
        <div class="form">
          {[name, ...lanes].map((each, at) => (
            <Field
              key={at}
              label={words.name(at + 1)}
              testId={`lane-name-${at + 1}`}
              autocomplete="off"
              maxLength={60}
              value={each}
              onInput={(text) =>
                at === 0
                  ? onForm({ ...form, name: text })
                  : put(lanes.map((old, index) => (index === at - 1 ? text : old)))
              }
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
            label={words.removeOf(lanes.length + 1)}
            disabledReason={held}
            onPress={() => onForm(withoutLane(form, words.called))}
          >
            <Icon name="cross" /> {words.removeOf(lanes.length + 1)}
          </Button>
        )}
      </div>
    </section>
  );
}
