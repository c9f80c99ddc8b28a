/** A file dropped anywhere on the page is opened; the browser would leave the page for it. */
import { useEffect, useEffectEvent } from 'react';

/** Calls back with each dropped file. */
export function useDroppedFiles(take: (file: File) => void): void {
  const taken = useEffectEvent(take);
  useEffect(() => {
    const hasFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') === true;
    const onDragOver = (event: DragEvent) => {
      if (hasFiles(event)) event.preventDefault();
    };
    const onDrop = (event: DragEvent) => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      const file = event.dataTransfer?.files[0];
      if (file !== undefined) taken(file);
    };
    window.addEventListener('dragover', onDragOver);
    window.addEventListener('drop', onDrop);
    return () => {
      window.removeEventListener('dragover', onDragOver);
      window.removeEventListener('drop', onDrop);
    };
  }, []);
}
