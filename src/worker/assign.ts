// The worker that proposes slots: a question in, a proposal out. The page ends the worker to give up.

import { proposeSlots } from '../../shared/assign/propose.ts';
import type { AssignReply, AssignRequest } from './assign-protocol.ts';

const port = self as unknown as {
  postMessage(reply: AssignReply): void;
  onmessage: ((event: MessageEvent<AssignRequest>) => void) | null;
}; // the same two members in a page and in a worker

port.onmessage = ({ data: { id, question } }) => port.postMessage({ id, parts: proposeSlots(question) });
