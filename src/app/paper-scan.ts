// A record on paper is scanned: its head of the plant's log is compared with what this tablet is shown. Two tablets that are shown two logs
// meet here. Method: only the head is looked at, by the key that the tablet knows since it joined; whoever wants the entry checked asks the
// command line.

import type { Scan } from '../../shared/labels/scan.ts';
import { parseEntryProof } from '../../shared/log/entry-proof.ts';
import type { App } from './app.ts';
import { recordWords } from './words/record.ts';
import { say } from './words/words.ts';

/** Takes the scan of a record; false for any other. */
export function takePaper(app: App, { codes }: Pick<Scan, 'codes'>): boolean {
  const read = codes.map(({ text }) => parseEntryProof(text)).find((one) => one !== null);
  if (!read || app.practice !== null) return false;
  const tell = async () => {
    const found = (await app.connection.peek()?.bring(read.note)) ?? 'not-checked';
    const tone =
      found === 'one-log' ? 'go' : found === 'no-server' || found === 'not-checked' ? 'plain' : 'stop';
    app.notice.value = { tone, text: say(recordWords).brought[found] };
  };
  void tell();
  return true;
}
