/** Catches what goes wrong while the solid view is drawn, so that nothing else of the page is lost with it. */
import { Component, type ReactNode } from 'react';

export type SceneBoundaryProps = {
  readonly children: ReactNode;
  readonly onError: (reason: string) => void;
};

export class SceneBoundary extends Component<SceneBoundaryProps, { readonly hasFailed: boolean }> {
  override state = { hasFailed: false };

  static getDerivedStateFromError(): { readonly hasFailed: boolean } {
    return { hasFailed: true };
  }

  override componentDidCatch(error: unknown): void {
    this.props.onError(error instanceof Error ? error.message : String(error));
  }

  override render(): ReactNode {
    return this.state.hasFailed ? null : this.props.children;
  }
}
