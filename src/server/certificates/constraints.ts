// For which hosts may the local authority speak? For this computer's own names, for `.local`, and for addresses of private networks:
// whoever takes its key can then not pass for any other site on the tablets that trust it. Written by hand as DER, since the
// certificate library has no such extension. Source: RFC 5280, section 4.2.1.10; private ranges: RFC 1918, 3927, 4193, 4291.

import { BlockList, isIP } from 'node:net';

/** OBJECT IDENTIFIER id-ce-nameConstraints. */
export const nameConstraintsId = '2.5.29.30';

/** Private, link-local and loopback networks: address and length of its prefix in bits. */
const privateNetworks: readonly (readonly [string, number])[] = [
  ['10.0.0.0', 8],
  ['172.16.0.0', 12],
  ['192.168.0.0', 16],
  ['169.254.0.0', 16],
  ['127.0.0.0', 8],
  ['::1', 128],
  ['fc00::', 7],
  ['fe80::', 10],
];

const DNS_NAME = 0x82;
const IP_ADDRESS = 0x87;
const SEQUENCE = 0x30;
const PERMITTED = 0xa0;

/** True where every authority made here may speak for the name. */
export function isPrivate(name: string): boolean {
  const kind = isIP(name);
  if (kind === 0) return name === 'localhost' || name.toLowerCase().endsWith('.local');
  const list = new BlockList();
  for (const [address, bits] of privateNetworks)
    list.addSubnet(address, bits, isIP(address) === 4 ? 'ipv4' : 'ipv6');
  return list.check(name, kind === 4 ? 'ipv4' : 'ipv6');
}

/** The extension's value: what is private, and `names`, which are this computer's own. */
export function nameConstraints(names: readonly string[]): Uint8Array<ArrayBuffer> {
  const own = names.filter((name) => !isPrivate(name));
  const trees = [
    ...['local', 'localhost', ...own].map(nameTree),
    ...privateNetworks.map(([address, bits]) => networkTree(address, bits)),
  ];
  return new Uint8Array(tagged(SEQUENCE, tagged(PERMITTED, Buffer.concat(trees))));
}

/** One host with what lies below it, or one address, as the extension names it. */
export function nameTree(name: string): Buffer {
  const kind = isIP(name);
  if (kind !== 0) return networkTree(name, kind === 4 ? 32 : 128);
  return tagged(SEQUENCE, tagged(DNS_NAME, Buffer.from(name, 'ascii')));
}

function networkTree(address: string, bits: number): Buffer {
  const bytes = addressBytes(address);
  return tagged(SEQUENCE, tagged(IP_ADDRESS, Buffer.concat([bytes, mask(bits, bytes.length)])));
}

/** Tag, length, content (ITU-T X.690, definite form). */
function tagged(tag: number, content: Buffer): Buffer {
  const { length } = content;
  if (length < 0x80) return Buffer.concat([Buffer.from([tag, length]), content]);
  return Buffer.concat([Buffer.from([tag, 0x82, length >> 8, length & 0xff]), content]);
}

function mask(bits: number, bytes: number): Buffer {
  return Buffer.from(
    Array.from({ length: bytes }, (_, at) => (0xff00 >> Math.max(0, Math.min(8, bits - 8 * at))) & 0xff),
  );
}

function addressBytes(address: string): Buffer {
  if (isIP(address) === 4) return Buffer.from(address.split('.').map(Number));
  const [head = '', tail] = address.split('::');
  const words = (text: string | undefined) =>
    text ? text.split(':').map((word) => Number.parseInt(word, 16)) : [];
  const [before, after] = [words(head), words(tail)];
  const between = new Array<number>(Math.max(0, 8 - before.length - after.length)).fill(0);
  return Buffer.from([...before, ...between, ...after].flatMap((word) => [word >> 8, word & 0xff]));
}
