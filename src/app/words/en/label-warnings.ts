import { formatLabelWarning, type LabelWarning } from '../../../../shared/labels/warnings.ts';

export const words = { say: (warning: LabelWarning) => formatLabelWarning(warning) } as const;
