/** A file chosen to be opened: what it holds is taken, or a sentence tells why not. */
import { useId, useState } from 'react';

type FileChoiceProps = {
  readonly label: string;
  /** Takes the text of the file; gives the sentence when it cannot be taken, and '' when it was. */
  readonly onText: (text: string) => string;
  readonly className?: string;
};

export function FileChoice({ label, onText, className = '' }: FileChoiceProps) {
  const id = useId();
  const [told, setTold] = useState('');
  const read = async (file: File | undefined) => {
    if (file !== undefined) setTold(onText(await file.text()));
  };
  return (
    <div className={`learn-length ${className}`}>
      <label className="learn-label" htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        className="learn-file"
        type="file"
        accept=".json,application/json"
        onChange={(event) => void read(event.target.files?.[0])}
      />
      <p className="question-lacks" role="alert">
        {told}
      </p>
    </div>
  );
}
