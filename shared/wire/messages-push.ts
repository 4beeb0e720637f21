// What tablet and server say of messages that reach a lead while the app is closed (Web Push).

import * as z from 'zod/mini';
import { publicKey } from './fields.ts';

const clock = z.string().check(z.regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'expected HH:MM'));
/** A zone of the IANA's list, as browsers name their own. */
const zone = z.string().check(z.regex(/^[A-Za-z0-9_+\-/]{1,64}$/));
const quiet = z.nullable(z.object({ from: clock, to: clock }));

/** `GET /api/push`: whether messages can be sent, and whether this tablet gets them. */
export const pushInfoSchema = z.object({
  /** What the browser subscribes with; null where the server sends none. */
  key: z.nullable(publicKey),
  /** False shortly after a message did not reach a push service; null before the first. */
  reaches: z.nullable(z.boolean()),
  on: z.boolean(),
});
export type PushInfo = z.infer<typeof pushInfoSchema>;

/** `POST /api/push/subscribe`, for a lead or an engineer: where and with which keys this browser takes messages. */
export const pushSubscribeSchema = z.object({
  endpoint: z.string().check(z.minLength(1), z.maxLength(1_000)),
  publicKey,
  /** 16 bytes, base64url. */
  auth: z.string().check(z.regex(/^[A-Za-z0-9_-]{22}$/, 'expected 16 bytes, base64url')),
  zone,
  quiet,
});
export type PushSubscribe = z.infer<typeof pushSubscribeSchema>;
/** The answer: whether the first message went through, and what kept it. */
export const pushSubscribedSchema = z.object({
  kept: z.boolean(),
  why: z.nullable(z.enum(['not-there', 'full', 'gone', 'unreached', 'refused'])),
});

/** `POST /api/push/quiet`: this tablet's quiet hours, by its own zone. */
export const pushQuietSchema = z.object({ zone, quiet });

/** Most characters of a notice's key. */
export const pushKeyMost = 300;
/** Most characters of its line's name. */
export const pushLineNameMost = 120;
/** Most characters of its slot. */
export const pushSlotMost = 64;
const noticeKey = z.string().check(z.minLength(1), z.maxLength(pushKeyMost));
/** What somebody has to know. `key`: the same for the same thing on every tablet. */
export const pushNoticeSchema = z.object({
  key: noticeKey,
  kind: z.enum(['warning', 'blocked', 'stood']),
  line: z.string().check(z.minLength(1), z.maxLength(64)),
  lineName: z.string().check(z.minLength(1), z.maxLength(pushLineNameMost)),
  slot: z.nullable(z.string().check(z.minLength(1), z.maxLength(pushSlotMost))),
});
export type PushNotice = z.infer<typeof pushNoticeSchema>;
/** Notices in one `POST /api/push/tell`. */
export const pushNoticesMost = 20;
/** `POST /api/push/tell`: what this tablet sees that nobody answers. */
export const pushTellSchema = z.object({
  notices: z.array(pushNoticeSchema).check(z.minLength(1), z.maxLength(pushNoticesMost)),
});
/**
 * The answer: how many messages went out, and the keys of what was told, now or before. The others reached nobody yet: the tablet names them again.
 * A server of before knew no keys and took all.
 */
export const pushToldSchema = z.object({
  sent: z.int().check(z.minimum(0)),
  taken: z.optional(z.array(noticeKey).check(z.maxLength(pushNoticesMost))),
});
export type PushTold = z.infer<typeof pushToldSchema>;
