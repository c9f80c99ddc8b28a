/**
 * Text under a passphrase, in the open age format: any program that reads age files opens it. Slow on purpose (scrypt, about
 * a second): belongs in a worker. Loads the age library.
 */
import { armor, Decrypter, Encrypter } from 'age-encryption';
import { isArmoured } from './locked-mark.ts';

export type Unlocked =
  | { readonly type: 'success'; readonly bytes: Uint8Array }
  | { readonly type: 'error'; readonly reason: 'wrong passphrase' | 'damaged' };

/** What needs a passphrase; in the page it is asked of a worker. */
export type PassphraseLock = {
  readonly seal: (bytes: Uint8Array, passphrase: string) => Promise<Uint8Array>;
  readonly open: (bytes: Uint8Array, passphrase: string) => Promise<Unlocked>;
};

/**
 * Makes the lock.
 *
 * @param workFactor base 2 logarithm of scrypt's cost; the usual 18 takes a desk computer about a second
 */
export function passphraseLock(workFactor = 18): PassphraseLock {
  return {
    seal: (bytes, passphrase) => {
      const encrypter = new Encrypter();
      encrypter.setPassphrase(passphrase);
      encrypter.setScryptWorkFactor(workFactor);
      return encrypter.encrypt(bytes);
    },
    open: async (bytes, passphrase) => {
      const decrypter = new Decrypter();
      decrypter.addPassphrase(passphrase);
      try {
        const binary = isArmoured(bytes) ? armor.decode(new TextDecoder().decode(bytes)) : bytes;
        return { type: 'success', bytes: await decrypter.decrypt(binary) };
      } catch (error) {
        // The library tells a passphrase that opens nothing by this sentence; whatever else goes wrong is damage.
        const isWrong = error instanceof Error && /no identity matched/i.test(error.message);
        return { type: 'error', reason: isWrong ? 'wrong passphrase' : 'damaged' };
      }
    },
  };
}
