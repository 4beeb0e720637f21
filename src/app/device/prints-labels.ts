// Whether labels are on their way to the printer: what else prepares itself for paper keeps out of their way.

/** Set at the page's body meanwhile. */
const MARK = 'prints-labels';

/** True while pages of labels are laid out. */
export function printsLabels(): boolean {
  return document.body.classList.contains(MARK);
}

/** Labels are laid out, or are not any more. */
export function setPrintsLabels(prints: boolean): void {
  document.body.classList.toggle(MARK, prints);
}
