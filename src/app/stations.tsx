/** The stations there are. A new one is one line here; its code is loaded when it is gone to. */
import { type ComponentType, lazy } from 'react';
import { MeasureStation } from '../panels/measure/measure-station.tsx';
import type { Look } from '../panels/shared/look.ts';
import type { Station } from '../state/view-store.ts';

export type StationEntry = {
  readonly id: Station;
  readonly label: string;
  readonly View: ComponentType<{ readonly look: Look }>;
  /** The section stands beside it, or is all there is. */
  readonly section: 'beside' | 'wide' | 'none';
};

const CheckStation = lazy(async () => ({
  default: (await import('../panels/check/check-station.tsx')).CheckStation,
}));

const PartsStation = lazy(async () => ({
  default: (await import('../panels/parts/parts-station.tsx')).PartsStation,
}));

const NoteStation = lazy(async () => ({
  default: (await import('../panels/note/note-station.tsx')).NoteStation,
}));

const LearnStation = lazy(async () => ({
  default: (await import('../panels/learn/learn-station.tsx')).LearnStation,
}));

export const STATIONS: readonly StationEntry[] = [
  { id: 'measure', label: 'Measure', View: MeasureStation, section: 'beside' },
  { id: 'parts', label: 'Parts on hand', View: PartsStation, section: 'beside' },
  { id: 'check', label: 'Check', View: CheckStation, section: 'wide' },
  { id: 'note', label: 'Repair note', View: NoteStation, section: 'none' },
  { id: 'learn', label: 'Learn', View: LearnStation, section: 'none' },
];
