// Badge PINs on the tablet: a salted PBKDF2-SHA-256 verifier. A short PIN can be tried out by whoever holds the verifier, so a
// PIN here names who did it; it is no lock. Rounds: 600 000, the OWASP Password Storage Cheat Sheet's figure (2023).

/** What is kept of a PIN. */
export interface PinVerifier {
  readonly salt: string;
  readonly hash: string;
  readonly rounds: number;
}

const ROUNDS = 600_000;

/** Makes the verifier of a PIN. Needs a secure page. */
export async function makePin(pin: string): Promise<PinVerifier> {
  const salt = toHex(crypto.getRandomValues(new Uint8Array(16)));
  return { salt, rounds: ROUNDS, hash: await derive(pin, salt, ROUNDS) };
}

/** True where the PIN is the one that the verifier was made of. */
export async function isPin(pin: string, verifier: PinVerifier): Promise<boolean> {
  return (await derive(pin, verifier.salt, verifier.rounds)) === verifier.hash;
}

async function derive(pin: string, saltHex: string, rounds: number): Promise<string> {
  const key = await crypto.subtle.importKey('raw', new TextEncoder().encode(pin), 'PBKDF2', false, [
    'deriveBits',
  ]);
  const salt = Uint8Array.from(saltHex.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));
  const bits = await crypto.subtle.deriveBits(
    { name: 'PBKDF2', hash: 'SHA-256', salt, iterations: rounds },
    key,
    256,
  );
  return toHex(new Uint8Array(bits));
}

function toHex(bytes: Uint8Array): string {
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
