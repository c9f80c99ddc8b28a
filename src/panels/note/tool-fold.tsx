/** A block of tools that is seldom wanted: its title, the rest on request. */
import type { ReactNode } from 'react';

export function ToolFold({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <details className="tool-fold fold">
      <summary>
        <h2>{title}</h2>
      </summary>
      <div className="tool-block">{children}</div>
    </details>
  );
}
