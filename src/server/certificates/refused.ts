// The certificate files are not what they must be. By itself, so that whoever words the refusal need not load what makes them.

/** One line for the person who starts the server. */
export class CertificateRefused extends Error {}
