import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
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

/** Built on the platform's own modal element: focus stays inside, Escape closes. */
export function Dialog({ title, children, onClose, wide = false, tone = 'plain' }: DialogProps) {
  const element = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const dialog = element.current;
    if (dialog && !dialog.open) dialog.showModal();
    dialog?.focus();
    // The platform goes to the first field of a modal, wherever it stands; people begin at the title.
    if (dialog) dialog.scrollTop = 0;
    return () => dialog?.close();
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
    >
      <PracticeMark />
      <h2>{title}</h2>
      {children}
    </dialog>
  );
}
