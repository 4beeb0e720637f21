// Names that are never used twice: chance from the device's own source.

/** A new id of 20 letters and digits (100 bits) without look-alikes, e.g. for a tablet, an epoch or a run. */
export function newId(): string {
  const alphabet = '0123456789abcdefghjkmnpqrstvwxyz';
  return [...crypto.getRandomValues(new Uint8Array(20))].map((byte) => alphabet[byte & 31]).join('');
}
