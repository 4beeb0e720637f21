// The few calls of PouchDB that the sync bench makes; the packages carry no types of their own.

declare module 'pouchdb' {
  interface Replication {
    readonly docs_written: number;
  }
  export default class PouchDB {
    constructor(name: string, options: { readonly adapter: string });
    static plugin(plugin: unknown): void;
    bulkDocs(docs: readonly object[]): Promise<unknown>;
    info(): Promise<{ readonly doc_count: number }>;
    readonly replicate: {
      to(
        target: PouchDB,
        options: { readonly batch_size: number; readonly batches_limit: number },
      ): Promise<Replication>;
    };
  }
}

declare module 'pouchdb-adapter-memory' {
  const plugin: unknown;
  export default plugin;
}
