import { type ComponentChildren, Fragment } from 'preact';
import { useApp } from '../app.ts';

/**
 * Draws what belongs to the line in hand, and draws it anew once another is taken in hand, also by a scan: what a person opened or typed is of
 * the one line, and must neither show nor write another's.
 */
export function OfLine({ children }: { readonly children: ComponentChildren }) {
  return <Fragment key={useApp().line.value}>{children}</Fragment>;
}
