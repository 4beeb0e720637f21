// Above every screen while practising: the word, how to end it, what the real line warns of meanwhile, and the guide that is followed.

import { type Practice, useApp } from '../app.ts';
import { Button } from '../ui/Button.tsx';
import { Icon } from '../ui/Icon.tsx';
import { PracticeShape, practiceMark } from '../ui/PracticeMark.tsx';
import { practiceWords } from '../words/practice.ts';
import { say } from '../words/words.ts';
import { guideNow } from './guide-progress.ts';
import { lazy } from './lazy.tsx';

const GuideBand = lazy(() => import('./GuideBand.tsx').then((module) => module.GuideBand));

export function PracticeBand({ practice }: { readonly practice: Practice }) {
  const words = say(practiceWords);
  const told = practiceMark.value?.told ?? null;
  const guide = guideNow.value;
  const person = useApp().person.value?.person ?? '';
  return (
    <section class="practice-band" aria-label={words.word} data-testid="practice-band">
      <b>
        <PracticeShape /> {words.word}
      </b>
      <span class="grow">{words.tells}</span>
      <Button onPress={() => void practice.end()} testId="practice-end">
        {words.end}
      </Button>
      {guide !== null && <GuideBand key={`${person} ${guide}`} guide={guide} />}
      {told !== null && (
        <p class="real" role="alert" data-testid="practice-real">
          <Icon name="bell" size={22} />
          <span>{told}</span>
        </p>
      )}
    </section>
  );
}
