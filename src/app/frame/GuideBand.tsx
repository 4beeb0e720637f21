// The guide in the band of practice: what was seen last, the one step that is next, and the way to it. It is left by a button and taken
// up at the same step.

import { useEffect, useState } from 'preact/hooks';
import type { Entry } from '../../../shared/log/entry.ts';
import { useApp } from '../app.ts';
import { address, place } from '../router.ts';
import { Button } from '../ui/Button.tsx';
import { Icon } from '../ui/Icon.tsx';
import type { Words } from '../words/areas.ts';
import { guideWords } from '../words/guide.ts';
import { lineWords } from '../words/line.ts';
import { logWords } from '../words/log.ts';
import { plantWords } from '../words/plant.ts';
import { practiceWords } from '../words/practice.ts';
import { sheetWords } from '../words/sheet.ts';
import { say } from '../words/words.ts';
import {
  type Guide,
  type GuideStep,
  goOnAt,
  guidePlaces,
  guideSteps,
  type SeenStep,
  seeEntry,
  seenBefore,
  seePlace,
} from './guide-model.ts';
import { followGuide, keepStepsDone, stepsDone } from './guide-progress.ts';
import './guide.css';

/** So many of the newest entries are asked for what is so already. */
const LOOKED_BACK = 200;

interface Seen {
  readonly step: GuideStep;
  readonly about: string;
}

/**
 * Follows what is done in practice; the step of the guide, what was seen last, and how one is passed over. All that is the person's:
 * whoever shows the band gives it a key of person and guide.
 */
function useGuide(guide: Guide) {
  const app = useApp();
  const person = app.person.value?.person ?? '';
  const [at, setAt] = useState(() => goOnAt(guide, stepsDone(person, guide), app.store.floor()));
  const [seen, setSeen] = useState<Seen | null>(null);
  const [isOther, setOther] = useState(false);
  const step = guideSteps[guide][at] ?? null;
  const advance = () => {
    keepStepsDone(person, guide, at + 1);
    setAt(at + 1);
    setOther(false);
  };
  const take = (found: SeenStep | null) => {
    if (found?.ends && step !== null) {
      setSeen({ step, about: found.about });
      advance();
    } else if (found !== null) setOther(true);
    return found?.ends === true;
  };
  useEffect(() => {
    if (step === null) return undefined;
    let isOver = false;
    const look = (entries: readonly Entry[]) => {
      for (const entry of entries) if (!isOver && take(seeEntry(step, entry))) isOver = true;
    };
    const stop = app.store.onChange(look);
    // Only a warning may have been before; what else is so already stands on the floor.
    const before = step === 'warning' ? app.store.newest(LOOKED_BACK) : Promise.resolve([]);
    void before.then((newest) => {
      if (isOver) return;
      isOver = take(seenBefore(step, app.store.floor(), app.line.peek() ?? '', newest));
    });
    return () => {
      isOver = true;
      stop();
    };
  }, [step]);
  useEffect(() => {
    if (step !== null) take(seePlace(step, place.value));
  }, [step, place.value]);
  return { at, step, seen, isOther, skip: advance };
}

export function GuideBand({ guide }: { readonly guide: Guide }) {
  const words = say(guideWords);
  const { at, step, seen, isOther, skip } = useGuide(guide);
  const of = guideSteps[guide].length;
  return (
    <div class="guide" data-testid="guide" data-step={step ?? 'over'}>
      <p role="status">
        {seen !== null && (
          <span class="seen">
            <Icon name="check" size={18} /> {saySeen(words, seen)}{' '}
          </span>
        )}
        {isOther && <span class="seen">{words.still} </span>}
        {step === null ? (
          <b>{words.over}</b>
        ) : (
          <>
            <b>{words.step(at + 1, of)}</b> {sayStep(words, step)}
          </>
        )}
      </p>
      {step !== null && (
        <>
          <a
            class="button"
            href={address(guidePlaces[step].screen, ...guidePlaces[step].rest)}
            data-testid="guide-go"
          >
            {words.go}
          </a>
          <Button onPress={skip} testId="guide-skip" tone="quiet">
            {words.skip}
          </Button>
        </>
      )}
      <Button onPress={() => followGuide(null)} testId="guide-leave" tone="quiet">
        {words.leave}
      </Button>
    </div>
  );
}

/** What is to be done, with the words of the buttons that it is done by. */
function sayStep({ steps, example }: Words<'guide'>, step: GuideStep): string {
  const { groups } = say(practiceWords);
  const { tiles } = say(plantWords);
  switch (step) {
    case 'wrong':
      return steps.wrong.ask(groups.wrong);
    case 'splice':
      return steps.splice.ask(groups.splice);
    case 'answer':
      return steps.answer.ask(say(lineWords).acknowledge);
    case 'export':
      return steps.export.ask(say(logWords).exportTitle);
    case 'open':
      return steps.open.ask(tiles.sheet.title);
    case 'take':
      return steps.take.ask(example, say(sheetWords).take);
    case 'look':
      return steps.look.ask(tiles.setups.title);
    default:
      return steps[step].ask;
  }
}

function saySeen({ steps }: Words<'guide'>, { step, about }: Seen): string {
  if (step === 'open') return steps.open.seen(say(plantWords).tiles.sheet.title);
  const { seen } = steps[step];
  return typeof seen === 'string' ? seen : seen(about);
}
