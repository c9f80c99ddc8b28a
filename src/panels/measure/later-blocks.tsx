/** What is asked later, when a verdict comes to it. */
import type { Id } from '../../model/schema/leaf.ts';
import type { Look } from '../shared/look.ts';
import { DriversBlock } from './drivers-block.tsx';
import { OnceBlock } from './once-block.tsx';
import { PlacesBlock } from './places-block.tsx';
import { SleeveBlock } from './sleeve-block.tsx';

export function LaterBlocks({ look, cutKey }: { readonly look: Look; readonly cutKey: Id }) {
  return (
    <>
      <OnceBlock look={look} cutKey={cutKey} />
      <PlacesBlock look={look} cutKey={cutKey} />
      <DriversBlock look={look} />
      <SleeveBlock look={look} cutKey={cutKey} />
    </>
  );
}
