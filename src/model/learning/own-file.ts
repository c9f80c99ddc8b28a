/** What the files of Learn have in common: JSON that says what it is and in which version. */
import { membersOf } from './learner-record.ts';

export type OwnFileFault = 'not one' | 'damaged' | 'newer';

export type OwnFileKind = {
  /** What the file calls itself. */
  readonly format: string;
  readonly version: number;
  /** A text with more characters is not looked into. */
  readonly mostCharacters: number;
};

type Opened =
  | { readonly type: 'success'; readonly data: unknown; readonly kept: ReadonlyMap<string, unknown> }
  | { readonly type: 'error'; readonly fault: OwnFileFault };

/** Opens the text of a file that should be of a kind. A text that names the kind and still is no JSON is a damaged one. */
export function openOwnFile(text: string, { format, version, mostCharacters }: OwnFileKind): Opened {
  let data: unknown;
  try {
    data = text.length > mostCharacters ? null : JSON.parse(text.replace(/^\ufeff/u, ''));
  } catch {
    return { type: 'error', fault: text.includes(format) ? 'damaged' : 'not one' };
  }
  const kept = membersOf(data);
  if (kept.get('format') !== format) return { type: 'error', fault: 'not one' };
  const own = kept.get('version');
  if (typeof own === 'number' && own > version) return { type: 'error', fault: 'newer' };
  return { type: 'success', data, kept };
}
