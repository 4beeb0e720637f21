export const words = {
  title: 'Guided practice',
  about: 'One step at a time. Leave when you must: it goes on at the same step.',
  guides: {
    operator: 'Three reels, one of them wrong. A splice. A warning.',
    lead: 'A held reel to decide. An export.',
    engineer: 'A setup to import.',
  },
  start: 'Start the guide',
  goOn: (at: number, of: number) => `Go on at step ${at} of ${of}`,
  again: 'Start again at step 1',
  step: (at: number, of: number) => `Step ${at} of ${of}`,
  leave: 'Leave the guide',
  go: 'Show me where',
  skip: 'Skip this step',
  still: 'That was something else. The step is still open.',
  over: 'All steps are done. Go on as you like, or end practice.',
  noLead: 'This plant has no lead yet. Add one first.',
  example: 'Use the example sheet',
  steps: {
    first: {
      ask: 'Tap a slot label, then its right reel.',
      seen: (slot: string) => `${slot}: accepted.`,
    },
    wrong: {
      ask: (group: string) => `Tap a slot label, then a wrong reel. See “${group}”.`,
      seen: (slot: string) => `${slot}: refused. That reel must not go on.`,
    },
    second: {
      ask: 'Tap one more slot label, then its right reel.',
      seen: (slot: string) => `${slot}: accepted.`,
    },
    splice: {
      ask: (group: string) => `Splice: under “${group}”, tap a slot, then its reel.`,
      seen: (slot: string) => `${slot}: spliced.`,
    },
    run: {
      ask: 'Start the run on the line.',
      seen: 'The run has started.',
    },
    warning: {
      ask: 'Count panels on the line until a slot warns.',
      seen: (slot: string) => `${slot}: it warns.`,
    },
    answer: {
      ask: (act: string) => `Tap “${act}” beside the warning, or splice that slot.`,
      seen: 'The warning has its answer.',
    },
    hold: {
      ask: 'Tap a slot label, then the reel without a quantity.',
      seen: (slot: string) => `${slot}: held. A lead must decide.`,
    },
    clear: {
      ask: 'Decide as the lead: badge, PIN, reason.',
      seen: 'Decided, with your name in the log.',
    },
    export: {
      ask: (act: string) => `On the log, tap “${act}”, then CSV. In practice no file is saved.`,
      seen: 'Export asked for. No file was saved.',
    },
    open: {
      ask: (page: string) => `Open “${page}”.`,
      seen: (page: string) => `“${page}” is open.`,
    },
    take: {
      ask: (example: string, act: string) => `Tap “${example}”. Look at what changes, then tap “${act}”.`,
      seen: (product: string) => `${product}: imported.`,
    },
    look: {
      ask: (page: string) => `Find it under “${page}”.`,
      seen: 'It is on the list.',
    },
  },
} as const;
