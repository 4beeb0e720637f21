// What stands above every screen until it is settled. On a phone it is one line with its act; the rest is one touch away, so that two of
// them leave room for what they are about. It cannot be closed.

import type { ComponentChildren } from 'preact';
import { useRef, useState } from 'preact/hooks';
import { shellWords } from '../words/shell.ts';
import { say } from '../words/words.ts';
import { Icon } from './Icon.tsx';
import { SaidOnce } from './SaidOnce.tsx';

export interface BannerProps {
  readonly tone: 'care' | 'stop';
  readonly testId: string;
  /** What it is about and how it stands, for styles and tests. */
  readonly data?: Readonly<Record<`data-${string}`, string>>;
  readonly picture: ComponentChildren;
  /** The slot that it is about; null where it is about none. */
  readonly slot: string | null;
  /** What it is about and how grave that is: as long as this is the same, readers of the screen are told once. */
  readonly about: string;
  /** The whole of it in two or three words, for a phone. */
  readonly short: string;
  /** The whole sentence. */
  readonly children: ComponentChildren;
  /** What to do; null where nothing is to be tapped. */
  readonly act: ComponentChildren;
  /** What else may be done. */
  readonly rest?: ComponentChildren;
}

export function Banner(props: BannerProps) {
  const { tone, testId, picture, slot, about, short, act, rest } = props;
  const words = say(shellWords);
  const [isOpen, setOpen] = useState(false);
  const sentence = useRef<HTMLSpanElement>(null);
  const toSay = { id: about, say: () => `${slot ?? ''} ${sentence.current?.textContent}`.trim() };
  const name = slot === null ? short : `${slot} ${short}`;
  return (
    <div class={`banner ${tone}${isOpen ? ' open' : ''}`} data-testid={testId} {...props.data}>
      <SaidOnce all={[toSay]} />
      {picture}
      <span class="grow">
        {slot !== null && (
          <>
            <b class="code">{slot}</b>{' '}
          </>
        )}
        <span class="short">{short}</span>
        <span class="long" ref={sentence}>
          {props.children}
        </span>
      </span>
      {act}
      <span class="rest">{rest}</span>
      <button
        type="button"
        class="more"
        aria-expanded={isOpen}
        aria-label={isOpen ? words.lessOf(name) : words.detailsOf(name)}
        data-testid={`${testId}-more`}
        onClick={() => setOpen(!isOpen)}
      >
        <Icon name="right" />
      </button>
    </div>
  );
}
