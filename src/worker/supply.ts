// The supply worker: a question in, its answer out, one after the other.

import { answerSupply, type SupplyAnswer, type SupplyQuestion } from '../../shared/forecast/supply.ts';

const port = self as unknown as {
  postMessage(answer: readonly SupplyAnswer[]): void;
  onmessage: ((event: MessageEvent<SupplyQuestion>) => void) | null;
}; // the same two members in a page and in a worker

port.onmessage = ({ data }) => port.postMessage(answerSupply(data));
