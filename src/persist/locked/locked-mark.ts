/** Tells a locked file from a job file by its first bytes: the open age format (age-encryption.org/v1), binary or armoured. */

const BINARY = 'age-encryption.org/v1\n';
const ARMOURED = '-----BEGIN AGE ENCRYPTED FILE-----';

/** Whether bytes begin like a locked file. */
export function isLockedFile(bytes: Uint8Array): boolean {
  const start = String.fromCharCode(...bytes.subarray(0, 64));
  return start.startsWith(BINARY) || start.trimStart().startsWith(ARMOURED);
}

/** Whether bytes are a locked file written as lines of text. */
export function isArmoured(bytes: Uint8Array): boolean {
  return String.fromCharCode(...bytes.subarray(0, 64))
    .trimStart()
    .startsWith(ARMOURED);
}
