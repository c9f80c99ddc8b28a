/**
 * The file of a practice cylinder: what everybody may see of it in clear, its true figures sealed under a passphrase in the
 * open age format. Reading it here opens nothing; that takes the passphrase (src/persist/locked/practice-seal.ts).
 */
import { membersOf } from './learner-record.ts';
import { openOwnFile, type OwnFileFault, type OwnFileKind } from './own-file.ts';
import { type Figures, type PracticeCard, readCard, readFigures } from './practice-figures.ts';

const KIND: OwnFileKind = {
  format: 'shearsight-practice-cylinder',
  version: 1,
  // Far longer than any such file.
  mostCharacters: 40_000,
};
const ARMOUR = /^-----BEGIN AGE ENCRYPTED FILE-----\n[\w+/=\n]+-----END AGE ENCRYPTED FILE-----\n?$/u;

export type PracticeFile = {
  readonly card: PracticeCard;
  /** age, written as lines of text. */
  readonly sealed: string;
};

export type ReadPracticeFile =
  | { readonly type: 'practice'; readonly file: PracticeFile }
  | { readonly type: 'error'; readonly fault: OwnFileFault };

/** Writes the file. */
export function practiceFileText({ card, sealed }: PracticeFile): string {
  return `${JSON.stringify({ format: KIND.format, version: KIND.version, card, sealed }, null, 2)}\n`;
}

/** Reads the text of a file that should be a practice cylinder. */
export function readPracticeFile(text: string): ReadPracticeFile {
  const opened = openOwnFile(text, KIND);
  if (opened.type === 'error') return opened;
  const { kept } = opened;
  const card = readCard(kept.get('card'));
  const sealed = kept.get('sealed');
  if (card === null || typeof sealed !== 'string' || !ARMOUR.test(sealed))
    return { type: 'error', fault: 'damaged' };
  return { type: 'practice', file: { card, sealed } };
}

/** What lies under the seal: the card again, so that one sealed part does not pass for another's. */
export function sealedText(card: PracticeCard, figures: Figures): string {
  return JSON.stringify({ card, figures });
}

/** Reads what lay under the seal; null when it is not that of this card. */
export function readSealed(text: string, card: PracticeCard): Figures | null {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    return null;
  }
  const kept = membersOf(data);
  const own = readCard(kept.get('card'));
  const isOwn = own?.label === card.label && own.unit === card.unit && own.chambers === card.chambers;
  return isOwn ? readFigures(kept.get('figures'), card.chambers) : null;
}
