// The forms that an export of the log can take, for the page that writes one and the server that is asked for one.

/** Every form of an export. */
export const exportFormats = ['csv', 'xlsx', 'json'] as const;
/** One of them. */
export type ExportFormat = (typeof exportFormats)[number];
