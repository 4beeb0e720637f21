import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import './dialog.css';

/** A question over the screen. One at a time; nothing in it has the focus at first but the dialog itself. */
export interface DialogProps {
  readonly title: string;
  readonly children: ComponentChildren;
  readonly onClose: () => void;
  readonly wide?: boolean;
  readonly tone?: 'plain' | 'care' | 'stop';
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
    if (!dialog.open) dialog.showModal();
    if (!isInHand) {
      dialog.focus();
      // The platform goes to the first field of a modal, wherever it stands; people begin at the title.
      dialog.scrollTop = 0;
    }
    return () => dialog.close();
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
      <h2>{title}</h2>
      {children}
    </dialog>
  );
}
