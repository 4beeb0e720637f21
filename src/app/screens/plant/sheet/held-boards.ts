// Boards that wait beside the one in hand, as the proposal wants them: those of the same line. Pure.

import type { ProposedPart, WantedPart } from '../../../../../shared/assign/propose.ts';
import type { FloorState } from '../../../../../shared/floor/state.ts';
import { type BoardContext, planOf, proposalQuestion, slotRows } from './board-model.ts';
import type { HeldBoard } from './session.ts';

/** What a waiting board is called. */
export function heldName({ form, inHand }: HeldBoard): string {
  return form.product.trim() || (inHand.placements?.name ?? inHand.bill?.name ?? '');
}

/** A waiting board of a line, with the parts that it asks slots for. */
interface Waiting {
  readonly board: HeldBoard;
  readonly context: BoardContext;
  readonly parts: readonly WantedPart[];
}

/** The waiting boards of one line whose side is known, in their order. */
export function waitingOn(held: readonly HeldBoard[], floor: FloorState, line: string): readonly Waiting[] {
  return held.flatMap((board) => {
    const { side, product } = board.form;
    const parts = board.inHand.summary.board?.parts;
    if (board.form.line !== line || side === null || parts === undefined) return [];
    const plan = board.plan?.line === line && board.plan.side === side ? board.plan : null;
    const context: BoardContext = { floor, line, side, product, widths: board.widths, plan };
    const question = proposalQuestion(slotRows(parts, context), context);
    return question === null ? [] : [{ board, context, parts: question.parts }];
  });
}

/** The boards with what was found for those that were asked for. */
export function withPlans(
  held: readonly HeldBoard[],
  asked: readonly Waiting[],
  found: readonly (readonly ProposedPart[])[],
): readonly HeldBoard[] {
  return held.map((board) => {
    const at = asked.findIndex((each) => each.board === board);
    const [context, parts] = [asked[at]?.context, found[at]];
    return context === undefined || parts === undefined ? board : { ...board, plan: planOf(parts, context) };
  });
}
