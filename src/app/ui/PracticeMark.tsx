// The mark of practice on whatever lies over the screen: a dialog, a verdict. Word, shape and hatching, never colour alone.

import { signal } from '@preact/signals';
import { practiceWords } from '../words/practice.ts';
import { say } from '../words/words.ts';
import './practice.css';

/** Set while this window practises; `told`: the loudest warning of the real line, null where none is open. */
export const practiceMark = signal<{ readonly told: string | null } | null>(null);

/** Nothing on the real floor. `brief`: the word alone, where what the real line warns of stands in sight already. */
export function PracticeMark({ brief = false }: { readonly brief?: boolean }) {
  const mark = practiceMark.value;
  if (!mark) return null;
  return (
    <p class="practice-mark" data-testid="practice-mark">
      <b>
        <PracticeShape /> {say(practiceWords).word}
      </b>
      {mark.told !== null && !brief && <span role="alert">{mark.told}</span>}
    </p>
  );
}

/** A pair of dashed rings: nothing whole is here. */
export function PracticeShape({ size = 22 }: { readonly size?: number }) {
  return (
    <svg width={size} height={size} viewBox="0 0 24 24" fill="none" stroke="currentColor" aria-hidden="true">
      <circle cx="12" cy="12" r="9.5" stroke-width="2.4" stroke-dasharray="4 3" />
      <path d="M12 6.5v11M6.5 12h11" stroke-width="2.4" stroke-dasharray="2.5 2" />
    </svg>
  );
}
