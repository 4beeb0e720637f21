// Readers of the screen are told nothing of what is shut off, as by a question or a verdict over it: told there, it would count as told and never be heard.

/** False where the element lies under an open question, or in a part of the page that is shut off. */
function isHeard(element: Element): boolean {
  const question = [...document.querySelectorAll('dialog[open]')].at(-1);
  return element.closest('[inert]') === null && (question === undefined || question.contains(element));
}

/** Tells at once where the element is heard, else as soon as it is. Answers how to give up. */
export function whenHeard(element: Element, tell: () => void): () => void {
  if (isHeard(element)) {
    tell();
    return () => undefined;
  }
  const watch = new MutationObserver(() => {
    if (!isHeard(element)) return;
    watch.disconnect();
    tell();
  });
  watch.observe(document.body, {
    subtree: true,
    childList: true,
    attributes: true,
    attributeFilter: ['inert', 'open'],
  });
  return () => watch.disconnect();
}
