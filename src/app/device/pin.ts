// Badge PINs on the tablet: a salted PBKDF2-SHA-256 verifier. A short PIN can be tried out by whoever holds the verifier: it goes to the
// server alone, and else stays encrypted (`store/secrets.ts`). Rounds: 600 000, the OWASP Password Storage Cheat Sheet's figure (2023).

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
  return { salt, rounds: ROUNDS, hash: await derivePin(pin, salt, ROUNDS) };
}

/** PBKDF2 with SHA-256 over the PIN's and the salt's UTF-8 bytes, 32 bytes, lower-case hex. The server computes the same. */
export async function derivePin(pin: string, salt: string, rounds: number): Promise<string> {
  const bytes = (text: string) => new TextEncoder().encode(text);
  const key = await crypto.subtle.importKey('raw', bytes(pin), 'PBKDF2', false, ['deriveBits']);
  const derived = await crypto.subtle.deriveBits(
    { name: 'PBKDF2', hash: 'SHA-256', salt: bytes(salt), iterations: rounds },
    key,
    256,
  );
  return toHex(new Uint8Array(derived));
}

function toHex(bytes: Uint8Array): string {
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
