// Fields that several messages have.

import * as z from 'zod/mini';

/** A name on the wire: of a tablet, a life of a log, a person. */
export const name = z.string().check(z.minLength(1), z.maxLength(64), z.regex(/^[\x21-\x7e]+$/));
/** P-256 public key: the uncompressed point (65 bytes), base64url. */
export const publicKey = z.string().check(z.regex(/^[A-Za-z0-9_-]{87}$/, 'expected 65 bytes, base64url'));
/** Milliseconds since 1970. */
export const ms = z.int().check(z.minimum(0));
/** ECDSA P-256, r and s joined: 64 bytes, base64url. */
export const signature = z.string().check(z.regex(/^[A-Za-z0-9_-]{86}$/, 'expected 64 bytes, base64url'));
/** A head of the log's hash tree, signed as a note (`log/tree-head.ts`). */
export const headNote = z.string().check(z.minLength(1), z.maxLength(4_000));
/** A leaf of the tree. */
export const leaf = z.int().check(z.minimum(0));
/** A proof: hashes of 32 bytes, base64. */
export const proof = z.array(z.string().check(z.regex(/^[A-Za-z0-9+/]{43}=$/))).check(z.maxLength(128));
