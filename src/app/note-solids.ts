/** Solids of the repair note as files: ordered here, made in the worker that makes the solids of the view. */
import type { PrintAsk, SceneAsk } from '../panels/note/note-files.ts';
import { saveOtherFile } from '../persist/job-file.ts';
import { PAPER_THEME } from '../scene/scene-theme.ts';
import { insertionOrder } from '../solids/print/insertion-order.ts';
import type { BedSize } from '../solids/print/laid-out.ts';
import { printOrder } from '../solids/print/print-order.ts';
import type { PartKind } from '../solids/solid-parts.ts';
import type { FileReply, FileRequest, SolidsReply } from '../solids/solids-messages.ts';
import { solidsWorkerUrl } from '../solids/solids-worker-url.ts';
import { startWorker } from './own-worker.ts';
import { tellSaved } from './tell-saved.ts';

/** ms without an answer after which the worker counts as gone: twenty times the slowest set seen on two busy cores. */
const PATIENCE = 120_000;
/** Characters left of a title, so that the scale still stands in the name of the file. */
const MOST_OF_TITLE = 34;

const FORMS = {
  '3mf': { ending: '.3mf', mimeType: 'model/3mf', description: '3MF for printing' },
  stl: { ending: '.stl', mimeType: 'model/stl', description: 'STL for printing' },
} as const;

export async function savePrint(ask: PrintAsk, form: '3mf' | 'stl'): Promise<string | null> {
  const { factor, clearance, jobTitle, name } = ask;
  const ordered = printOrder(ask.assembly, ask.what, { factor, clearance });
  if (ordered.type === 'error') return ordered.sentence;
  const title = `${jobTitle}, ${name}, ${factor}:1`;
  const made = await askWorker({ kind: 'print', order: ordered.order, form, title });
  if (typeof made === 'string') return made;
  const fileName = `${shortened(jobTitle)} ${name} ${String(factor).replace('.', '-')}to1`;
  const saved = await saveOtherFile({ bytes: made.bytes, ...FORMS[form] }, fileName);
  return tellSaved(saved, sayPieces(made));
}

export async function saveScene({ assembly, jobTitle }: SceneAsk): Promise<string | null> {
  const skins = Object.entries(PAPER_THEME.parts).map(([kind, { skin }]) => [kind, skin]);
  const colours = Object.fromEntries(skins) as Record<PartKind, string>;
  const order = insertionOrder(assembly, colours);
  const made = await askWorker({ kind: 'insertion', order, title: jobTitle });
  if (typeof made === 'string') return made;
  const kind = { ending: '.glb', mimeType: 'model/gltf-binary', description: 'Scene' };
  const saved = await saveOtherFile({ bytes: made.bytes, ...kind }, `${shortened(jobTitle)} insertion`);
  return tellSaved(saved, '');
}

function shortened(title: string): string {
  return Array.from(title).slice(0, MOST_OF_TITLE).join('').trim();
}

function sayPieces({ pieceCount, largest }: FileReply): string {
  const pieces = pieceCount === 1 ? ' One piece,' : ` ${pieceCount} pieces,`;
  return largest === null
    ? ''
    : `${pieces}${pieceCount === 1 ? '' : ' the largest'} ${sizeWords(largest)} mm.`;
}

function sizeWords({ width, depth, height }: BedSize): string {
  return [width, depth, height].map((mm) => Math.ceil(mm)).join(' × ');
}

/** A worker for this one file, gone with its answer: what it holds is large. */
function askWorker(request: FileRequest): Promise<FileReply | string> {
  return new Promise((done) => {
    const worker = startWorker(solidsWorkerUrl);
    const finish = (answer: FileReply | string) => {
      clearTimeout(timer);
      worker.terminate();
      done(answer);
    };
    const timer = setTimeout(
      () => finish('Making the solids took too long, so it was stopped. Try one part at a time.'),
      PATIENCE,
    );
    worker.addEventListener('message', ({ data }: MessageEvent<SolidsReply | FileReply>) => {
      if (data.kind === 'file') finish(data);
      else if (data.kind === 'failed') finish(couldNot(data.reason));
    });
    worker.addEventListener('error', (event) => {
      event.preventDefault();
      finish(couldNot(event.message || 'its script did not load'));
    });
    worker.postMessage(request);
  });
}

function couldNot(reason: string): string {
  return `The solids could not be made (${reason}). Pictures and tables do not need them.`;
}
