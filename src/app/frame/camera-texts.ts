// Codes, labels and lists of things in words, for the camera's view.

import type { DeskView } from '../../../shared/desk/model.ts';
import type { ScannedCode } from '../../../shared/labels/scan.ts';
import { cameraWords } from '../words/camera.ts';
import { formatCount, say } from '../words/words.ts';
import { type LabelTold, nameOfCode, toldByCodes, type wantedThings } from './camera-task.ts';

/** What is written on a code in the picture; null where nobody here knows it. `company`: the codes beside it. */
export function codeText(
  code: ScannedCode,
  view: DeskView | null,
  company: readonly ScannedCode[],
): string | null {
  const { names } = say(cameraWords);
  const name = view === null ? null : nameOfCode(code, view, company);
  if (name === null) return null;
  if (name.is === 'quantity') return formatCount(name.quantity);
  return name.is === 'slot' || name.is === 'feeder' || name.is === 'cart'
    ? `${names[name.is]} ${name.text}`
    : names[name.is];
}

/** What tells a label from its neighbour: its part, else the first that can be read of it. */
export function labelText(codes: readonly ScannedCode[], view: DeskView | null): string {
  const part = view === null ? null : toldByCodes(codes, view)?.part;
  if (part) return part;
  const names = codes.map((code) => (view === null ? null : nameOfCode(code, view, codes)));
  const told = names.find((name) => name !== null && 'text' in name);
  if (told && 'text' in told) return told.text;
  return (codes[0]?.text ?? '').replace(/[\u0000-\u001f]+/g, ' ').slice(0, 28);
}

/** What a label still has to say, in words. */
export function missingText(missing: LabelTold['missing']): string {
  const { facts } = say(cameraWords);
  return missing.map((piece) => facts[piece].toLocaleLowerCase()).join(', ');
}

/** What the task still wants, in words. */
export function wantedText(things: ReturnType<typeof wantedThings>): string {
  const words = say(cameraWords);
  return things.length === 0
    ? words.wantedAny
    : words.wanted(things.map((thing) => words.things[thing]).join(', '));
}
