/** A field of the note: written on a hairline, as on a paper form; on paper what was written, or the line to write on. */
import { useId, useState } from 'react';
import { setNoteField } from '../../model/edit/edit-note.ts';
import type { NoteField as Field, NotePage } from '../../model/note/note-fields.ts';
import { useEdit, useJob } from '../shared/services.tsx';

const MOST_CHARACTERS = 20_000;

export function NoteFields({ fields, page }: { readonly fields: readonly Field[]; readonly page: NotePage }) {
  return (
    <div className="note-fields">
      {fields.map((field) => (
        <NoteField key={field.name} field={field} page={page} />
      ))}
    </div>
  );
}

function NoteField({ field, page }: { readonly field: Field; readonly page: NotePage }) {
  const id = useId();
  const edit = useEdit();
  const value = useJob().note[page][field.name] ?? '';
  const [draft, setDraft] = useState<string | null>(null);
  const done = () => {
    if (draft !== null && draft.trim() !== value)
      edit(field.label, (job) => setNoteField(job, page, field.name, draft));
    setDraft(null);
  };
  const properties = {
    id,
    className: 'note-input',
    value: draft ?? value,
    maxLength: MOST_CHARACTERS,
    placeholder: field.example,
    autoComplete: 'off',
    onChange: (event: { readonly target: { readonly value: string } }) => setDraft(event.target.value),
    onBlur: done,
  };
  return (
    <div className="note-field" data-long={field.isLong === true}>
      <label htmlFor={id}>{field.label}</label>
      {field.isLong === true ? (
        <textarea
          {...properties}
          rows={Math.max(2, (draft ?? value).split('\n').length)}
          onKeyDown={(event) => {
            if (event.key === 'Escape') setDraft(null);
          }}
        />
      ) : (
        <input
          {...properties}
          type="text"
          onKeyDown={(event) => {
            if (event.key === 'Enter') done();
            if (event.key === 'Escape') setDraft(null);
          }}
        />
      )}
      <span className="note-written" aria-hidden="true">
        {value}
      </span>
    </div>
  );
}
