export const words = {
  back: (span: string, clock: string) => `This tablet’s clock went back ${span} at ${clock}: correct it.`,
  ahead: (span: string, clock: string) =>
    `This tablet slept for ${span} at ${clock}, or its clock went forward. If it is wrong now, correct it.`,
  'behind-log': (span: string) => `This tablet’s clock is ${span} behind the newest entry: correct it.`,
  'behind-server': (span: string) => `This tablet’s clock is ${span} behind the server: correct it.`,
  'ahead-of-server': (span: string) => `This tablet’s clock is ${span} ahead of the server: correct it.`,
  goesOn: 'Warnings and times go on from the last correct time.',
  short: 'Check the clock',
  isRight: 'Confirm: the clock is right',
} as const;
