/**
 * Under which address the page keeps, and the service worker finds, the sentences of the messages that come while the app is closed: the
 * worker has no words of its own.
 */
export const PUSH_SENTENCES = '/push-sentences';
