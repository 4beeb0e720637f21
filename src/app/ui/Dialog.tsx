import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { PracticeMark } from './PracticeMark.tsx';
import './dialog.css';

/** A question over the screen. One at a time; nothing in it has the focus at first but the dialog itself. */
export interface DialogProps {
  readonly title: string;
  readonly children: ComponentChildren;
  readonly onClose: () => void;
  readonly wide?: boolean;
  readonly tone?: 'plain' | 'care' | 'stop';
}

/** Where a person at the keyboard is; null where nothing has the focus, as after a tap. */
function placeInHand(): HTMLElement | null {
  const active = document.activeElement;
  return active instanceof HTMLElement && active !== document.body ? active : null;
}

/** Takes a person back to where the dialog was opened from, or, where that is gone, to what was around it, unless something else took over. */
function goBack(before: HTMLElement, around: HTMLElement | null): void {
  if (placeInHand() !== null) return;
  if (before.isConnected) {
    before.focus();
    return;
  }
  if (!around?.isConnected) return;
  if (!around.hasAttribute('tabindex')) around.tabIndex = -1; // no stop of its own for Tab
  around.focus();
}

/** Built on the platform's own modal element: focus stays inside, Escape closes. */
export function Dialog({ title, children, onClose, wide = false, tone = 'plain' }: DialogProps) {
  const element = useRef<HTMLDialogElement>(null);
  // Before it is painted: a question that opens later than it is seen takes the focus from the field a person is in already,
  // and Escape meets nothing that could close.
  useLayoutEffect(() => {
    const dialog = element.current;
    if (!dialog) return undefined;
    const focused = document.activeElement;
    const isInHand = focused !== dialog && dialog.contains(focused);
    const before = isInHand ? null : placeInHand();
    const around = before?.parentElement ?? null;
    if (!dialog.open) dialog.showModal();
    if (!isInHand) {
      dialog.focus();
      // The platform goes to the first field of a modal, wherever it stands; people begin at the title.
      dialog.scrollTop = 0;
    }
    return () => {
      dialog.close();
      if (before !== null) setTimeout(() => goBack(before, around), 0); // after what the dialog changed is drawn
    };
  }, []);
  return (
    <dialog
      ref={element}
      class={`dialog ${tone}${wide ? ' wide' : ''}`}
      aria-label={title}
      tabIndex={-1}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
      // A second Escape in a row closes without asking: what is drawn follows what the platform did.
      onClose={(event) => {
        if (event.currentTarget.isConnected) onClose();
      }}
    >
      <PracticeMark />
      <h2>{title}</h2>
      {children}
    </dialog>
  );
}
