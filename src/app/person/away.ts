// Who went away and left something open; `left-alone.ts` finds it out, the frame asks.

import { signal } from '@preact/signals';
import type { Person } from '../../../shared/floor/state.ts';

/** Who was signed out with a dialog open under their hands: they go on with it, or it is closed. Null where nothing waits. */
export const away = signal<Person | null>(null);
