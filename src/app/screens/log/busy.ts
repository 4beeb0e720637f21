// Something that takes a while, from its beginning to its end: what it is at is told as long as it goes on, also where it fails.

/** Does the work; `onBusy` is told its text, and null once it is over; `onFailed` where it was not done. Never rejects. */
export async function whileBusy(
  work: () => Promise<void>,
  told: {
    readonly text: string;
    readonly onBusy: (text: string | null) => void;
    readonly onFailed: () => void;
  },
): Promise<void> {
  told.onBusy(told.text);
  try {
    await work();
  } catch {
    told.onFailed();
  } finally {
    told.onBusy(null);
  }
}
