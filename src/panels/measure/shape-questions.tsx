import { setDriverEnds, setKeyFoot, setPinTops } from '../../model/edit/edit-shapes.ts';
import { driverEndsSeen, keyFoot, pinTopsSeen } from '../../model/edit/seen-shapes.ts';
import type { Job } from '../../model/schema/job-schema.ts';
import type { Id } from '../../model/schema/leaf.ts';
import { Choice } from '../shared/choice.tsx';
import { useEdit, useServices } from '../shared/services.tsx';
import { ShapePicture } from './shape-picture.tsx';

type QuestionProps = { readonly job: Job; readonly plan: Id };

export function KeyFootQuestion({ job, plan }: QuestionProps) {
  const edit = useEdit();
  const { newId } = useServices();
  return (
    <Choice
      question="What rides on the key?"
      options={[
        { value: 'ball', label: 'A ball', picture: <ShapePicture name="foot ball" /> },
        { value: 'pointed pin', label: 'A pointed pin', picture: <ShapePicture name="foot pointed" /> },
        { value: 'rounded pin', label: 'A rounded pin', picture: <ShapePicture name="foot rounded" /> },
      ]}
      value={keyFoot(job, plan)}
      onChoose={(foot) => edit(`On the key: ${foot}`, (before) => setKeyFoot(before, plan, foot, newId))}
    />
  );
}

export function PinTopQuestion({ job, plan }: QuestionProps) {
  const edit = useEdit();
  const seen = pinTopsSeen(job, plan);
  return (
    <Choice
      question="Top of the bottom pins"
      options={[
        { value: 'domed', label: 'Domed', picture: <ShapePicture name="top domed" /> },
        {
          value: 'broken edge',
          label: 'Flat, broken edge',
          picture: <ShapePicture name="top broken edge" />,
        },
        { value: 'sharp edge', label: 'Flat, sharp edge', picture: <ShapePicture name="top sharp edge" /> },
      ]}
      value={seen}
      onChoose={(top) => edit(`Top of the pins: ${top}`, (before) => setPinTops(before, plan, top))}
      {...(seen === null && { note: 'Until you choose: assumed domed. Daylight under a steel rule tells.' })}
    />
  );
}

export function DriverEndQuestion({ job, plan }: QuestionProps) {
  const edit = useEdit();
  const seen = driverEndsSeen(job, plan);
  return (
    <Choice
      question="Bottom of the drivers"
      options={[
        { value: 'broken edge', label: 'Broken edge', picture: <ShapePicture name="driver broken edge" /> },
        { value: 'sharp edge', label: 'Sharp edge', picture: <ShapePicture name="driver sharp edge" /> },
        {
          value: 'rounded edge',
          label: 'Rounded edge',
          picture: <ShapePicture name="driver rounded edge" />,
        },
      ]}
      value={seen}
      onChoose={(end) => edit(`Bottom of the drivers: ${end}`, (before) => setDriverEnds(before, plan, end))}
      {...(seen === null && { note: 'Until you choose: assumed a broken edge.' })}
    />
  );
}
