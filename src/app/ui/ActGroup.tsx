// Buttons that cannot be pressed for one and the same reason: it is told once beside them, and pointed at when one of them is pressed.

import { type ComponentChildren, createContext } from 'preact';
import { useId, useState } from 'preact/hooks';
import { Icon } from './Icon.tsx';

/** What a button needs to know of the group that it stands in. */
export interface ToldOnce {
  readonly reason: string | null;
  /** The id of what says it. */
  readonly at: string;
  /** Draws a person's eyes and a reader's voice to the reason. */
  readonly point: () => void;
}

/** The group around a button; null where it stands alone and tells its reason itself. */
export const AroundButton = createContext<ToldOnce | null>(null);

interface ActGroupProps {
  /** Why its buttons cannot be pressed now; null where they can. */
  readonly reason: string | null;
  readonly testId?: string;
  readonly children: ComponentChildren;
}

export function ActGroup({ reason, testId = 'told-once', children }: ActGroupProps) {
  const at = useId();
  const [pointed, setPointed] = useState(0);
  return (
    <AroundButton.Provider value={{ reason, at, point: () => setPointed(pointed + 1) }}>
      {reason !== null && (
        <p
          id={at}
          key={pointed} // put in anew, so that a reader says it again
          class={`told-once${pointed > 0 ? ' pointed' : ''}`}
          data-testid={testId}
          {...(pointed > 0 ? { role: 'alert' as const } : {})}
        >
          <Icon name="person" size={18} /> {reason}
        </p>
      )}
      {children}
    </AroundButton.Provider>
  );
}
