// The page that tells a tablet's owner how to trust the local authority: plain HTTP, since HTTPS is not trusted yet.
// It serves the authority's certificate and nothing else. The fingerprint is shown at the server's terminal too: whoever
// compares the two knows that nobody stands in between.

import { createServer, type Server } from 'node:http';
import { generate } from 'lean-qr';
import { toSvgSource } from 'lean-qr/extras/svg';
import type { AuthorityFacts } from '../certificates/keep.ts';

export interface TrustFacts {
  readonly authority: AuthorityFacts;
  /** The app's address over HTTPS. */
  readonly appUrl: string;
  /** This page's own address, for the code. */
  readonly pageUrl: string;
}

const headers = {
  'content-security-policy':
    "default-src 'none'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cache-control': 'no-cache',
} as const;

/** What the page serves, by path. */
export function trustFiles(
  facts: TrustFacts,
): Readonly<Record<string, { readonly type: string; readonly body: string | Buffer }>> {
  const page = { type: 'text/html; charset=utf-8', body: trustHtml(facts) };
  const certificate = { type: 'application/x-x509-ca-cert', body: facts.authority.der };
  return {
    '/ca': page,
    '/ca/reelward-authority.crt': certificate,
    '/ca/code.svg': {
      type: 'image/svg+xml',
      body: toSvgSource(generate(facts.pageUrl), { on: '#000', off: '#fff', padX: 4, padY: 4 }),
    },
    '/ca/style.css': { type: 'text/css; charset=utf-8', body: style },
  };
}

/** Serves the page; anything else is sent to it. */
export function createTrustServer(read: () => TrustFacts): Server {
  let facts = read();
  let files = trustFiles(facts);
  const server = createServer({ headersTimeout: 10_000, requestTimeout: 10_000 }, (request, response) => {
    const now = read();
    // The authority is made anew in its last month.
    if (now.authority.fingerprint !== facts.authority.fingerprint) {
      facts = now;
      files = trustFiles(facts);
    }
    const path = (request.url ?? '/').split('?', 1)[0] ?? '/';
    const file = Object.hasOwn(files, path) ? files[path] : undefined;
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.writeHead(405, { ...headers, allow: 'GET, HEAD' }).end();
    } else if (file) {
      response.writeHead(200, { ...headers, 'content-type': file.type });
      response.end(request.method === 'HEAD' ? undefined : file.body);
    } else response.writeHead(302, { ...headers, location: '/ca' }).end();
  });
  return server;
}

function trustHtml({ authority, appUrl, pageUrl }: TrustFacts): string {
  const steps = systems.map(([name, list]) => {
    const items = list.map((step) => `<li>${step}</li>`).join('');
    return `<section><h2>${name}</h2><ol>${items}</ol></section>`;
  });
  return `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>Trust this server</title><link rel="stylesheet" href="/ca/style.css"></head>
<body><main>
<h1>Trust this server</h1>
<p>Camera, offline start and signed entries work only over a connection that this device trusts. This is done once on each device.</p>
<p><a class="act" href="/ca/reelward-authority.crt">1. Get the certificate</a></p>
<p>2. Follow the steps for this device below.</p>
<p><a class="act" href="${escapeHtml(appUrl)}">3. Open the app</a></p>
<p>Fingerprint (SHA-256). It must be the same as the one that the server's terminal shows; if it is not, stop and tell whoever keeps the server:</p>
<p class="print">${escapeHtml(authority.fingerprint)}</p>
${steps.join('\n')}
<section><h2>Another device</h2><p>Scan this with its camera, or type ${escapeHtml(pageUrl)}</p>
<img src="/ca/code.svg" width="240" height="240" alt="Code with the address of this page"></section>
</main></body></html>
`;
}

/** Where each system keeps it. Menus move between versions: the words to search the settings for are in quotes. */
const systems: readonly (readonly [string, readonly string[]])[] = [
  [
    'Android',
    [
      'Open Settings and search for “CA certificate” (under security, encryption and credentials, install a certificate).',
      'Accept the warning, choose the file from the downloads.',
      'A screen lock may be asked for. Open the app in the browser and add it to the home screen.',
    ],
  ],
  [
    'iPadOS and iOS',
    [
      'After the download, open Settings: “Profile downloaded” is near the top. Install it.',
      'Then Settings, General, About, “Certificate trust settings”: switch full trust on for this authority.',
      'Open the app, share, add to the home screen; enrol it there, not in the browser.',
    ],
  ],
  [
    'Windows',
    [
      'Open the file, “Install certificate”, this computer.',
      'Place it in “Trusted root certification authorities”. Start the browser again.',
    ],
  ],
  [
    'macOS',
    [
      'Open the file: it goes into the keychain.',
      'In the keychain open it, “Trust”, “Always trust”. Start the browser again.',
    ],
  ],
  [
    'ChromeOS and Linux',
    [
      'In the browser open its settings, search for “certificates”, “Authorities”, import.',
      'Trust it for identifying websites. Start the browser again.',
    ],
  ],
];

const style = `:root { color-scheme: light dark; font: 18px/1.5 system-ui, sans-serif; }
body { margin: 0; }
main { max-width: 42rem; margin: 0 auto; padding: 1rem; }
h1 { font-size: 1.6rem; }
h2 { font-size: 1.15rem; }
.act { display: inline-block; min-height: 48px; line-height: 48px; padding: 0 1rem; border: 2px solid; border-radius: 8px; font-weight: 600; }
.print { font-family: ui-monospace, monospace; overflow-wrap: anywhere; }
img { background: #fff; }
`;

/** Escapes text for HTML, in content and in quoted attributes. */
export function escapeHtml(text: string): string {
  const signs: Readonly<Record<string, string>> = {
    '&': '&amp;',
    '<': '&lt;',
    '>': '&gt;',
    '"': '&quot;',
    "'": '&#39;',
  };
  return text.replace(/[&<>"']/g, (sign) => signs[sign] ?? sign);
}
