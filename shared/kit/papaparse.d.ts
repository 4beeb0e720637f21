// The one call of the CSV parser that shared/ uses. The package's published types pull in the types of Node, which
// would let shared/ name a clock, a network and a console.

declare module 'papaparse/papaparse.min.js' {
  interface ParseError {
    readonly code: string;
    readonly row?: number;
  }
  interface ParseOptions {
    readonly delimiter: string;
    readonly newline: '\n' | '\r\n';
    readonly preview?: number;
  }
  const Papa: {
    readonly parse: (
      text: string,
      options: ParseOptions,
    ) => { readonly data: string[][]; readonly errors: readonly ParseError[] };
  };
  export default Papa;
}
