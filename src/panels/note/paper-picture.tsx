/** The long section at a scale of its own on paper, with a ruler to check it by; with stand-ins where the bitting stays hidden. */
import { useMemo } from 'react';
import { checkRuler } from '../../drawing/check-ruler.ts';
import { longSectionAtScale } from '../../drawing/true-scale.ts';
import { DrawingSvg } from '../shared/drawing-svg.tsx';
import type { Look } from '../shared/look.ts';
import { PAPER_WIDTH_MM, pictureSource, STAND_INS } from './note-pictures.ts';
import { STATE_NAMES } from './note-states.ts';

export function PaperPicture({ look, isHidden }: { readonly look: Look; readonly isHidden: boolean }) {
  const scaled = useMemo(() => {
    const { assembly, evaluation, pose, unit } = pictureSource(look, isHidden);
    return assembly.chambers.length === 0
      ? null
      : longSectionAtScale(assembly, pose, evaluation, { mostMm: PAPER_WIDTH_MM, unit });
  }, [look, isHidden]);
  const ruler = useMemo(() => checkRuler(), []);
  if (scaled === null) return null;
  return (
    <figure className="sheet-picture">
      <DrawingSvg drawing={scaled.drawing} />
      <figcaption>
        <p>
          {jobWords(look, isHidden)}. {STATE_NAMES[look.bench.plan.kind]}, {scaled.scale} on paper where the
          ruler measures right.
          {isHidden ? ` ${STAND_INS}.` : ''}
        </p>
        <DrawingSvg drawing={ruler} />
      </figcaption>
    </figure>
  );
}

/** On a leaf of its own it must say which job it belongs to; the restricted one has only the number, never the place. */
function jobWords({ job }: Look, isHidden: boolean): string {
  const number = job.note.shared['jobNumber'] ?? '';
  if (number !== '') return `Job ${number}`;
  return isHidden ? job.title : 'Job without a number';
}
