/** Seals the true figures of a practice cylinder under a passphrase, and opens them again. Slow on purpose. */
import { armor } from 'age-encryption';
import {
  type PracticeFile,
  practiceFileText,
  readSealed,
  sealedText,
} from '../../model/learning/practice-file.ts';
import type { Figures, PracticeCard } from '../../model/learning/practice-figures.ts';
import type { PassphraseLock } from './passphrase-lock.ts';

export type Unsealed =
  | { readonly type: 'figures'; readonly figures: Figures }
  | { readonly type: 'error'; readonly reason: 'wrong passphrase' | 'damaged' };

/** Gives the text of the file. */
export async function sealPractice(
  card: PracticeCard,
  figures: Figures,
  passphrase: string,
  lock: PassphraseLock,
): Promise<string> {
  const bytes = new TextEncoder().encode(sealedText(card, figures));
  const sealed = armor.encode(await lock.seal(bytes, passphrase));
  return practiceFileText({ card, sealed: sealed.replaceAll('\r\n', '\n') });
}

export async function openPractice(
  { card, sealed }: PracticeFile,
  passphrase: string,
  lock: PassphraseLock,
): Promise<Unsealed> {
  const opened = await lock.open(new TextEncoder().encode(sealed), passphrase);
  if (opened.type === 'error') return opened;
  const figures = readSealed(new TextDecoder().decode(opened.bytes), card);
  return figures === null ? { type: 'error', reason: 'damaged' } : { type: 'figures', figures };
}
