// What exactly is signed. A request: method, path with query, hash of the body as it travels, time and nonce, so that a
// copied request proves nothing a minute later, on another path or with another body (the idea of RFC 9449, DPoP).
// A bearer token was refused: whoever copies it is the tablet.

/** The facts that a request's signature covers. */
export interface SignedRequest {
  readonly method: string;
  /** Path with query, as in the request line. */
  readonly path: string;
  /** SHA-256 of the body's bytes as they travel, lower-case hex; of no bytes where there is no body. */
  readonly bodyHash: string;
  /** The signer's idea of the server's clock, ms since 1970. */
  readonly timeMs: number;
  /** Fresh for every request. */
  readonly nonce: string;
}

/** The proof that travels in the `authorization` header. */
export interface RequestProof {
  readonly tablet: string;
  readonly timeMs: number;
  readonly nonce: string;
  /** ECDSA P-256 over SHA-256, r and s joined (IEEE P1363), base64url. */
  readonly sig: string;
}

const SCHEME = 'Reelward';

/** The text whose UTF-8 bytes are signed for a request. */
export function requestText(request: SignedRequest): string {
  const { method, path, bodyHash, timeMs, nonce } = request;
  return `reelward request\n${method.toUpperCase()}\n${path}\n${bodyHash}\n${timeMs}\n${nonce}`;
}

/**
 * The text whose UTF-8 bytes a tablet signs for an entry: the 64 hex digits of its hash. No other signed text here is
 * 64 digits long, so that a signature for one thing never passes for another.
 */
export function entryText(hash: string): string {
  return hash;
}

/**
 * The text whose UTF-8 bytes a tablet signs for a chain of another tablet that it brings: up to where, and the hash there, which through the
 * seals covers all before it.
 */
export function broughtText(end: {
  readonly tablet: string;
  readonly epoch: string;
  readonly seq: number;
  readonly hash: string;
}): string {
  return `reelward brought\n${end.tablet}\n${end.epoch}\n${end.seq}\n${end.hash}`;
}

/** The text whose UTF-8 bytes a server signs for a checkpoint. `headsHash`: SHA-256 of the RFC 8785 text of the heads. */
export function checkpointText(point: {
  readonly serverEpoch: string;
  readonly pos: number;
  readonly root: string;
  readonly atMs: number;
  readonly headsHash: string;
}): string {
  return `reelward checkpoint\n${point.serverEpoch}\n${point.pos}\n${point.root}\n${point.atMs}\n${point.headsHash}`;
}

/** Writes the `authorization` header. */
export function formatProof(proof: RequestProof): string {
  return `${SCHEME} tablet=${proof.tablet},time=${proof.timeMs},nonce=${proof.nonce},sig=${proof.sig}`;
}

/** Reads the `authorization` header; null where it is no proof. */
export function parseProof(header: string): RequestProof | null {
  const match =
    /^Reelward tablet=([\x21-\x2b\x2d-\x7e]{1,64}),time=(\d{1,15}),nonce=([A-Za-z0-9_-]{16,64}),sig=([A-Za-z0-9_-]{86})$/.exec(
      header,
    );
  if (!match) return null;
  const [, tablet = '', time = '', nonce = '', sig = ''] = match;
  return { tablet, timeMs: Number(time), nonce, sig };
}
