// The minutes that an order is computed with, each with where it comes from. Set by hand they stay; emptied, they are learnt again.

import { orderWords } from '../../words/order.ts';
import { formatCount, formatFigure, say } from '../../words/words.ts';
import { readFigure } from './model.ts';
import { type HandlingMinutes, type HandlingName, handlingNames } from './order-model.ts';

interface HandlingFormProps {
  readonly handling: Readonly<Record<HandlingName, HandlingMinutes>>;
  /** Null takes them back to what is learnt or usual. */
  readonly onSet: (name: HandlingName, minutes: number | null) => void;
}

export function HandlingForm({ handling, onSet }: HandlingFormProps) {
  const words = say(orderWords);
  return (
    <section class="stack" data-testid="handling">
      <h2>{words.handling}</h2>
      <div class="form">
        {handlingNames.map((name) => {
          const { minutes, from, learnt } = handling[name];
          // Two places are 0.6 s, finer than anybody sees.
          const shown = formatFigure(Math.round(minutes * 100) / 100);
          return (
            <label class="field" key={name}>
              <span>{words[name]}</span>
              <input
                data-typing
                data-testid={`handling-${name}`}
                inputMode="decimal"
                defaultValue={shown}
                key={`${from}${shown}`}
                onChange={(event) => {
                  const field = event.currentTarget;
                  const value = readFigure(field.value);
                  if (field.value.trim() === '') {
                    field.value = shown; // where nothing was set by hand, nothing changes and nothing is drawn again
                    onSet(name, null);
                  } else if (value !== null && value >= 0) onSet(name, value);
                  else field.value = shown;
                }}
              />
              <small data-testid={`handling-${name}-from`}>
                {learnt
                  ? words.learnt(learnt.changeovers, formatCount(learnt.handlings))
                  : from === 'hand'
                    ? words.byHand
                    : name === 'perChange'
                      ? words.usualOnly
                      : words.usual}
              </small>
            </label>
          );
        })}
      </div>
    </section>
  );
}
