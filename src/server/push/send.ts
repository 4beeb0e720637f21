// One message on its way to a push service (RFC 8030). A tablet names the address, so the server goes only where a push service can be: to
// an https address by name whose numbers are public, asked of the very connection that is made, or to the one service that the plant runs itself.

import { lookup as lookUp } from 'node:dns';
import { request as plainRequest } from 'node:http';
import { request as secureRequest } from 'node:https';
import { BlockList, isIP, type LookupFunction } from 'node:net';

/** What became of a message. `gone`: the browser takes none any more. */
export type PushEnd = 'sent' | 'gone' | 'unreached' | 'refused';

/** A message for a push service. */
export interface PushPost {
  readonly endpoint: string;
  readonly authorization: string;
  readonly body: Uint8Array;
}

/** How long a service may take, ms, and how long it may keep a message for a browser that is away, s: later it is no news. */
const ANSWER_MS = 10_000;
const KEPT_S = 900;

/** Networks that are nobody's in public (IANA's registries of special addresses). */
const inner = new BlockList();
for (const [net, bits] of [
  ['0.0.0.0', 8],
  ['10.0.0.0', 8],
  ['100.64.0.0', 10],
  ['127.0.0.0', 8],
  ['169.254.0.0', 16],
  ['172.16.0.0', 12],
  ['192.0.0.0', 24],
  ['192.168.0.0', 16],
  ['198.18.0.0', 15],
  ['224.0.0.0', 3],
] as const)
  inner.addSubnet(net, bits, 'ipv4');
const outer = new BlockList();
outer.addSubnet('2000::', 3, 'ipv6'); // global unicast; whatever embeds an older address lies elsewhere or is refused below
for (const [net, bits] of [
  ['2001:db8::', 32],
  ['2002::', 16],
] as const)
  inner.addSubnet(net, bits, 'ipv6');

/** True for an address that can be reached over the public network. */
export function isPublicAddress(address: string): boolean {
  if (isIP(address) === 4) return !inner.check(address, 'ipv4');
  return isIP(address) === 6 && outer.check(address, 'ipv6') && !inner.check(address, 'ipv6');
}

/** True for an address to which messages may go: `service` is the origin of the plant's own push service, where it has one. */
export function mayPush(endpoint: string, service: string | null): boolean {
  if (!URL.canParse(endpoint)) return false;
  const url = new URL(endpoint);
  if (url.username !== '' || url.password !== '') return false;
  if (url.origin === service) return true;
  const { hostname } = url;
  const isName = isIP(hostname.replace(/^\[|\]$/g, '')) === 0 && hostname.includes('.');
  return url.protocol === 'https:' && url.port === '' && isName;
}

/** Names that stand for inner addresses are refused as they are looked up: asked before, another answer could come at the connection. */
const publicOnly: LookupFunction = (hostname, options, callback) => {
  lookUp(hostname, { ...options, all: true }, (error, found) => {
    const public_ = error ? [] : found.filter(({ address }) => isPublicAddress(address));
    const [first] = public_;
    if (!first) return callback(error ?? new Error(`${hostname} is no public address`), '', 4);
    if (options.all) callback(null, public_);
    else callback(null, first.address, first.family);
  });
};

/** Sends it; never rejects. What the service says is not read beyond its status, and it is followed nowhere else. */
export function postPush(
  { endpoint, authorization, body }: PushPost,
  service: string | null,
): Promise<PushEnd> {
  const url = new URL(endpoint);
  const isOwn = url.origin === service;
  const send = url.protocol === 'https:' ? secureRequest : plainRequest;
  return new Promise((resolve) => {
    const headers = {
      authorization,
      'content-encoding': 'aes128gcm',
      'content-type': 'application/octet-stream',
      'content-length': body.length,
      ttl: KEPT_S,
      urgency: 'high',
    };
    const asked = send(url, {
      method: 'POST',
      headers,
      agent: false,
      signal: AbortSignal.timeout(ANSWER_MS),
      ...(isOwn ? {} : { lookup: publicOnly }),
    });
    asked.on('error', () => resolve('unreached'));
    asked.on('response', (response) => {
      const { statusCode = 0 } = response;
      response.destroy();
      if (statusCode >= 200 && statusCode < 300) resolve('sent');
      else resolve(statusCode === 404 || statusCode === 410 ? 'gone' : 'refused');
    });
    asked.end(body);
  });
}
