// The worker that proposes slots: a question in, a proposal out. The page ends the worker to give up.

import { proposeTogether } from '../../shared/assign/together.ts';
import type { AssignReply, AssignRequest } from './assign-protocol.ts';

const port = self as unknown as {
  postMessage(reply: AssignReply): void;
  onmessage: ((event: MessageEvent<AssignRequest>) => void) | null;
}; // the same two members in a page and in a worker

port.onmessage = ({ data: { id, question, others } }) => {
  const { parts, ...place } = question;
  const answer = proposeTogether(place, [...others, parts]);
  port.postMessage({ id, parts: answer.at(-1) ?? [], others: answer.slice(0, -1) });
};
