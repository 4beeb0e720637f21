// What is open or wrong, kind by kind, with the names of the first few: what a person must know before signing for it.

import { isWrong, type OpenItem } from '../../../../shared/changeover/open-work.ts';
import type { ChecklistTemplate } from '../../../../shared/floor/checklist.ts';
import { openWorkWords } from '../../words/open-work.ts';
import { sayText } from '../../words/shipped-steps.ts';
import { say } from '../../words/words.ts';

/** Names said one by one; more are counted. */
const MOST_NAMES = 6;

interface OpenListProps {
  readonly items: readonly OpenItem[];
  /** Where the texts of open steps stand. */
  readonly template: ChecklistTemplate | null;
}

export function OpenList({ items, template }: OpenListProps) {
  const words = say(openWorkWords);
  const kinds = [...new Set(items.map(({ what }) => what))];
  return (
    <ul class="open-work">
      {kinds.map((what) => {
        const these = items.filter((item) => item.what === what);
        const names = these.map((item) => nameOf(item, template)).filter((name) => name !== '');
        const tone = isWrong({ what }) ? 'stop' : 'care';
        return (
          <li key={what} data-testid={`open-${what}`}>
            <b class={`said ${tone}`}>
              {tone === 'stop' ? '✕' : '○'} {words.said[what](these.length)}
            </b>
            {names.length > 0 && (
              <ul class={what === 'step' ? 'lines' : 'names'}>
                {names.slice(0, MOST_NAMES).map((name, at) => (
                  <li key={`${name}${at}`}>{name}</li>
                ))}
                {names.length > MOST_NAMES && <li>{words.more(names.length - MOST_NAMES)}</li>}
              </ul>
            )}
          </li>
        );
      })}
    </ul>
  );
}

function nameOf({ slot, part, reel, step }: OpenItem, template: ChecklistTemplate | null): string {
  const words = say(openWorkWords);
  if (step !== null) {
    const asked = template?.steps.find((each) => each.step === step);
    return asked ? sayText(asked.text) : '';
  }
  if (reel !== null) return slot === null ? words.reel(reel) : words.reelOn(reel, slot);
  return part !== null && slot !== null ? words.on(part, slot) : (slot ?? part ?? '');
}
