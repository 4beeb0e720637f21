import type { SheetProblem } from '../../../../shared/sheet/problems.ts';

export const words = { say: (problem: SheetProblem) => problem.message } as const;
