/**
 * The page's only script: it lets the picture that the build put into the page be painted, then loads the app, so that nobody
 * waits for code to see something. What that first picture needs of style is here; everything else comes with the app.
 */
import '../panels/fonts.css';
import '../panels/tokens.css';
import '../panels/base.css';
import '../panels/answer/answer-box.css';
import '../panels/shared/drawing.css';
import '../panels/shared/verdict-mark.css';
import './shell.css';
import './first-picture.css';

/** ms. A page that is not painted, in a tab behind others, starts after this. */
const UNPAINTED_MS = 250;

function painted(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, UNPAINTED_MS);
    // The frame is painted between the callback and the task after it.
    requestAnimationFrame(() => setTimeout(resolve));
  });
}

/** Not awaited at the top: the app imports what loads its parts from here, and would wait for itself. */
async function startApp(): Promise<void> {
  await painted();
  const { start } = await import('./start.tsx');
  await start();
}

void startApp();
