// Above every screen while practising: the word, how to end it, and what the real line warns of meanwhile.

import type { Practice } from '../app.ts';
import { Button } from '../ui/Button.tsx';
import { Icon } from '../ui/Icon.tsx';
import { PracticeShape, practiceMark } from '../ui/PracticeMark.tsx';
import { practiceWords } from '../words/practice.ts';
import { say } from '../words/words.ts';

export function PracticeBand({ practice }: { readonly practice: Practice }) {
  const words = say(practiceWords);
  const told = practiceMark.value?.told ?? null;
  return (
    <section class="practice-band" aria-label={words.word} data-testid="practice-band">
      <b>
        <PracticeShape /> {words.word}
      </b>
      <span class="grow">{words.tells}</span>
      <Button onPress={() => void practice.end()} testId="practice-end">
        {words.end}
      </Button>
      {told !== null && (
        <p class="real" role="alert" data-testid="practice-real">
          <Icon name="bell" size={22} />
          <span>{told}</span>
        </p>
      )}
    </section>
  );
}
