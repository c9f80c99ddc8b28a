/** The worker's answer to a wish for a file. Loaded with the first wish: the solid view needs none of it. */
import type { ManifoldToplevel } from 'manifold-3d';
import type { FileReply, FileRequest } from '../solids-messages.ts';
import { insertionFile } from './insertion-file.ts';
import { printFile } from './print-file.ts';

export function answerFile(library: ManifoldToplevel, request: FileRequest): FileReply {
  if (request.kind === 'insertion') {
    const bytes = insertionFile(library, request.order, request.title);
    return { kind: 'file', bytes: bytes.slice(), largest: null, pieceCount: request.order.parts.length };
  }
  const { bytes, largest, pieceCount } = printFile(library, request.order, request.form, request.title);
  return { kind: 'file', bytes: bytes.slice(), largest, pieceCount };
}
