// The walks worker: a question in, its answer out, one after the other.

import { answerWalks, type WalkAnswer, type WalkQuestion } from '../../shared/forecast/walks.ts';

const port = self as unknown as {
  postMessage(answer: WalkAnswer): void;
  onmessage: ((event: MessageEvent<WalkQuestion>) => void) | null;
}; // the same two members in a page and in a worker

port.onmessage = ({ data }) => port.postMessage(answerWalks(data));
