// The few functions of the reference package that the tests call; the package brings no types.
declare module 'jstat' {
  interface Law {
    pdf(x: number, a: number, b: number): number;
    cdf(x: number, a: number, b: number): number;
  }
  export const jStat: {
    readonly binomial: Law;
    readonly beta: Law;
    readonly normal: Law;
    gammaln(x: number): number;
    ibeta(x: number, a: number, b: number): number;
  };
}
