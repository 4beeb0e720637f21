// The guides of practice: which there are, how far whoever stands here is, and the way in. One that was left goes on at its step.

import { useState } from 'preact/hooks';
import type { Act } from '../../../../shared/floor/may.ts';
import { useApp, useFloor } from '../../app.ts';
import { type Guide, guideSteps, guides } from '../../frame/guide-model.ts';
import { followGuide, guideNow, keepStepsDone, stepsDone } from '../../frame/guide-progress.ts';
import { useRefusal } from '../../may.ts';
import { Button } from '../../ui/Button.tsx';
import { guideWords } from '../../words/guide.ts';
import { shellWords } from '../../words/shell.ts';
import { say } from '../../words/words.ts';

/** What each guide asks for that whoever goes through it must be allowed to do. */
const acts = {
  operator: 'verify-reel',
  lead: 'clear-hold',
  engineer: 'take-setup',
} as const satisfies Record<Guide, Act>;

/** `onBegin`: what follows the choice, as long as the window does not practise yet. */
export function Guides({ onBegin }: { readonly onBegin: () => void }) {
  const app = useApp();
  const words = say(guideWords);
  const person = app.person.value?.person ?? '';
  if (guideNow.value !== null && app.practice !== null) return null; // the band has it
  return (
    <section class="card stack" data-testid="guides">
      <h2>{words.title}</h2>
      <p>{words.about}</p>
      {guides.map((guide) => (
        <GuideRow key={`${person} ${guide}`} guide={guide} onBegin={onBegin} />
      ))}
    </section>
  );
}

function GuideRow({ guide, onBegin }: { readonly guide: Guide; readonly onBegin: () => void }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(guideWords);
  const person = app.person.value?.person ?? '';
  const [done, setDone] = useState(() => stepsDone(person, guide));
  const obstacle = useRefusal(acts[guide]);
  const of = guideSteps[guide].length;
  const begin = () => {
    followGuide(guide);
    onBegin();
  };
  const isBegun = done > 0 && done < of;
  return (
    <div class="row">
      <p class="grow">
        <b>{say(shellWords).roles[guide]}</b>
        <br />
        <span class="soft">{words.guides[guide]}</span>
      </p>
      {done > 0 && (
        <Button
          tone="quiet"
          testId={`guide-again-${guide}`}
          onPress={() => {
            keepStepsDone(person, guide, 0);
            setDone(0);
          }}
        >
          {words.again}
        </Button>
      )}
      {done < of && (
        <Button
          testId={`guide-start-${guide}`}
          disabledReason={guide === 'lead' && floor.people.size === 0 ? words.noLead : obstacle}
          onPress={begin}
        >
          {isBegun ? words.goOn(done + 1, of) : words.start}
        </Button>
      )}
    </div>
  );
}
