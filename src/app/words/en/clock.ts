export const words = {
  back: (span: string, clock: string) => `This tablet’s clock went back ${span} at ${clock}: set it right.`,
  ahead: (span: string, clock: string) =>
    `This tablet slept for ${span} at ${clock}, or its clock went forward. If it is wrong now, set it right.`,
  'behind-log': (span: string) => `This tablet’s clock is ${span} behind the newest entry: set it right.`,
  'behind-server': (span: string) => `This tablet’s clock is ${span} behind the server: set it right.`,
  'ahead-of-server': (span: string) => `This tablet’s clock is ${span} ahead of the server: set it right.`,
  goesOn: 'Warnings and times go on from the last correct time.',
  isRight: 'The clock is right',
} as const;
