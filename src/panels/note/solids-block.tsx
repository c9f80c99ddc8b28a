/** Solids to print: what, how large, with how much clearance. Where the bitting is hidden, made with stand-ins that are all alike. */
import { useId, useMemo, useState } from 'react';
import { readClearance, readFactor } from '../../model/note/print-scale.ts';
import type { Assembly } from '../../model/assembly/assembly.ts';
import { namedParts } from '../../geometry/part-names.ts';
import type { Look } from '../shared/look.ts';
import { useServices } from '../shared/services.tsx';
import type { PrintAsk } from './note-files.ts';
import { nameOnFile, pictureSource } from './note-pictures.ts';
import type { RunAction } from './run-action.ts';
import { ToolFold } from './tool-fold.tsx';

type SolidsBlockProps = { readonly look: Look; readonly isHidden: boolean; readonly run: RunAction };

const CUTAWAY = 'cutaway';
const ALL = 'all';

export function SolidsBlock({ look, isHidden, run }: SolidsBlockProps) {
  const { noteFiles } = useServices();
  const id = useId();
  const [what, setWhat] = useState(CUTAWAY);
  const [factor, setFactor] = useState('4');
  const [clearance, setClearance] = useState('0.2');
  const { assembly } = useMemo(() => pictureSource(look, isHidden), [look, isHidden]);
  const parts = namedParts(assembly).filter(({ role }) => role !== 'spring');
  const chosen = parts.some(({ partKey }) => partKey === what) || what === ALL ? what : CUTAWAY;
  const save = (form: '3mf' | 'stl') => async () => {
    const [times, play] = [readFactor(factor), readClearance(clearance)];
    if (times.type === 'error') return times.message;
    if (play.type === 'error') return play.message;
    const ask: PrintAsk = {
      assembly,
      ...choiceOf(chosen, assembly),
      factor: times.value,
      clearance: play.value,
      jobTitle: nameOnFile(look.job),
    };
    return (await noteFiles()).savePrint(ask, form);
  };
  return (
    <ToolFold title="To print and take apart">
      <label className="tool-field">
        <span>What</span>
        <select value={chosen} onChange={({ target }) => setWhat(target.value)}>
          <option value={CUTAWAY}>cutaway set to teach with</option>
          <option value={ALL}>every part, whole</option>
          <optgroup label="One part">
            {parts.map(({ partKey, name }) => (
              <option key={partKey} value={partKey}>
                {name}
              </option>
            ))}
          </optgroup>
        </select>
      </label>
      {isHidden ? (
        <p className="small">Bitting hidden: made with cuts and pins that are stand-ins, all alike.</p>
      ) : null}
      {chosen === CUTAWAY ? <p className="small quiet">{CUTAWAY_WORDS}</p> : null}
      <div className="tool-pair">
        <label className="tool-field">
          <span>Enlarged, times</span>
          <input
            type="text"
            inputMode="decimal"
            autoComplete="off"
            value={factor}
            onChange={({ target }) => setFactor(target.value)}
          />
        </label>
        <label className="tool-field">
          <span>Clearance, mm</span>
          <input
            type="text"
            inputMode="decimal"
            autoComplete="off"
            aria-describedby={id}
            value={clearance}
            onChange={({ target }) => setClearance(target.value)}
          />
        </label>
      </div>
      <p className="small quiet" id={id}>
        Clearance is taken off the rounds of plug and pins and off the sides of the key, never off lengths.
      </p>
      <div className="tool-row">
        <button type="button" className="button" onClick={() => run(save('3mf'), MAKING)}>
          Save 3MF…
        </button>
        <button type="button" className="button" onClick={() => run(save('stl'), MAKING)}>
          Save STL…
        </button>
      </div>
    </ToolFold>
  );
}

const MAKING = 'Making the solids…';
const CUTAWAY_WORDS =
  'Bodies cut open, key and pins whole: pins lie in half chambers, the key slides under them. A ball, or a pin with no end to stand on, comes in two halves to be glued. No springs.';

function choiceOf(what: string, assembly: Assembly): Pick<PrintAsk, 'what' | 'name'> {
  if (what === CUTAWAY) return { what: { kind: 'cutaway' }, name: 'cutaway' };
  if (what === ALL) return { what: { kind: 'all' }, name: 'parts' };
  const name = namedParts(assembly).find(({ partKey }) => partKey === what)?.name ?? 'part';
  return { what: { kind: 'part', part: what }, name };
}
