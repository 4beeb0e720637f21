// What is asked of packages and feeders now and then: fetched with its first use, and kept with the rest for a tablet without a network.

import { lazy, lazyTask } from './lazy.tsx';

export const PackDialog = lazy(() => import('./PackDialog.tsx').then((part) => part.PackDialog));
export const FeederDialog = lazyTask(() => import('./FeederDialog.tsx').then((part) => part.FeederDialog));
