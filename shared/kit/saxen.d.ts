// The few calls of the XML parser that shared/ uses; the package publishes no types.

declare module 'saxen' {
  export class Parser {
    on(
      event: 'openTag',
      take: (
        name: string,
        /** False where the attributes are malformed. */
        attributes: () => Readonly<Record<string, string>> | false,
        decode: (text: string) => string,
      ) => void,
    ): this;
    on(event: 'closeTag', take: (name: string) => void): this;
    on(event: 'error' | 'warn', take: (error: Error, context: () => { readonly line: number }) => void): this;
    /** `<!…>` and `<?…?>`. */
    on(event: 'attention' | 'question', take: (text: string) => void): this;
    parse(xml: string): unknown;
  }
}
