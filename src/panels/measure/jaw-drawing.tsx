import { jawDrawing } from '../../drawing/jaw-placement.ts';
import type { JawDrawingKind } from '../../drawing/jaw-kinds.ts';
import { DrawingSvg } from '../shared/drawing-svg.tsx';

/** Where the jaws go. */
export function JawDrawing({ kind }: { readonly kind: JawDrawingKind }) {
  return <DrawingSvg drawing={jawDrawing(kind)} className="jaw-drawing" />;
}
