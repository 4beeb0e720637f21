// Takes every step of what the app does in steps.

/** What the last step gives. */
export function toTheEnd<Given>(steps: Iterator<undefined, Given>): Given {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}
