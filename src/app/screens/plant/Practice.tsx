// Practising: how it begins, and, on the practice floor, labels on the screen instead of reels in the hand. A tap is a scan.

import { useEffect, useState } from 'preact/hooks';
import { useApp, useFloor } from '../../app.ts';
import { type PracticeLabel as DemoLabel, practiceLabels as demoLabels } from '../../demo/demo.ts';
import { deviceClock } from '../../device/clock.ts';
import { followGuide } from '../../frame/guide-progress.ts';
import { beginPractice, isPractised } from '../../practice.ts';
import { Button } from '../../ui/Button.tsx';
import { code128Bars } from '../../ui/code128.ts';
import { Icon } from '../../ui/Icon.tsx';
import { visible } from '../../ui/visible.ts';
import { practiceWords } from '../../words/practice.ts';
import { say } from '../../words/words.ts';
import { Guides } from './Guides.tsx';
import { type PracticeLabel, practiceLabels } from './practice-labels.ts';

export function Practice() {
  const app = useApp();
  return app.practice ? <Labels /> : <Begin />;
}

function Begin() {
  const app = useApp();
  const floor = useFloor();
  const words = say(practiceWords);
  const begin = async () => {
    if (await isPractised()) app.notice.value = { tone: 'care', text: words.taken };
    else {
      app.preferences.value = { ...app.preferences.value, practised: true };
      beginPractice(deviceClock.nowMs());
    }
  };
  return (
    <div class="stack">
      <section class="card stack">
        <h2>{words.title}</h2>
        <p>{floor.lines.size > 0 ? words.about : words.aboutNew}</p>
        {floor.lines.size > 0 && <p>{words.warns}</p>}
        <div>
          <Button
            tone="act"
            large
            testId="practice-start"
            onPress={() => {
              followGuide(null);
              void begin();
            }}
          >
            <Icon name="load" /> {words.start}
          </Button>
        </div>
      </section>
      <Guides onBegin={() => void begin()} />
    </div>
  );
}

const groups = ['load', 'splice', 'wrong', 'panels'] as const;

function Labels() {
  const app = useApp();
  const floor = useFloor();
  const words = say(practiceWords);
  const real = app.practice?.real ?? app;
  const [more, setMore] = useState<readonly DemoLabel[]>([]);
  useEffect(() => {
    demoLabels(real).then(setMore, () => undefined); // an unreadable cache shows no labels of the demo
  }, []);
  const labels = practiceLabels(floor, app.line.value ?? '');
  const demoGroups = [...new Set(more.map((label) => label.group))];
  if (labels.length === 0 && more.length === 0) return <p class="empty">{words.nothing}</p>;
  return (
    <div class="stack">
      <Guides onBegin={() => undefined} />
      <div class="row">
        <p class="grow soft">{words.labelsHelp}</p>
        <Button onPress={() => window.print()} testId="practice-print">
          <Icon name="print" /> {words.print}
        </Button>
      </div>
      {groups
        .filter((group) => labels.some((label) => label.group === group))
        .map((group) => (
          <section key={group} class="stack">
            <h2>{words.groups[group]}</h2>
            <div class="label-grid">
              {labels
                .filter((label) => label.group === group)
                .map((label) => (
                  <Card key={label.id} id={label.id} codes={label.codes.map(plainCode)} {...wordsOf(label)} />
                ))}
            </div>
          </section>
        ))}
      {demoGroups.map((group) => (
        <section key={group} class="stack">
          <h2>{group}</h2>
          <div class="label-grid">
            {more
              .filter((label) => label.group === group)
              .map((label) => (
                <Card key={label.id} {...label} id={`demo-${label.id}`} />
              ))}
          </div>
        </section>
      ))}
    </div>
  );
}

const plainCode = (text: string) => ({ text, format: 'Code128' });

function wordsOf({ what, slot, part, other, codes }: PracticeLabel): { title: string; hint: string } {
  const words = say(practiceWords);
  switch (what) {
    case 'slot':
      return { title: words.slot(slot ?? ''), hint: words.wants(part ?? '') };
    case 'right':
      return { title: part ?? '', hint: words.right(slot ?? '') };
    case 'wrong': {
      const hint = other === null ? words.foreign(slot ?? '') : words.wrong(other, slot ?? '');
      return { title: part ?? '', hint };
    }
    case 'bare':
      return { title: part ?? '', hint: words.bare(slot ?? '') };
    case 'feeder':
      return { title: codes[0] ?? '', hint: words.free(slot ?? '') };
    case 'panel':
      return { title: codes[0] ?? '', hint: words.panel };
  }
}

interface CardProps {
  readonly id: string;
  readonly title: string;
  readonly hint: string;
  readonly codes: readonly { readonly text: string; readonly format: string | null }[];
}

/** A label: its tap is a scan of all its codes; on paper each code stands as bars. */
function Card({ id, title, hint, codes }: CardProps) {
  const app = useApp();
  return (
    <button
      type="button"
      class="label-card"
      data-testid={`label-${id}`}
      onClick={() => {
        app.scans.push({
          codes: codes.map((code) => ({ ...code, symbologyId: null })),
          via: 'practice',
          atMs: app.clock.nowMs(),
        });
      }}
    >
      <b>{title}</b>
      <span>{hint}</span>
      {codes.map(({ text, format }) =>
        format === 'Code128' && isAscii(text) ? (
          <Bars key={text} text={text} />
        ) : (
          <code key={text}>{visible(text).slice(0, 60)}</code>
        ),
      )}
    </button>
  );
}

/** A part number may hold other letters; bars cannot. */
const isAscii = (text: string) => !/[^\x00-\x7e]/.test(text);

function Bars({ text }: { readonly text: string }) {
  const { bars, width } = code128Bars(text);
  return (
    <span class="label-bars">
      <svg viewBox={`0 0 ${width} 30`} preserveAspectRatio="none" aria-hidden="true">
        {bars.map((bar) => (
          <rect key={bar.from} x={bar.from} y="0" width={bar.width} height="30" />
        ))}
      </svg>
      <code>{text}</code>
    </span>
  );
}
