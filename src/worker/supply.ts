// The supply worker: a question in, its answer out, one after the other.

import { answerSupply, type SlotSupply, type SupplyQuestion } from '../../shared/forecast/supply.ts';

const port = self as unknown as {
  postMessage(answer: readonly SlotSupply[]): void;
  onmessage: ((event: MessageEvent<SupplyQuestion>) => void) | null;
}; // the same two members in a page and in a worker

port.onmessage = ({ data }) => port.postMessage(answerSupply(data));
