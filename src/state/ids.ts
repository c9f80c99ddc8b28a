/** Opaque random ids for everything in a job: derived from nothing, so that they tell nothing and never collide. */

/** 128 random bits, as many as a UUID; 22 characters of the URL-safe base64 alphabet, which the job file allows in ids. */
const ID_BYTES = 16;
const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

/** Makes a new id. Works without a secure context, where `crypto.randomUUID` does not exist. */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(ID_BYTES));
  let id = '';
  let bits = 0;
  let held = 0;
  for (const byte of bytes) {
    held = (held << 8) | byte;
    bits += 8;
    while (bits >= 6) {
      bits -= 6;
      id += ALPHABET.charAt((held >> bits) & 63);
    }
    held &= (1 << bits) - 1;
  }
  return bits > 0 ? id + ALPHABET.charAt((held << (6 - bits)) & 63) : id;
}
