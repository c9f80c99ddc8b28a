import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { assert } from '../model/assert.ts';

const root = document.getElementById('root');
assert(root !== null, 'index.html has an element #root');
createRoot(root).render(
  <StrictMode>
    <h1>Shearsight</h1>
  </StrictMode>,
);
