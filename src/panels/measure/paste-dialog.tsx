import { useEffect, useRef } from 'react';
import { formatBoth } from '../../model/units/format-length.ts';
import { useEdit, useJob } from '../shared/services.tsx';
import { goodCells, type PastedBlock, type PastedCell, storeBlock, troubledCells } from './paste-plan.ts';
import '../shared/dialog.css';

/** Shows how each pasted cell reads, and stores them all in one step after a yes. */
export function PasteDialog({
  block,
  onClose,
}: {
  readonly block: PastedBlock;
  readonly onClose: () => void;
}) {
  const dialog = useRef<HTMLDialogElement>(null);
  const edit = useEdit();
  const { unit } = useJob().settings;
  const good = goodCells(block).length;
  const troubled = troubledCells(block).length;
  useEffect(() => {
    const element = dialog.current;
    element?.showModal();
    return () => element?.close();
  }, []);
  const store = () => {
    edit(`Pasted ${good} readings`, (job) => storeBlock(job, block));
    onClose();
  };
  return (
    <dialog ref={dialog} className="dialog" aria-labelledby="paste-title" onClose={onClose}>
      <h2 id="paste-title">
        {good === 1 ? 'One reading' : `${good} readings`} to store
        {troubled === 0 ? '' : `, ${troubled} left out`}
      </h2>
      <div className="dialog-scroll">
        <table className="paste-table">
          <thead>
            <tr>
              <th scope="col">Chamber</th>
              {block.titles.map((title, i) => (
                <th key={`${title} ${i}`} scope="col">
                  {title}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {block.rows.map((cells, i) => (
              <tr key={i}>
                <th scope="row">{block.numbers[i] === 0 ? '–' : block.numbers[i]}</th>
                {cells.map((cell, t) => (
                  <td key={t} data-good={isGood(cell)}>
                    {cell.reading.type === 'length' && cell.field !== null ? (
                      formatBoth(cell.reading.mm, unit)
                    ) : (
                      <CellTrouble cell={cell} />
                    )}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <div className="dialog-buttons">
        <button type="button" className="button" data-kind="main" disabled={good === 0} onClick={store}>
          Store {good === 1 ? 'it' : 'them'}
        </button>
        <button type="button" className="button" onClick={onClose}>
          Leave everything as it was
        </button>
      </div>
    </dialog>
  );
}

function CellTrouble({ cell }: { readonly cell: PastedCell }) {
  const { reading } = cell;
  if (reading.type === 'empty') return <span className="quiet">empty</span>;
  if (cell.field === null) return <span className="quiet">{cell.text} has no place here</span>;
  return <span>{reading.type === 'length' ? cell.text : reading.message}</span>;
}

function isGood(cell: PastedCell): boolean {
  return cell.field !== null && (cell.reading.type === 'length' || cell.reading.type === 'empty');
}
