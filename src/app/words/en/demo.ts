export const words = {
  stale: 'This practice is from an earlier start of the demo.',
  fresh: 'Start over',
  failed: (why: string) => `The demo plant could not be loaded: ${why}`,
} as const;
