/** One line above a station: which cylinder, which key, which plan is looked at, and the way to others. */
import { lazy, Suspense, useId } from 'react';
import type { Id } from '../../model/schema/leaf.ts';
import type { Look } from '../shared/look.ts';
import { useServices, useView } from '../shared/services.tsx';
import { planNames } from './plan-names.ts';
import './bench-choice.css';

const CylindersAndKeys = lazy(async () => ({
  default: (await import('./cylinders-and-keys.tsx')).CylindersAndKeys,
}));

export function BenchChoice({ look }: { readonly look: Look }) {
  const { view } = useServices();
  const isOpen = useView((state) => state.isChoosingBench);
  const { job, selection } = look;
  const { pickCylinder, pickKey, pickPlan, chooseBench } = view.getState();
  const plans = planNames(job, selection.cylinder);
  const isPlain = job.cylinders.length < 2 && job.keys.length < 2 && plans.length < 2;
  return (
    <div className="bench-choice-frame">
      <div className="bench-choice" data-plain={isPlain}>
        <Pick
          label="Cylinder"
          options={job.cylinders}
          value={selection.cylinder}
          onPick={(id) => pickCylinder(job, id)}
        />
        <Pick label="Key" options={job.keys} value={selection.key} onPick={pickKey} />
        {plans.length < 2 ? null : (
          <Pick label="Plan" options={plans} value={selection.plan} onPick={pickPlan} />
        )}
        <button
          type="button"
          className="button bench-choice-more"
          data-kind="quiet"
          onClick={() => chooseBench(true)}
        >
          Cylinders and keys…
        </button>
      </div>
      {isOpen ? (
        <Suspense fallback={null}>
          <CylindersAndKeys look={look} onClose={() => chooseBench(false)} />
        </Suspense>
      ) : null}
    </div>
  );
}

type PickProps = {
  readonly label: string;
  readonly options: readonly { readonly id: Id; readonly label: string }[];
  readonly value: Id | null;
  readonly onPick: (id: Id) => void;
};

/** A choice where there are several; a plain word where there is one. */
function Pick({ label, options, value, onPick }: PickProps) {
  const id = useId();
  const [only] = options;
  // A name that only repeats what it is of is none.
  const isNameless = only !== undefined && (only.label.trim() === '' || only.label === label);
  if (options.length < 2)
    return (
      <span className="bench-pick">
        {isNameless ? null : <span className="bench-pick-label">{label}</span>}
        <span className="bench-pick-only">
          {isNameless ? `${label}, no name` : (only?.label ?? 'none yet')}
        </span>
      </span>
    );
  return (
    <span className="bench-pick">
      <label className="bench-pick-label" htmlFor={id}>
        {label}
      </label>
      <select
        id={id}
        className="bench-pick-select"
        value={value ?? ''}
        onChange={(event) => onPick(event.target.value)}
      >
        {options.map((option) => (
          <option key={option.id} value={option.id}>
            {option.label === '' ? 'without a name' : option.label}
          </option>
        ))}
      </select>
    </span>
  );
}
