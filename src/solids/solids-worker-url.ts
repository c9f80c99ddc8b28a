/** Address of the worker's script, for the app to start it under the page's policy for script addresses. */
import workerUrl from './solids-worker.ts?worker&url';

export const solidsWorkerUrl: string = workerUrl;
