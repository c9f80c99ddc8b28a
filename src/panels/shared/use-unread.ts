/** Keeps the view told of a field whose text is not read, for as long as that is so and the field is on screen. */
import { useEffect, useId } from 'react';
import { useView } from './services.tsx';

/**
 * @param label of the field; null while its text is read
 * @param counts what counts in its stead, with unit; null where nothing does
 */
export function useUnread(label: string | null, counts: string | null): void {
  const name = useId();
  const tell = useView((view) => view.tellUnread);
  useEffect(() => {
    if (label === null) return;
    tell(name, { label, counts });
    return () => tell(name, null);
  }, [name, tell, label, counts]);
}
