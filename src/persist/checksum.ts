/**
 * CRC-32 (ISO 3309, polynomial 0xEDB88320 reflected): finds every damaged run of up to 32 bits and all but one in four
 * thousand million of any others. `crypto.subtle` would be stronger and does not exist without a secure context.
 */
const TABLE: readonly number[] = Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let i = 0; i < 8; i++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  return rest >>> 0;
});

/** Computes the checksum of bytes, 0 to 2^32 - 1. */
export function checksum(bytes: Uint8Array): number {
  let rest = 0xffffffff;
  for (const byte of bytes) rest = (TABLE[(rest ^ byte) & 255] ?? 0) ^ (rest >>> 8);
  return (rest ^ 0xffffffff) >>> 0;
}
