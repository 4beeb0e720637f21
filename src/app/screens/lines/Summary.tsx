// How many lines stand how, and which tablets nothing was heard of.

import { lineStates } from '../../../../shared/outlook/glance.ts';
import { stateLooks } from '../../frame/glance-text.ts';
import { Icon } from '../../ui/Icon.tsx';
import { linesWords } from '../../words/all-lines.ts';
import { formatCount, formatSpan, say } from '../../words/words.ts';
import type { QuietTablet } from './quiet-tablets.ts';
import type { SeenLine } from './use-lines.ts';

export function Summary({ lines }: { readonly lines: readonly SeenLine[] }) {
  const words = say(linesWords);
  return (
    <span class="sum">
      {lineStates.map((state) => {
        const count = lines.filter(({ glance }) => glance.state === state).length;
        if (count === 0) return null;
        const { icon, tone } = stateLooks[state];
        return (
          <span key={state} class={tone}>
            <Icon name={icon} size={22} /> {formatCount(count)} {words.states[state]}
          </span>
        );
      })}
    </span>
  );
}

/** Tablets that wrote nothing for a while; nothing where there are none. */
export function Quiet({ tablets }: { readonly tablets: readonly QuietTablet[] }) {
  const words = say(linesWords);
  if (tablets.length === 0) return null;
  const named = tablets.map(({ name, agoMs }) => words.quietFor(name, formatSpan(agoMs / 1000)));
  return <p class="quiet soft">{words.quiet(named.join(' · '))}</p>;
}
