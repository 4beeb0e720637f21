// What readers of the screen are told of something that goes on: once. The sentence on the screen counts minutes and panels on, and said anew with
// each of them it would drown what is new.

import { useEffect, useRef, useState } from 'preact/hooks';
import { whenHeard } from './heard.ts';

/** Something to be told. */
export interface ToSay {
  /** The same for the same thing, however its sentence changes. */
  readonly id: string;
  /** Its sentence as it stands at that moment. */
  readonly say: () => string;
}

/** What is not known yet, each once; known from now on. */
export function takeFresh(all: readonly ToSay[], known: Set<string>): readonly ToSay[] {
  return all.filter(({ id }) => !known.has(id) && known.add(id));
}

/** `told`: what was told anywhere, where others tell of it too; without it, what is over is forgotten and told again when it comes back. */
export function SaidOnce({ all, told }: { readonly all: readonly ToSay[]; readonly told?: Set<string> }) {
  const own = useRef(new Set<string>());
  const known = told ?? own.current;
  const place = useRef<HTMLSpanElement>(null);
  const newest = useRef(all);
  newest.current = all;
  const [text, setText] = useState('');
  const ids = all.map(({ id }) => id).join('\n');
  // Into an element that is there already: one that comes with its text is not read by all readers.
  useEffect(() => {
    const now = new Set(ids.split('\n'));
    if (!told) for (const id of known) if (!now.has(id)) known.delete(id);
    const tell = () => {
      // As it stands when it is told: a question may have lain over it for minutes.
      const fresh = takeFresh(newest.current, known);
      setText(fresh.map(({ say }) => say()).join(' '));
    };
    return place.current ? whenHeard(place.current, tell) : undefined;
  }, [ids]);
  return (
    <span ref={place} class="hidden" role="alert">
      {text}
    </span>
  );
}
