// A person made sure of in a dialog that is still open. Once the tablet was left alone nobody may act in that name any more, while
// what was typed meanwhile stays.

import { useState } from 'preact/hooks';
import type { Person } from '../../../shared/floor/state.ts';
import { useApp } from '../app.ts';
import type { Confirmed } from './ConfirmPerson.tsx';

/** Who was made sure of, and by whom; or who will be, by passkey. */
export interface Sure {
  readonly person: Person;
  readonly checked: Confirmed['checked'];
  /** No PIN was asked for: what is decided is signed by the person's passkey before it is written (`signed.ts`). */
  readonly byPasskey: boolean;
}

/** The person made sure of, null before and after the tablet was left alone; and how to set it. */
export function useConfirmed(): readonly [sure: Sure | null, setSure: (sure: Sure) => void] {
  const app = useApp();
  const [kept, setKept] = useState<{ readonly sure: Sure; readonly lapses: number } | null>(null);
  const lapses = app.lapses.value;
  const sure = kept !== null && kept.lapses === lapses ? kept.sure : null;
  return [sure, (next) => setKept({ sure: next, lapses: app.lapses.peek() })];
}
